import type { ElementDetail } from "../desk.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { elementRow, elementsInConflict } from "./job-view.ts";
import { runRows } from "./run-view.ts";

/** All about one element; undefined if the job has none of that name. */
export function elementDetail(now: JobNow, id: string): ElementDetail | undefined {
  const { job } = now.read;
  const design = job?.elements.find((element) => element.id === id);
  if (job === undefined || design === undefined) return undefined;
  const worked = now.results.get(id);
  const runs = runRows(now, id);
  return {
    row: elementRow(design, runs.length, worked, elementsInConflict(now)),
    design,
    tubes: job.tubes.filter(({ elementId }) => elementId === id),
    result: worked?.result,
    runs,
    findings: [...(worked?.result.findings ?? []), ...runs.flatMap((run) => run.findings)],
  };
}
