import type { Finder } from "../finding/finder.ts";
import { attempt } from "./attempt.ts";

/** A text file of a job folder above this is refused: 100 MB is over a million readings. */
export const MAX_TEXT_BYTES = 100_000_000;
/** No line of our files is this long; a longer one is a damaged file. */
export const MAX_LINE_LENGTH = 100_000;

/**
 * Text of a file that should be UTF-8, with or without byte order mark; line ends become "\n".
 *
 * UTF-16 with a byte order mark is unmistakable: it is read all the same. UTF-16 without one, another
 * 8-bit code page or a binary file is a finding: characters are never replaced or guessed.
 *
 * @param largest size in bytes above which the file is refused.
 * @returns the text, or undefined when the file is blocked.
 * Errors: formats.file-too-large, formats.file-empty, formats.not-text, formats.encoding, formats.line-too-long,
 *   formats.utf16-read (does not block).
 */
export function decodeText(bytes: Uint8Array, found: Finder, largest = MAX_TEXT_BYTES): string | undefined {
  if (bytes.length > largest) {
    found.block("formats.file-too-large", {}, { found: bytes.length, expected: largest });
    return undefined;
  }
  const encoding = encodingOf(bytes, found);
  if (encoding === undefined) return undefined;
  const decoded = attempt(() => new TextDecoder(encoding, { fatal: true }).decode(bytes));
  if (!decoded.ok) {
    const line = encoding === "utf-8" ? lineOfBadByte(bytes) : 1;
    found.block("formats.encoding", { line }, { found: nameOfBadByte(bytes), expected: "UTF-8" });
    return undefined;
  }
  return tidyText(decoded.value, found);
}

/**
 * Decoded text with line ends "\n".
 *
 * @returns undefined when the file is blocked. Errors: formats.file-empty, formats.line-too-long.
 */
export function tidyText(decoded: string, found: Finder): string | undefined {
  const text = decoded.replaceAll(/\r\n?/g, "\n");
  if (text.trim() === "") {
    found.block("formats.file-empty", { line: 1 }, { found: "nothing", expected: "a filled file" });
    return undefined;
  }
  return linesAreShort(text, found) ? text : undefined;
}

function encodingOf(bytes: Uint8Array, found: Finder): "utf-8" | "utf-16le" | "utf-16be" | undefined {
  const mark = (bytes[0] ?? 0) * 256 + (bytes[1] ?? 0);
  if (mark === 0xfffe || mark === 0xfeff) {
    const name = mark === 0xfffe ? "utf-16le" : "utf-16be";
    found.error("formats.utf16-read", { line: 1 }, { found: name.toUpperCase(), expected: "UTF-8" });
    return name;
  }
  const nul = bytes.indexOf(0);
  if (nul < 0) return "utf-8";
  const line = lineAt(bytes, nul);
  const head = bytes.subarray(0, 400);
  const nulEven = head.filter((byte, i) => byte === 0 && i % 2 === 0).length;
  const nulOdd = head.filter((byte, i) => byte === 0 && i % 2 === 1).length;
  const utf16 = Math.max(nulEven, nulOdd) > 0.3 * head.length && Math.min(nulEven, nulOdd) === 0;
  const what = utf16 ? "UTF-16 without a byte order mark" : "a NUL byte, as in a binary file";
  found.block("formats.not-text", { line }, { found: what, expected: "text in UTF-8" });
  return undefined;
}

function linesAreShort(text: string, found: Finder): boolean {
  let line = 1;
  for (let start = 0; start <= text.length; line++) {
    const end = text.indexOf("\n", start);
    const length = (end < 0 ? text.length : end) - start;
    if (length > MAX_LINE_LENGTH) {
      found.block("formats.line-too-long", { line }, { found: length, expected: MAX_LINE_LENGTH });
      return false;
    }
    if (end < 0) break;
    start = end + 1;
  }
  return true;
}

/** Line of the first byte that is not UTF-8. */
function lineOfBadByte(bytes: Uint8Array): number {
  return lineAt(bytes, firstBadByte(bytes));
}

function nameOfBadByte(bytes: Uint8Array): string {
  const value = bytes[firstBadByte(bytes)] ?? 0;
  return `byte 0x${value.toString(16).padStart(2, "0")}`;
}

const CHUNK = 65_536;

/** The decoder does not tell where it stopped: first the piece that fails is sought, then the byte, by halving. */
function firstBadByte(bytes: Uint8Array): number {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let end = 0;
  let whole = true;
  while (whole && end < bytes.length) {
    const piece = bytes.subarray(end, end + CHUNK);
    whole = attempt(() => decoder.decode(piece, { stream: true })).ok;
    end += CHUNK;
  }
  let start = Math.max(0, Math.min(end, bytes.length) - CHUNK - 3);
  // Not in the middle of a character.
  while (start > 0 && (bytes[start]! & 0xc0) === 0x80) start -= 1;
  const isGood = (to: number, stream = true) =>
    attempt(() => new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(start, to), { stream })).ok;
  let good = start;
  let bad = Math.min(end, bytes.length);
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (isGood(middle)) good = middle;
    else bad = middle;
  }
  // A character that was begun and not gone on with is bad from its first byte.
  while (good > start && !isGood(good, false)) good -= 1;
  return good;
}

function lineAt(bytes: Uint8Array, offset: number): number {
  let line = 1;
  for (let i = 0; i < offset; i++) if (bytes[i] === 10) line += 1;
  return line;
}
