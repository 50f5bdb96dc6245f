import type { Issue } from "#core";
import { type Entry, isHex32, type LogReport, type Verifier, verifyLog } from "#records";
import { readJsonLine, splitLines, textOf } from "../bag/lines.ts";
import { type BagFiles, ENTRIES, IDS } from "../bag/names.ts";
import type { PlacedEntry } from "../bag/what-entries-do.ts";
import { error } from "../issue.ts";

/** Stands in the place of an entry that is not sound; no entry has this id. */
export const NO_ID = "0".repeat(64);

/** The log of a bag, line by line. */
export interface BagLog {
  readonly job: string;
  /** what each line claims to be */
  readonly claims: readonly unknown[];
  /** by line, the id of the entry if the line is sound, else NO_ID; a repeated one keeps its id */
  readonly ids: readonly string[];
  /** what is wrong with single lines, by place from 1 */
  readonly lineIssues: ReadonlyMap<number, Issue>;
  readonly sound: readonly PlacedEntry[];
  readonly report: LogReport;
  /** the ids that the bag lists, in the order of arrival; undefined if the list cannot be read */
  readonly listed: readonly string[] | undefined;
  readonly issues: readonly Issue[];
}

/**
 * Reads and checks the entries of a bag, each line by itself and then the chains. The job is the one that most of them name.
 *
 * Errors: evidence.lines, evidence.line-form, evidence.ids, and those of verifyLog.
 */
export async function readLog(files: BagFiles, verifier: Verifier): Promise<BagLog> {
  const issues: Issue[] = [];
  const lines = splitLines(files.get(ENTRIES)!);
  if (lines === undefined) issues.push(error("evidence.lines", { file: ENTRIES }));
  const read = (lines ?? []).map(readJsonLine);
  const claims = read.map(({ value }) => value);
  const job = jobOf(claims);
  const report = await verifyLog(claims, job, verifier);
  const lineIssues = new Map<number, Issue>();
  for (const issue of report.findings) {
    const { line } = issue.place;
    if (line !== undefined && !lineIssues.has(line)) lineIssues.set(line, at(line, issue));
  }
  for (const [i, { isCanonical }] of read.entries())
    if (!isCanonical && !lineIssues.has(i + 1)) lineIssues.set(i + 1, at(i + 1, error("evidence.line-form")));
  const isUsable = (place: number) => {
    const code = lineIssues.get(place)?.code;
    return code === undefined || code === "records.entry-twice";
  };
  const ids = claims.map((claim, i) => (isUsable(i + 1) ? (claim as Entry).id : NO_ID));
  const sound = claims.flatMap((claim, i) =>
    lineIssues.has(i + 1) ? [] : [{ place: i + 1, entry: claim as Entry }],
  );
  const listed = readIds(files);
  if (listed === undefined) issues.push(error("evidence.ids", { file: IDS }));
  return { job, claims, ids, lineIssues, sound, report, listed, issues };
}

function jobOf(claims: readonly unknown[]): string {
  const counts = new Map<string, number>();
  for (const claim of claims) {
    const { job } = (claim ?? {}) as { readonly job?: unknown };
    if (typeof job === "string") counts.set(job, 1 + (counts.get(job) ?? 0));
  }
  const [most] = [...counts].sort(([, a], [, b]) => b - a);
  return most?.[0] ?? "";
}

const at = (line: number, issue: Issue): Issue => ({
  ...issue,
  place: { ...issue.place, file: ENTRIES, line },
});

function readIds(files: BagFiles): readonly string[] | undefined {
  const ids = splitLines(files.get(IDS)!)?.map(textOf);
  return ids?.every(isHex32) === true ? ids : undefined;
}
