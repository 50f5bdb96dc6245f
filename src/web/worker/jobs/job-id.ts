const RANDOM_BYTES = 4;

/** A new name for a job in the log: readable in addresses, and never the same on two devices. */
export function newJobId(name: string): string {
  const plain = name
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, "-")
    .replaceAll(/^-+|-+$/g, "")
    .slice(0, 40);
  const random = [...crypto.getRandomValues(new Uint8Array(RANDOM_BYTES))]
    .map((byte) => byte.toString(16).padStart(2, "0"))
    .join("");
  return plain === "" ? random : `${plain}-${random}`;
}
