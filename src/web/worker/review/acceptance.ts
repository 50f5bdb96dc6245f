import { type JsonObject, type ThingState, thingKey } from "#records";
import type { Acceptance } from "../desk-review.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { entriesById } from "./log-lookup.ts";

/** Questions that decisions answer. */
export const READINGS = "readings-accepted";
export const PATH = "path-accepted";
export const VERDICT = "verdict";

/** Kinds of entry after which readings have to be looked at again. */
const CHANGES_READINGS: ReadonlySet<string> = new Set([
  "run-opened",
  "readings",
  "reference",
  "run-closed",
  "set-aside",
  "put-back",
]);

/** Whether the readings of a run were accepted, and whether anything was written about them since. */
export function readingsAcceptance(now: JobNow, run: string): Acceptance {
  const thing = now.log.state.things[thingKey("run", run)];
  const said = decisionOn(thing, READINGS);
  if (thing === undefined || said === undefined) return { state: "waiting" };
  const since = thing.entries.slice(thing.entries.indexOf(said.entry) + 1);
  const byId = entriesById(now.log);
  const isChanged = since.some((id) => CHANGES_READINGS.has(byId.get(id)?.kind ?? ""));
  return { state: isChanged ? "changed" : "accepted", by: said.by, reason: said.reason };
}

/** Whether the path of an element was accepted, and whether its runs are still those that it was accepted with. */
export async function pathAcceptance(now: JobNow, element: string, restsOn: JsonObject): Promise<Acceptance> {
  const said = decisionOn(now.log.state.things[thingKey("element", element)], PATH);
  if (said === undefined) return { state: "waiting" };
  const isSame = JSON.stringify(said.answer["rests_on"]) === JSON.stringify(restsOn);
  return { state: isSame ? "accepted" : "changed", by: said.by, reason: said.reason };
}

/** A decision as it stands: the last one where several have not been settled. */
export interface Decided {
  readonly answer: JsonObject;
  readonly reason: string;
  readonly by: { readonly author: string; readonly wall: string };
  readonly entry: string;
  readonly device: string;
  readonly sequence: number;
}

/** @returns undefined where nobody has answered the question, or somebody has taken the answer back. */
export function decisionOn(thing: ThingState | undefined, question: string): Decided | undefined {
  const last = thing?.fields[`decision/${question}`]?.at(-1);
  const by = last?.by.at(-1);
  if (last === undefined || by === undefined) return undefined;
  const { answer, reason } = last.value as { readonly answer: JsonObject; readonly reason: string };
  if (answer === null || typeof answer !== "object") return undefined;
  const { author, wall, entry, device, sequence } = by;
  return { answer, reason, by: { author, wall }, entry, device, sequence };
}
