/**
 * 32-bit hash of a text (FNV-1a over its UTF-16 code units): turns a name into the number of a random stream.
 *
 * @returns whole number, 0 to 2^32 - 1; the same on every machine.
 *
 * Frame: none. Source: Fowler, Noll & Vo, FNV-1a, 32 bit (from memory).
 */
export function hashText(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    for (const byte of [unit & 0xff, unit >> 8]) hash = Math.imul(hash ^ byte, 0x01000193);
  }
  return hash >>> 0;
}
