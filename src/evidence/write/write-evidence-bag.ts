import { fail, type Issue, ok, type Result } from "#core";
import { writeZip } from "#formats";
import {
  canonicalJson,
  checkHead,
  createVerifier,
  type Entry,
  isHex32,
  sha256Hex,
  type TreeHead,
  utf8,
} from "#records";
import { withManifests } from "../bag/bag-it.ts";
import { derivedFiles } from "../bag/derived-files.ts";
import { BAG_INFO, BLOBS, ENTRIES, HEADS, IDS, PAYLOAD, README } from "../bag/names.ts";
import { notFitting } from "../bag/not-fitting.ts";
import { rootsAt } from "../bag/roots-at.ts";
import { whatEntriesDo } from "../bag/what-entries-do.ts";
import { error } from "../issue.ts";
import { readmeText } from "./readme-text.ts";

/** Everything of one job. */
export interface EvidenceInput {
  readonly job: string;
  /** all entries of the job, in the office's order of arrival */
  readonly entries: readonly Entry[];
  /** heads of the job's tree, signed by the office; one of them over all entries. Its time is the time of the bag */
  readonly heads: readonly TreeHead[];
  /** photos, report files and whatever else entries name, by their SHA-256; what is not here will be told as missing */
  readonly blobs: ReadonlyMap<string, Uint8Array<ArrayBuffer>>;
  /** name and version of the program, for bag-info.txt */
  readonly program: string;
}

type Made<T> = Promise<Result<T, readonly Issue[]>>;

/**
 * Writes everything of one job into one file that can be checked by anybody, without an account and without this program.
 *
 * The same log, heads and blobs give the same bytes: no clock is asked, and the head over all entries gives the time.
 *
 * @returns a BagIt bag in a ZIP archive, see docs/formats/evidence-bag.md.
 *
 * Errors: evidence.no-entries, evidence.other-job, evidence.no-head-over-all, evidence.blob-changed, records.head-shape,
 *   records.head-signature, records.head-cut, records.head-mismatch, and those of canonicalJson.
 * Source: RFC 8493, sections 2 and 4.2.
 */
export async function writeEvidenceBag(input: EvidenceInput): Made<Uint8Array<ArrayBuffer>> {
  const found = await findingsIn(input);
  if (found.length > 0) return fail(found);
  const made = textsOf(input);
  if (!made.ok) return fail([made.error]);
  const files = new Map(made.value.map(([name, text]) => [name, utf8(text)]));
  for (const [hash, bytes] of input.blobs) files.set(BLOBS + hash, bytes);
  files.set(BAG_INFO, utf8(bagInfo(input, files)));
  files.set(README, utf8(readmeText(input.job, input.entries.length)));
  const folder = folderName(input);
  const bag = [...(await withManifests(files))].map(([name, bytes]) => [`${folder}/${name}`, bytes] as const);
  return ok(writeZip(new Map(bag), (name) => name.startsWith(`${folder}/${BLOBS}`)));
}

/** Whatever would make a bag that does not verify. */
async function findingsIn({ job, entries, heads, blobs }: EvidenceInput): Promise<readonly Issue[]> {
  const found: Issue[] = [];
  if (entries.length === 0) found.push(error("evidence.no-entries"));
  for (const [i, entry] of entries.entries())
    if (entry.job !== job)
      found.push(error("evidence.other-job", { file: ENTRIES, line: i + 1 }, { found: entry.job }));
  const ids = entries.map((entry) => entry.id);
  const roots = await rootsAt(
    ids,
    heads.map(({ size }) => size),
  );
  const verifier = createVerifier();
  for (const [i, head] of heads.entries()) {
    const place = { file: HEADS, line: i + 1 };
    const checked = await checkHead(head, verifier);
    if (!checked.ok) found.push({ ...checked.error, place });
    else if (roots.get(head.size) !== head.root) found.push(notFitting(head, ids.length, place));
    if (head.job !== job) found.push(error("evidence.other-job", place, { found: head.job }));
  }
  if (!heads.some(({ size }) => size === entries.length))
    found.push(error("evidence.no-head-over-all", { file: HEADS }, { entries: entries.length }));
  for (const [hash, bytes] of blobs)
    if (!isHex32(hash) || (await sha256Hex(bytes)) !== hash)
      found.push(error("evidence.blob-changed", { file: BLOBS + hash }, { blob: hash }));
  return found;
}

function textsOf(input: EvidenceInput): Result<readonly (readonly [string, string])[], Issue> {
  const { job, entries } = input;
  const heads = input.heads.toSorted(
    (a, b) => a.size - b.size || compare(a.at, b.at) || compare(a.key, b.key),
  );
  const placed = entries.map((entry, i) => ({ place: i + 1, entry }));
  const derived = derivedFiles(job, heads, whatEntriesDo(placed));
  if (!derived.ok) return derived;
  const [entryLines, headLines] = [linesOf(entries), linesOf(heads)];
  if (!entryLines.ok) return entryLines;
  if (!headLines.ok) return headLines;
  return ok([
    [ENTRIES, entryLines.value],
    [IDS, entries.map(({ id }) => `${id}\n`).join("")],
    [HEADS, headLines.value],
    ...derived.value,
  ]);
}

function linesOf(values: readonly unknown[]): Result<string, Issue> {
  const lines: string[] = [];
  for (const value of values) {
    const line = canonicalJson(value);
    if (!line.ok) return line;
    lines.push(`${line.value}\n`);
  }
  return ok(lines.join(""));
}

/** Source: RFC 8493, section 2.2.2. */
function bagInfo(input: EvidenceInput, files: ReadonlyMap<string, Uint8Array>): string {
  const payload = [...files].filter(([name]) => name.startsWith(PAYLOAD));
  const octets = payload.reduce((sum, [, bytes]) => sum + bytes.length, 0);
  const closing = input.heads.find(({ size }) => size === input.entries.length)!;
  return [
    `Bag-Software-Agent: ${oneLine(input.program)}`,
    `Bagging-Date: ${closing.at.slice(0, 10)}`,
    "External-Description: All entries of one job with signatures, tree heads, seals, keys and files",
    `External-Identifier: ${encodeURIComponent(input.job)}`,
    `Payload-Oxum: ${octets}.${payload.length}`,
    "",
  ].join("\n");
}

const oneLine = (text: string): string => text.replaceAll(/\s+/g, " ").trim();

/** A name that every system takes. */
const folderName = ({ job, entries }: EvidenceInput): string =>
  `toeline-evidence-${job.replaceAll(/[^A-Za-z0-9-]/g, "_").slice(0, 60)}-${entries.length}`;

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
