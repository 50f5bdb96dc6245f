import { type JsonObject, type JsonValue, thingKey } from "#records";
import { AS_WRITTEN, JOB_FIELDS, PLACE_FIELDS } from "../shared/names.ts";
import { filled, isObject, objectOf, without } from "../shared/objects.ts";
import { isTaken, shapedFields } from "./shaped.ts";
import type { TakenThing } from "./taken.ts";

/** What of job.json an entry cannot say, by key: kept in the job's `as_written`. */
export type Rest = Record<string, JsonValue>;

/** The job itself. @param rest what the other parts of job.json and the tables could not place. */
export function takeJob(settings: JsonObject, rest: Rest, unused: JsonValue | undefined): TakenThing {
  const place = objectOf(settings["place"]);
  const flat = Object.fromEntries(
    JOB_FIELDS.flatMap((key) => (settings[key] === undefined ? [] : [[key, settings[key]] as const])),
  );
  const placed = Object.fromEntries(
    PLACE_FIELDS.flatMap((key) => (place[key] === undefined ? [] : [[key, place[key]] as const])),
  );
  const shapedPlace = shapedFields("job", {}, placed);
  const shapedFlat = shapedFields("job", {}, flat);
  const oddPlace = { ...without(place, ...PLACE_FIELDS), ...objectOf(shapedPlace[AS_WRITTEN]) };
  const isOdd = settings["place"] !== undefined && !isObject(settings["place"]);
  const known = ["format", "place", "criteria", "instruments", "calibrations", "runs", ...JOB_FIELDS];
  const asWritten: JsonObject = filled({
    ...without(settings, ...known),
    ...objectOf(shapedFlat[AS_WRITTEN]),
    ...rest,
    place: isOdd ? settings["place"] : Object.keys(oddPlace).length > 0 ? oddPlace : undefined,
  });
  const set = filled({
    ...without(shapedFlat, AS_WRITTEN),
    ...without(shapedPlace, AS_WRITTEN),
    unused_readings: unused,
    [AS_WRITTEN]: Object.keys(asWritten).length > 0 ? asWritten : undefined,
  });
  return { kind: "job", thing: "job", ids: {}, set };
}

/** A reference as job.json may write it: a whole number counts as text. */
export function idOf(value: JsonValue | undefined): string | undefined {
  if (typeof value === "number" && Number.isInteger(value)) return String(value);
  const text = typeof value === "string" ? value.trim() : "";
  return text === "" ? undefined : text;
}

/**
 * The parts of a list of job.json, each taken by itself. One that has no reference of its own or that `take` cannot place goes to
 * the rest as it stands.
 */
export function takeList<T>(
  settings: JsonObject,
  key: string,
  rest: Rest,
  take: (id: string, part: JsonObject) => T | undefined,
): readonly T[] {
  const list = settings[key];
  if (list === undefined) return [];
  if (!Array.isArray(list)) {
    rest[key] = list;
    return [];
  }
  const seen = new Set<string>();
  const left: JsonValue[] = [];
  const taken = (list as readonly JsonValue[]).flatMap((part) => {
    const id = isObject(part) ? idOf(part["id"]) : undefined;
    const one = id === undefined || seen.has(id) ? undefined : take(id, part as JsonObject);
    if (one === undefined) {
      left.push(part);
      return [];
    }
    seen.add(id!);
    return [one];
  });
  if (left.length > 0) rest[key] = left;
  return taken;
}

export function takeCriterion(id: string, part: JsonObject): TakenThing | undefined {
  const ids = { criterion: id };
  const { kind, applies_to, source } = part;
  const parameters = without(part, "id", "kind", "applies_to", "source");
  const fields = filled({ kind, applies_to, source, parameters });
  return named({
    kind: "criterion",
    thing: thingKey("criterion", id),
    ids,
    set: shapedFields("criterion", ids, fields),
  });
}

export function takeInstrument(id: string, part: JsonObject): TakenThing | undefined {
  const ids = { instrument: id };
  const { serial } = part;
  const asText = typeof serial === "number" && Number.isInteger(serial) ? { serial: String(serial) } : {};
  const fields = { ...without(part, "id"), ...asText };
  return named({
    kind: "instrument",
    thing: thingKey("instrument", id),
    ids,
    set: shapedFields("instrument", ids, fields),
  });
}

/** A thing whose entries can be written at all. */
const named = (thing: TakenThing): TakenThing | undefined =>
  isTaken(thing.kind, { ...thing.ids, set: { [AS_WRITTEN]: null } }) ? thing : undefined;
