import { hexFromBytes } from "./hex.ts";

const encoder = new TextEncoder();

/** The bytes of a text in UTF-8. */
export const utf8 = (text: string): Uint8Array<ArrayBuffer> => encoder.encode(text);

/** SHA-256 of bytes. Shape: 32 bytes. */
export async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
}

/** SHA-256 of bytes, as hexadecimal text: the name of a blob. */
export async function sha256Hex(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  return hexFromBytes(await sha256(bytes));
}
