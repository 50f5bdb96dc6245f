import type { JsonObject, ThingState } from "#records";
import { objectOf, without } from "./objects.ts";

export interface References {
  readonly opening: JsonObject | undefined;
  readonly ties: readonly JsonObject[];
  readonly closing: JsonObject | undefined;
}

/** The headings known for a run. Of several openings or closings the last counts; ties stand in the order of the log. */
export function referencesOf(thing: ThingState | undefined): References {
  const all = (thing?.lists["references"] ?? []).map(({ value }) => objectOf(value));
  const ofRole = (role: string) =>
    all.filter((each) => each["role"] === role).map((each) => without(each, "role"));
  return { opening: ofRole("opening").at(-1), ties: ofRole("tie"), closing: ofRole("closing").at(-1) };
}
