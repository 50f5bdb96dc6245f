import type { Issue } from "#core";
import { canonicalJson, type JobState, type JsonObject, type JsonValue, type ThingState } from "#records";
import { warning } from "../issue.ts";
import { isObject } from "./objects.ts";

/** A reading of one row that was set aside or put back, as a field of its run. */
export const ROW_FIELD = /^row\/([0-9a-f]{64})\/(\d+)$/;

/** The fields of a thing, one value each; cleared ones are left out. */
export interface Settled {
  readonly fields: JsonObject;
  /** fields with more than one value */
  readonly findings: readonly Issue[];
}

/**
 * One value for every field of a thing. Of values that nobody has settled yet the last counts in the order in which entries
 * stand for everybody, and a warning names them all.
 *
 * Warnings: exchange.conflict.
 */
export function settle(thing: string, state: ThingState | undefined): Settled {
  const fields: Record<string, JsonValue> = {};
  const findings: Issue[] = [];
  for (const [field, values] of Object.entries(state?.fields ?? {})) {
    const chosen = values.at(-1)?.value ?? null;
    if (chosen !== null) fields[field] = chosen;
    const said = [...new Set(values.map(({ value }) => meant(field, value)))];
    if (said.length > 1)
      findings.push(
        warning(
          "exchange.conflict",
          { field: `${thing}.${field}` },
          { thing, field, found: said.join(", "), used: meant(field, chosen) },
        ),
      );
  }
  return { fields, findings };
}

/** What a value says, for people. Two reasons for setting the same reading aside are no conflict. */
function meant(field: string, value: JsonValue): string {
  if (ROW_FIELD.test(field) && isObject(value)) return value["aside"] === true ? "set aside" : "counts";
  const text = canonicalJson(value);
  return text.ok ? text.value.slice(0, 100) : "";
}

/** Things of one type by their ids, in the order in which people came to name them. */
export function thingsOf(
  state: JobState,
  type: string,
  placeOf: (thing: ThingState) => number,
): readonly { readonly key: string; readonly ids: readonly string[]; readonly thing: ThingState }[] {
  return Object.entries(state.things)
    .filter(([key]) => key.startsWith(`${type}/`))
    .map(([key, thing]) => ({ key, thing, ids: key.split("/").slice(1).map(decodeURIComponent) }))
    .sort((a, b) => placeOf(a.thing) - placeOf(b.thing) || (a.key < b.key ? -1 : 1));
}
