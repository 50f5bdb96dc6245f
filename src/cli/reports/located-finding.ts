import type { ElementResult, Issue, Job, JobResults, RunResult, Severity } from "#core";
import type { ReadJob } from "#formats";
import { sentenceOf, severityWords } from "#text";
import { paintSeverity } from "../terminal/colour.ts";
import { counted } from "../terminal/counted.ts";
import { tableLines } from "../terminal/table.ts";
import type { Terminal } from "../terminal/terminal.ts";

/** A finding with what it is about, for findings that have no file. */
export interface LocatedFinding {
  readonly issue: Issue;
  /** "run P12-1", "element P12", or nothing for the job */
  readonly about: string;
}

const ORDER: readonly Severity[] = ["error", "warning", "note"];

/**
 * All findings of a job, from its files and from the computation, each once, in the order of the files.
 *
 * Where only some elements were worked out, findings in readings of the others are left out.
 */
export function allFindings(
  read: ReadJob,
  job: Job | undefined,
  results: JobResults | undefined,
): readonly LocatedFinding[] {
  const passedOver = filesPassedOver(read, job, results);
  const found: LocatedFinding[] = read.findings.map((issue) => ({ issue, about: "" }));
  for (const run of read.unusableRuns)
    found.push(...run.findings.map((issue) => ({ issue, about: `run ${run.runId}` })));
  for (const run of results?.runs ?? []) found.push(...aboutRun(run));
  for (const element of results?.elements ?? []) found.push(...aboutElement(element));
  const seen = new Set<string>();
  return found.filter(({ issue }) => {
    if (issue.place.file !== undefined && passedOver.has(issue.place.file)) return false;
    const key = JSON.stringify([issue.code, issue.place, issue.values]);
    return seen.size < seen.add(key).size;
  });
}

function filesPassedOver(
  read: ReadJob,
  job: Job | undefined,
  results: JobResults | undefined,
): ReadonlySet<string> {
  if (job === undefined || results === undefined) return new Set();
  const worked = new Set(results.elements.map((element) => element.elementId));
  const known = new Set(job.elements.map((element) => element.id));
  return new Set(
    [...job.runs, ...read.unusableRuns]
      .filter((run) => known.has(run.elementId) && !worked.has(run.elementId))
      .map((run) => run.file),
  );
}

const aboutRun = (run: RunResult): LocatedFinding[] =>
  run.findings.map((issue) => ({ issue, about: `run ${run.runId}` }));
const aboutElement = (element: ElementResult): LocatedFinding[] =>
  element.findings.map((issue) => ({ issue, about: `element ${element.elementId}` }));

/** Where to look: "readings/P12-1.csv:14 tilt_x_deg"; what the finding is about where it has no file. */
export function placeOf({ issue, about }: LocatedFinding): string {
  const { file, line, field } = issue.place;
  const where = file === undefined ? "" : line === undefined ? file : `${file}:${line}`;
  return [where, field ?? "", where === "" ? about : ""].filter((part) => part !== "").join(" ") || "job";
}

export const countOf = (findings: readonly LocatedFinding[], severity: Severity): number =>
  findings.filter(({ issue }) => issue.severity === severity).length;

/** One line a finding: severity, place, sentence. */
export function findingLines(terminal: Terminal, findings: readonly LocatedFinding[]): readonly string[] {
  const word = ({ issue }: LocatedFinding) => severityWords.en[issue.severity];
  const columns = [
    {
      heading: "",
      cell: word,
      paint: (row: LocatedFinding, text: string) => paintSeverity(terminal, row.issue.severity, text),
    },
    { heading: "", cell: placeOf },
    { heading: "", cell: ({ issue }: LocatedFinding) => sentenceOf(issue) },
  ];
  return tableLines(columns, findings).slice(1);
}

/** "3 errors, 1 warning, 12 notes"; "no findings" where there are none. */
export function findingCounts(findings: readonly LocatedFinding[]): string {
  const parts = ORDER.map((severity) => ({ severity, count: countOf(findings, severity) }))
    .filter(({ count }) => count > 0)
    .map(({ severity, count }) => counted(count, severity));
  return parts.length > 0 ? parts.join(", ") : "no findings";
}
