import { type ElementResult, type Job, reduceJob } from "#core";
import { thingKey } from "#records";
import type { PathView, SwitchEffect } from "../desk-review.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { pathAcceptance, readingsAcceptance } from "./acceptance.ts";
import { restsOn } from "./rests-on.ts";
import { switchedJob, switchesOf } from "./switched-job.ts";

/** The steps that lead from readings to the axis, each with what it did, and what would be without it. */
export async function pathView(now: JobNow, element: string): Promise<PathView | undefined> {
  const { job } = now.read;
  const worked = now.results.get(element);
  if (job === undefined || worked === undefined) return undefined;
  const own = job.runs.filter(({ elementId }) => elementId === element);
  const carried = own.find(({ opening }) => opening !== undefined);
  return {
    runs: worked.runs.map(({ runId, tubeId, steps, judgeable }) => ({
      run: runId,
      tube: tubeId,
      steps,
      judgeable,
    })),
    switches: switchesOf(job, element).map((id) => effectOf(job, element, id, worked.result)),
    closure: carried?.closureModel,
    acceptance: await pathAcceptance(now, element, await restsOn(now, element)),
    waitingRuns: own
      .map(({ id }) => id)
      .filter((id) => now.log.state.things[thingKey("run", id)] !== undefined)
      .filter((id) => readingsAcceptance(now, id).state !== "accepted"),
  };
}

function effectOf(job: Job, element: string, id: string, result: ElementResult): SwitchEffect {
  const options = { only: [element], verdicts: false };
  const without = reduceJob(switchedJob(job, element, { without: [id] }), options).elements[0];
  const [before, after] = [result.axis.at(-1), without?.axis.at(-1)];
  const movesM =
    before === undefined || after === undefined
      ? Number.NaN
      : Math.hypot(after.northM - before.northM, after.eastM - before.eastM, after.downM - before.downM);
  return { id, movesM };
}
