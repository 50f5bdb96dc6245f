import type { DesignElement, ElementResult, Issue, Job, SurveyRun, Verdict } from "#core";
import type { ElementRow, FindingCounts, JobView, Waiting } from "../desk.ts";
import { groupBy } from "../group-by.ts";
import type { WorkedElement } from "../jobs/kept-results.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { decidingRule, verdictOf } from "./verdict-of-element.ts";

/** A job as its screens see it, made from what is known of it now. */
export function jobView(id: string, revision: number, now: JobNow): JobView {
  const { log, read, results, work } = now;
  const { job } = read;
  const conflicting = elementsInConflict(now);
  const elements = job === undefined ? [] : elementRows(job, results, conflicting);
  const counts = countVerdicts(elements);
  const findings = countFindings(allFindings(now));
  return {
    id,
    revision,
    name: job?.name ?? nameInLog(now) ?? id,
    place: job?.place,
    work,
    elements,
    counts,
    runs: (job?.runs.length ?? 0) + read.unusableRuns.length,
    entries: log.entries.length,
    findings,
    conflicts: log.state.conflicts.length,
    isComplete: log.state.isComplete,
    waiting: waitingOf(now, elements, counts, findings),
  };
}

/** A job without a schedule cannot be read as a folder yet; it has a name all the same. */
function nameInLog({ log }: JobNow): string | undefined {
  const name = log.state.things["job"]?.fields["name"]?.at(-1)?.value;
  return typeof name === "string" ? name : undefined;
}

/** Every finding of the job: of its files, of its log, of its runs and elements. */
export const allFindings = ({ read, findings, results }: JobNow): readonly Issue[] => [
  ...findings,
  ...read.findings,
  ...[...results.values()].flatMap(({ result, runs }) => [
    ...result.findings,
    ...runs.flatMap((run) => run.findings),
  ]),
];

export function countFindings(findings: readonly Issue[]): FindingCounts {
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findings) counts[severity]++;
  return counts;
}

function elementRows(
  job: Job,
  results: ReadonlyMap<string, WorkedElement>,
  conflicting: ReadonlySet<string>,
): readonly ElementRow[] {
  const runsOf = groupBy(job.runs, ({ elementId }) => elementId);
  return job.elements.map((element) =>
    elementRow(element, runsOf.get(element.id)?.length ?? 0, results.get(element.id), conflicting),
  );
}

/** One element as lists and the plan show it. */
export function elementRow(
  element: DesignElement,
  runs: number,
  worked: WorkedElement | undefined,
  conflicting: ReadonlySet<string>,
): ElementRow {
  const { id, kind, group, sequence, role, section, head, cutoffDownM, toeDownM, rakeRad, rakeBearingRad } =
    element;
  const level = (downM: number | undefined) => (downM === undefined ? undefined : -downM);
  const found =
    worked === undefined ? [] : [...worked.result.findings, ...worked.runs.flatMap((run) => run.findings)];
  return {
    id,
    kind,
    group,
    sequence,
    role,
    section,
    eastM: head.east,
    northM: head.north,
    headLevelM: -head.down,
    cutoffLevelM: level(cutoffDownM),
    toeLevelM: level(toeDownM),
    rakeRad,
    rakeBearingRad,
    runs,
    verdict: worked && verdictOf(worked.result),
    deciding: worked && decidingRule(worked.result),
    lowestOffsetM: lowestOffset(worked?.result),
    findings: countFindings(found),
    inConflict: conflicting.has(id),
  };
}

const lowestOffset = (result: ElementResult | undefined): number =>
  result?.axis.at(-1)?.offsetM ?? Number.NaN;

function countVerdicts(elements: readonly ElementRow[]): Readonly<Record<Verdict, number>> {
  const counts = { within: 0, "too-close-to-call": 0, outside: 0, "not-judged": 0 };
  for (const { verdict } of elements) if (verdict !== undefined) counts[verdict]++;
  return counts;
}

/**
 * Elements whose result a field with two values can change: their own, those of their tubes and runs, of instruments and calibrations
 * that their runs were made with, and of the job and its rules, which are everybody's.
 */
export function elementsInConflict({ log, read }: JobNow): ReadonlySet<string> {
  const runs = read.job?.runs ?? [];
  const all = () => read.job?.elements.map(({ id }) => id) ?? [];
  const measured = (is: (run: SurveyRun) => boolean) => runs.filter(is).map(({ elementId }) => elementId);
  return new Set(
    log.state.conflicts.flatMap(({ thing }) => {
      const [type, first = ""] = thing.split("/").map(decodeURIComponent);
      switch (type) {
        case "element":
        case "tube":
          return [first];
        case "run":
          return measured(({ id }) => id === first);
        case "instrument":
          return measured(({ instrumentId }) => instrumentId === first);
        case "calibration":
          return measured(({ calibrationIds }) => calibrationIds.includes(first));
        case "job":
        case "criterion":
          return all();
        default:
          return [];
      }
    }),
  );
}

function waitingOf(
  { log, work }: JobNow,
  elements: readonly ElementRow[],
  counts: Readonly<Record<Verdict, number>>,
  findings: FindingCounts,
): Waiting {
  if (elements.length === 0 && work.phase === "ready") return { what: "no-elements" };
  const first = (is: (row: ElementRow) => boolean) => elements.find(is)?.id;
  const withVerdict = (verdict: Verdict) => first((row) => row.verdict === verdict);
  if (log.state.conflicts.length > 0)
    return { what: "conflicts", count: log.state.conflicts.length, element: first((row) => row.inConflict) };
  if (!log.state.isComplete)
    return { what: "missing-entries", count: log.state.unread.length, element: undefined };
  if (work.phase !== "ready") return { what: "nothing" };
  if (counts.outside > 0) return { what: "outside", count: counts.outside, element: withVerdict("outside") };
  if (counts["too-close-to-call"] > 0)
    return {
      what: "too-close",
      count: counts["too-close-to-call"],
      element: withVerdict("too-close-to-call"),
    };
  if (findings.error > 0)
    return { what: "errors", count: findings.error, element: first((row) => row.findings.error > 0) };
  const unread = elements.filter((row) => row.runs === 0);
  if (unread.length > 0) return { what: "no-runs", count: unread.length, element: unread[0]?.id };
  if (counts["not-judged"] > 0)
    return { what: "not-judged", count: counts["not-judged"], element: withVerdict("not-judged") };
  return { what: "nothing" };
}
