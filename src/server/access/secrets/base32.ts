const ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";
const BITS = 5;

/** Bytes as base32 without padding, as authenticator programs take a secret. Source: RFC 4648, section 6. */
export function base32FromBytes(bytes: Uint8Array): string {
  const bits = Array.from(bytes, (byte) => byte.toString(2).padStart(8, "0")).join("");
  return (bits.match(/.{1,5}/g) ?? [])
    .map((group) => ALPHABET[Number.parseInt(group.padEnd(BITS, "0"), 2)])
    .join("");
}

/** The inverse of `base32FromBytes`. A character that is none of the alphabet's counts as the end. */
export function bytesFromBase32(text: string): Uint8Array {
  const end = [...text].findIndex((character) => !ALPHABET.includes(character));
  const bits = [...(end < 0 ? text : text.slice(0, end))]
    .map((character) => ALPHABET.indexOf(character).toString(2).padStart(BITS, "0"))
    .join("");
  return Uint8Array.from(bits.match(/.{8}/g) ?? [], (byte) => Number.parseInt(byte, 2));
}
