import { contract } from "#core";

/** Bytes as lower-case hexadecimal text. */
export function hexFromBytes(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += byte.toString(16).padStart(2, "0");
  return text;
}

/** @throws ContractError unless the text is pairs of lower-case hexadecimal digits. */
export function bytesFromHex(text: string): Uint8Array<ArrayBuffer> {
  contract(/^(?:[0-9a-f]{2})*$/.test(text), `bytesFromHex: "${text.slice(0, 80)}" is not hexadecimal`);
  return Uint8Array.from({ length: text.length / 2 }, (_, i) =>
    Number.parseInt(text.slice(2 * i, 2 * i + 2), 16),
  );
}

/** A hash or a public key: 32 bytes as text. */
export const isHex32 = (value: unknown): value is string =>
  typeof value === "string" && /^[0-9a-f]{64}$/.test(value);

/** A signature: 64 bytes as text. */
export const isHex64 = (value: unknown): value is string =>
  typeof value === "string" && /^[0-9a-f]{128}$/.test(value);
