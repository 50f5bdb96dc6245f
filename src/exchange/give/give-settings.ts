import type { JsonObject, JsonValue, ThingState } from "#records";
import { AS_WRITTEN, JOB_FIELDS, JOB_FORMAT, PLACE_FIELDS } from "../shared/names.ts";
import { filled, isObject, objectOf, without } from "../shared/objects.ts";

/** Parts of job.json that stand in lists. */
export interface SettingsLists {
  readonly criteria: readonly JsonObject[];
  readonly instruments: readonly JsonObject[];
  readonly calibrations: readonly JsonObject[];
  readonly runs: readonly JsonObject[];
}

/** job.json from the fields of the job and its lists, in the order in which people are used to it. */
export function giveSettings(job: JsonObject, lists: SettingsLists): JsonObject {
  const written = objectOf(job[AS_WRITTEN]);
  const known = (key: string): JsonValue | undefined => job[key] ?? written[key];
  const placed = Object.fromEntries(
    PLACE_FIELDS.flatMap((key) => (job[key] === undefined ? [] : [[key, job[key]] as const])),
  );
  const oddPlace = written["place"];
  const place =
    oddPlace === undefined || isObject(oddPlace) ? { ...placed, ...objectOf(oddPlace) } : oddPlace;
  const list = (key: keyof SettingsLists): JsonValue | undefined => {
    const rest = written[key];
    if (rest !== undefined && !Array.isArray(rest)) return rest;
    const all: readonly JsonValue[] = [...lists[key], ...((rest ?? []) as readonly JsonValue[])];
    return all.length > 0 || key === "instruments" || key === "runs" ? all : undefined;
  };
  return filled({
    $schema: known("$schema"),
    format: JOB_FORMAT,
    name: known("name"),
    remark: known("remark"),
    place: isObject(place) && Object.keys(place).length === 0 ? undefined : place,
    criteria: list("criteria"),
    criteria_sets: known("criteria_sets"),
    decision: known("decision"),
    uncertainty: known("uncertainty"),
    limits: known("limits"),
    instruments: list("instruments"),
    calibrations: list("calibrations"),
    runs: list("runs"),
    ...without(written, "place", "elements", "tubes", ...Object.keys(lists), ...JOB_FIELDS),
  });
}

export function giveCriterion(id: string, fields: JsonObject): JsonObject {
  const { kind, applies_to, source, parameters } = fields;
  return filled({ id, kind, applies_to, ...objectOf(parameters), source, ...objectOf(fields[AS_WRITTEN]) });
}

const INSTRUMENT_KEYS = [
  "serial",
  "gauge_length_m",
  "outer_diameter_mm",
  "length_m",
  "cable",
  "budget",
  "errors",
];

export function giveInstrument(id: string, fields: JsonObject): JsonObject {
  const named = Object.fromEntries(INSTRUMENT_KEYS.map((key) => [key, fields[key]]));
  return filled({
    id,
    ...named,
    ...without(fields, AS_WRITTEN, ...INSTRUMENT_KEYS),
    ...objectOf(fields[AS_WRITTEN]),
  });
}

export function giveCalibration(id: string, fields: JsonObject, thing: ThingState): JsonObject {
  const { data, kind, instrument, made_at, valid_until, max_runs } = objectOf(fields["record"]);
  const raw = objectOf(data);
  const events = (thing.lists["ended_by"] ?? []).map(({ value }) => value);
  const own = raw["ended_by"];
  const ended = [...(Array.isArray(own) ? (own as readonly JsonValue[]) : []), ...events];
  return filled({
    id,
    instrument,
    kind,
    made_at,
    valid_until,
    max_runs,
    ...raw,
    ended_by: ended.length > 0 ? ended : own,
  });
}
