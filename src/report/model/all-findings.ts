import type { ElementResult, Job, JobResults, RunResult } from "#core";
import type { ReadJob } from "#formats";
import type { ReportFinding } from "./job-report.ts";

/**
 * All findings of a job, from its files and from the computation, each once, in the order of the files.
 *
 * Where only some elements were worked out, findings in readings of the others are left out.
 */
export function allFindings(
  read: ReadJob,
  job: Job | undefined,
  results: JobResults | undefined,
): readonly ReportFinding[] {
  const passedOver = filesPassedOver(read, job, results);
  const found: ReportFinding[] = read.findings.map((issue) => ({ issue, about: "" }));
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

const aboutRun = (run: RunResult): ReportFinding[] =>
  run.findings.map((issue) => ({ issue, about: `run ${run.runId}` }));
const aboutElement = (element: ElementResult): ReportFinding[] =>
  element.findings.map((issue) => ({ issue, about: `element ${element.elementId}` }));
