import {
  type DesignElement,
  type ElementResult,
  interpolatePath,
  ned,
  norm,
  offsetFromDesign,
  reduceJob,
  subtract,
} from "#core";
import type { Trial, TrialChoices, TrialRow } from "../desk-review.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { verdictOf } from "../view/verdict-of-element.ts";
import { switchedJob } from "./switched-job.ts";

/** An element worked out in another way, beside what the job says of it. */
export function tryOut(now: JobNow, element: string, choices: TrialChoices): Trial | undefined {
  const { job } = now.read;
  const result = now.results.get(element)?.result;
  const design = job?.elements.find(({ id }) => id === element);
  if (job === undefined || result === undefined || design === undefined) return undefined;
  const { method } = choices;
  const options = { only: [element], ...(method === undefined ? {} : { method }) };
  const tried = reduceJob(switchedJob(job, element, choices), options).elements[0];
  if (tried === undefined) return undefined;
  const rows = besideEachOther(design, result, tried);
  const largest = rows.reduce<Moved | undefined>(
    (most, row) => (most === undefined || row.movedM > most.movedM ? row : most),
    undefined,
  );
  return {
    verdict: verdictOf(tried),
    verdicts: tried.verdicts,
    verdictNow: verdictOf(result),
    lowest: {
      nowM: result.axis.at(-1)?.offsetM ?? Number.NaN,
      trialM: tried.axis.at(-1)?.offsetM ?? Number.NaN,
    },
    largestM: largest?.movedM ?? Number.NaN,
    largestLevelM: largest?.levelM ?? Number.NaN,
    rows: rows.map(({ levelM, now: before, trial }) => ({ levelM, now: before, trial })),
  };
}

interface Moved extends TrialRow {
  readonly movedM: number;
}

/** Both axes at the depths of the first, as far as the other goes. */
function besideEachOther(
  design: DesignElement,
  { axis }: ElementResult,
  { path }: ElementResult,
): readonly Moved[] {
  if (path === undefined) return [];
  return axis.flatMap(({ depthM, northM, eastM, downM, alongM, acrossM }): Moved[] => {
    const point = interpolatePath(path, depthM).position;
    if (!Number.isFinite(point.down)) return [];
    const { along, across } = offsetFromDesign(design, point);
    return [
      {
        levelM: -downM,
        now: { alongM, acrossM },
        trial: { alongM: along, acrossM: across },
        movedM: norm(subtract(point, ned(northM, eastM, downM))),
      },
    ];
  });
}
