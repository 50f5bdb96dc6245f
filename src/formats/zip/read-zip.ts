import { Inflate } from "fflate";
import { fail, type Issue, ok, type Result } from "#core";
import { Finder } from "../finding/finder.ts";
import { attempt } from "../text/attempt.ts";
import { crc32 } from "./crc32.ts";
import { readZipDirectory, type ZipMember } from "./zip-directory.ts";

/** What an archive from outside may cost. */
export interface ZipLimits {
  /** unpacked size of all files together, bytes */
  readonly bytes: number;
  /** unpacked size in parts of the archive's own: deflate reaches a thousand, honest files seldom fifty */
  readonly swelling: number;
  readonly files: number;
}

export const ZIP_LIMITS: ZipLimits = { bytes: 1_000_000_000, swelling: 100, files: 60_000 };

/** Below this nobody is harmed, however much a small archive swells. */
const ALWAYS_ALLOWED_BYTES = 1_000_000;
/** Packed bytes that are unpacked in one go: what comes out of them is counted before the next. */
const STEP_BYTES = 16_384;

/**
 * The files of a zip archive that nobody vouches for. Everything is checked before it is unpacked, and sizes are counted again
 * while it is: an archive that lies costs no more than one that does not.
 *
 * Refused as a whole: names that lead outside or that some systems hold for one, links, members that share bytes, files that are
 * encrypted, packed in another way than deflate, or that do not have the size and check sum stated.
 *
 * @param name the archive's name, used only in findings.
 * @returns files by name, without folders.
 *
 * Errors: formats.not-zip, formats.zip-path, formats.zip-name-twice, formats.zip-link, formats.zip-overlap, formats.zip-packing,
 *   formats.zip-swells, formats.zip-damaged.
 */
export function readZip(
  bytes: Uint8Array,
  name: string,
  limits: ZipLimits = ZIP_LIMITS,
): Result<ReadonlyMap<string, Uint8Array<ArrayBuffer>>, readonly Issue[]> {
  const found = new Finder(name);
  const members = readZipDirectory(bytes);
  if (members === undefined) {
    found.block("formats.not-zip", {}, { found: `${bytes.length} bytes`, expected: "a whole zip archive" });
    return fail(found.issues);
  }
  checkMembers(members, bytes.length, limits, found);
  if (found.blocked) return fail(found.issues);
  const files = new Map<string, Uint8Array<ArrayBuffer>>();
  for (const member of members) {
    if (member.isFolder) continue;
    const content = unpack(bytes, member);
    if (content === undefined) {
      found.block("formats.zip-damaged", {}, { found: member.name });
      return fail(found.issues);
    }
    files.set(member.name, content);
  }
  return ok(files);
}

function checkMembers(
  members: readonly ZipMember[],
  archiveBytes: number,
  limits: ZipLimits,
  found: Finder,
): void {
  const size = members.reduce((sum, member) => sum + member.size, 0);
  const most = Math.min(limits.bytes, Math.max(ALWAYS_ALLOWED_BYTES, limits.swelling * archiveBytes));
  if (size > most || members.length > limits.files) {
    found.block("formats.zip-swells", {}, { found: size, files: members.length, expected: most });
    return;
  }
  const names = new Set<string>();
  for (const member of members) {
    const shown = member.name.slice(0, 200);
    // some systems fold case and compose letters: two names would be one file there
    const folded = member.name.normalize("NFC").toLowerCase();
    if (!isInside(member.name))
      found.block("formats.zip-path", {}, { found: shown, expected: "names inside the archive" });
    if (names.has(folded)) found.block("formats.zip-name-twice", {}, { found: shown });
    if (member.isLink) found.block("formats.zip-link", {}, { found: shown });
    if (member.isEncrypted || (member.method !== 0 && member.method !== 8))
      found.block("formats.zip-packing", {}, { found: shown });
    names.add(folded);
  }
  const inOrder = members.toSorted((a, b) => a.start - b.start);
  for (const [i, member] of inOrder.entries()) {
    const next = inOrder[i + 1];
    if (next !== undefined && member.dataStart + member.packedSize > next.start)
      found.block("formats.zip-overlap", {}, { found: member.name.slice(0, 200) });
  }
}

/** Relative, no step upwards, nothing that another system reads as a drive, a folder or the end of the name. */
function isInside(name: string): boolean {
  if (name === "" || name.length > 300 || /^[a-z]:/i.test(name)) return false;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
  if (/[\\\u0000-\u001f\u007f\ufffd]/.test(name)) return false;
  const steps = (name.endsWith("/") ? name.slice(0, -1) : name).split("/");
  return steps.every((step) => step !== "" && step !== "." && step !== "..");
}

function unpack(bytes: Uint8Array, member: ZipMember): Uint8Array<ArrayBuffer> | undefined {
  const packed = bytes.subarray(member.dataStart, member.dataStart + member.packedSize);
  const content = member.method === 0 ? Uint8Array.from(packed) : inflate(packed, member.size);
  return content?.length === member.size && crc32(content) === member.crc ? content : undefined;
}

/** Inflates step by step into the size stated, and stops as soon as more comes. */
function inflate(packed: Uint8Array, size: number): Uint8Array<ArrayBuffer> | undefined {
  const content = new Uint8Array(size);
  let filled = 0;
  const stream = new Inflate((part) => {
    if (filled + part.length <= size) content.set(part, filled);
    filled += part.length;
  });
  for (let at = 0; at < Math.max(1, packed.length); at += STEP_BYTES) {
    const isLast = at + STEP_BYTES >= packed.length;
    const pushed = attempt(() => stream.push(packed.subarray(at, at + STEP_BYTES), isLast));
    if (!pushed.ok || filled > size) return undefined;
  }
  return filled === size ? content : undefined;
}
