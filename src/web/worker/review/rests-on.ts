import { type JsonObject, rootOfIds, thingKey } from "#records";
import type { JobNow } from "../jobs/worked-job.ts";
import { entriesById } from "./log-lookup.ts";

/**
 * What a decision about an element rests on: of each of its runs how many entries there are and the root of the tree over their ids.
 * Whoever signs the decision signs for exactly these readings.
 */
export async function restsOn({ log, read }: JobNow, element: string): Promise<JsonObject> {
  const runs = [
    ...(read.job?.runs ?? []),
    ...read.unusableRuns.map(({ runId, elementId }) => ({ id: runId, elementId })),
  ]
    .filter(({ elementId }) => elementId === element)
    .map(({ id }) => id)
    .toSorted();
  const entries = await Promise.all(
    runs.map(async (run) => {
      const ids = (log.state.things[thingKey("run", run)]?.entries ?? []).filter((id) => !isRemark(log, id));
      return [run, { entries: ids.length, root: await rootOfIds(ids.toSorted()) }] as const;
    }),
  );
  return Object.fromEntries(entries);
}

/** Accepting readings, signing a run or noting something about it changes nothing that was measured. */
const REMARKS: ReadonlySet<string> = new Set(["decision", "sign-off", "note", "photo"]);

const isRemark = (log: JobNow["log"], id: string): boolean =>
  REMARKS.has(entriesById(log).get(id)?.kind ?? "");
