import { canonicalJson, MAX_ENTRY_BYTES, parseJson } from "#records";

/** Lines of one file at most; more than any job has, and few enough to be held. */
export const MAX_LINES = 1_000_000;
/** An entry is at most so long; its id and signature, or the proof values of a head or a seal, come on top. Bytes. */
export const MAX_LINE_BYTES = MAX_ENTRY_BYTES + 1_000;

const LINE_FEED = 10;
const decoder = new TextDecoder();
const encoder = new TextEncoder();

/** One line that should be a JSON value in its canonical form. */
export interface JsonLine {
  /** what was read; undefined if it is no JSON */
  readonly value: unknown;
  /** whether the line is, byte by byte, the canonical form of its value */
  readonly isCanonical: boolean;
}

/**
 * Divides a file into lines, each ended by a line feed.
 *
 * @returns undefined if there are more lines, or longer ones, than are read, or the last line is not ended.
 */
export function splitLines(bytes: Uint8Array<ArrayBuffer>): readonly Uint8Array<ArrayBuffer>[] | undefined {
  const lines: Uint8Array<ArrayBuffer>[] = [];
  for (let start = 0; start < bytes.length; ) {
    const end = bytes.indexOf(LINE_FEED, start);
    if (end === -1 || end - start > MAX_LINE_BYTES || lines.length >= MAX_LINES) return undefined;
    lines.push(bytes.subarray(start, end));
    start = end + 1;
  }
  return lines;
}

/** Reads a line. Only the canonical form is accepted as such, so that no two files say the same and nothing hides in one. */
export function readJsonLine(bytes: Uint8Array<ArrayBuffer>): JsonLine {
  const text = decoder.decode(bytes);
  const parsed = parseJson(text);
  if (!parsed.ok) return { value: undefined, isCanonical: false };
  const canonical = canonicalJson(parsed.value);
  return {
    value: parsed.value,
    isCanonical: canonical.ok && areSame(encoder.encode(canonical.value), bytes),
  };
}

/** Text of a file; bytes that are no UTF-8 become a sign that fits nothing. */
export const textOf = (bytes: Uint8Array): string => decoder.decode(bytes);

export function areSame(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, i) => byte === b[i]);
}
