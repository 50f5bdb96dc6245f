import type { Issue } from "#core";
import { checkHead, type TreeHead, type Verifier } from "#records";
import { readJsonLine, splitLines } from "../bag/lines.ts";
import { type BagFiles, HEADS } from "../bag/names.ts";
import { notFitting } from "../bag/not-fitting.ts";
import { rootsAt } from "../bag/roots-at.ts";
import { error, warning } from "../issue.ts";
import type { HeadInEvidence, KnownHead, KnownHeadInEvidence } from "./evidence-report.ts";

/** The heads of a bag, each checked by itself. */
export interface ReadHeads {
  /** with the line of each, from 1 */
  readonly valid: readonly (readonly [number, TreeHead])[];
  readonly issues: readonly Issue[];
}

/**
 * Reads the heads, checks their form and signatures.
 *
 * Errors: evidence.lines, evidence.line-form, records.head-shape, records.head-signature.
 */
export async function readHeads(files: BagFiles, verifier: Verifier): Promise<ReadHeads> {
  const lines = splitLines(files.get(HEADS)!);
  if (lines === undefined) return { valid: [], issues: [error("evidence.lines", { file: HEADS })] };
  const valid: (readonly [number, TreeHead])[] = [];
  const issues: Issue[] = [];
  for (const [i, line] of lines.entries()) {
    const place = { file: HEADS, line: i + 1 };
    const { value, isCanonical } = readJsonLine(line);
    const checked = await checkHead(value, verifier);
    if (!checked.ok) issues.push({ ...checked.error, place });
    else if (!isCanonical) issues.push(error("evidence.line-form", place));
    else valid.push([i + 1, checked.value]);
  }
  return { valid, issues };
}

/** How the log stands to its heads. */
export interface HeadsOutcome {
  readonly heads: readonly HeadInEvidence[];
  readonly knownHeads: readonly KnownHeadInEvidence[];
  /** whether the list of ids is exactly what a head of the office covers */
  readonly isListSigned: boolean;
  /** size of the smallest head that the entries do not fit; Infinity if they fit all */
  readonly failsAt: number;
  /** size of the largest one below it that they fit */
  readonly fitsUpTo: number;
  readonly issues: readonly Issue[];
}

interface Question {
  readonly job: string;
  readonly valid: ReadHeads["valid"];
  readonly ids: readonly string[];
  readonly listed: readonly string[] | undefined;
  readonly knownHeads: readonly KnownHead[];
  readonly officeKey: string | undefined;
}

/**
 * Holds the entries, and the list of their ids, against the heads in the bag and those known from outside.
 *
 * A head of another key than the office's, or of another job, counts for nothing.
 *
 * Errors: evidence.head-other-job, evidence.head-other-key (a warning if no key of the office is known: it may have changed),
 *   records.head-cut, records.head-mismatch, evidence.known-head-cut, evidence.known-head-differs, evidence.no-head-over-all.
 */
export async function checkHeads(question: Question): Promise<HeadsOutcome> {
  const { ids, listed = [], valid, knownHeads } = question;
  const sizes = [...valid.map(([, { size }]) => size), ...knownHeads.map(({ size }) => size)];
  const roots = await rootsAt(ids, sizes);
  const listRoot = (await rootsAt(listed, [listed.length])).get(listed.length);
  const isClosing = ([, head]: readonly [number, TreeHead]) =>
    isOffice(head, question) && head.size === listed.length && head.root === listRoot;
  const closing = listed.length > 0 ? valid.find(isClosing)?.[1] : undefined;
  const outcomes = valid.map(([line, head]) => outcomeOf(line, head, roots, ids.length, question));
  const otherKeys = closing === undefined ? [] : valid.filter(([, { key }]) => key !== closing.key);
  const known = knownHeads.map((head) => ({ ...head, fits: fitsKnown(head, roots) }));
  const ofOffice = outcomes.filter((_, i) => isOffice(valid[i]![1], question));
  // whoever forges heads makes them fit: where a head from outside does not, only those from outside count
  const counted = known.some(({ fits }) => !fits) ? known : [...ofOffice, ...known];
  const failsAt = counted.reduce((least, { fits, size }) => (fits ? least : Math.min(least, size)), Infinity);
  return {
    heads: outcomes,
    knownHeads: known,
    isListSigned: closing !== undefined,
    fitsUpTo: counted.reduce(
      (most, { fits, size }) => (fits && size < failsAt ? Math.max(most, size) : most),
      0,
    ),
    failsAt,
    issues: [
      ...outcomes.flatMap(({ issue }) => (issue === undefined ? [] : [issue])),
      ...(question.officeKey === undefined
        ? otherKeys.map(([line, { key }]) =>
            warning("evidence.head-other-key", { file: HEADS, line }, { key }),
          )
        : []),
      ...known.flatMap((head) => (head.fits ? [] : [knownIssue(head, ids.length)])),
      ...(closing === undefined
        ? [error("evidence.no-head-over-all", { file: HEADS }, { entries: ids.length })]
        : []),
    ],
  };
}

const isOffice = (head: TreeHead, { job, officeKey }: Question): boolean =>
  head.job === job && (officeKey === undefined || head.key === officeKey);

function outcomeOf(
  line: number,
  head: TreeHead,
  roots: ReadonlyMap<number, string>,
  entries: number,
  question: Question,
): HeadInEvidence {
  const { size, root, at, key } = head;
  const issue = headIssue({ file: HEADS, line }, head, roots.get(size), entries, question);
  return { size, root, at, key, fits: issue === undefined, ...(issue === undefined ? {} : { issue }) };
}

function headIssue(
  place: Issue["place"],
  head: TreeHead,
  root: string | undefined,
  entries: number,
  { job, officeKey }: Question,
): Issue | undefined {
  const { key } = head;
  if (head.job !== job) return error("evidence.head-other-job", place, { found: head.job });
  if (officeKey !== undefined && key !== officeKey) return error("evidence.head-other-key", place, { key });
  return root === head.root ? undefined : notFitting(head, entries, place);
}

const fitsKnown = ({ size, root }: KnownHead, roots: ReadonlyMap<number, string>): boolean =>
  /^[0-9a-f]{16,64}$/.test(root) && roots.get(size)?.startsWith(root) === true;

const knownIssue = ({ size }: KnownHead, entries: number): Issue =>
  size > entries
    ? error("evidence.known-head-cut", { file: HEADS }, { found: entries, expected: size })
    : error("evidence.known-head-differs", { file: HEADS }, { size });
