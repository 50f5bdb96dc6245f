import { isoOf, momentOf } from "#formats";
import { type JsonObject, type JsonValue, thingKey } from "#records";
import { filled, isObject, without } from "../shared/objects.ts";
import { isTaken } from "./shaped.ts";
import { idOf } from "./take-job-json.ts";
import type { TakenCalibration } from "./taken.ts";

/** Fields of a calibration that its entry names; the others are its raw data. */
const NAMED = ["id", "instrument", "kind", "made_at", "valid_until", "max_runs"];

/**
 * A calibration as one whole.
 *
 * @param keepFile keeps a file of the folder as a whole and says how the log names it.
 * @returns undefined where an entry cannot say it.
 */
export function takeCalibration(
  id: string,
  part: JsonObject,
  keepFile: (name: string) => JsonObject | undefined,
): TakenCalibration | undefined {
  const instrument = idOf(part["instrument"]);
  const { kind, made_at: madeAt, valid_until, max_runs, log } = part;
  if (instrument === undefined || typeof kind !== "string" || typeof madeAt !== "string") return undefined;
  const ended = endedOf(id, part["ended_by"]);
  const moment = momentOf(madeAt);
  const isWall = isTaken("calibration", { ...SMALLEST, made_at: madeAt });
  if (!isWall && moment === undefined) return undefined;
  const kept = typeof log === "string" ? keepFile(log) : undefined;
  const body = filled({
    calibration: id,
    instrument,
    kind,
    made_at: isWall ? madeAt : isoOf(moment!.ms),
    valid_until: isFitting("valid_until", valid_until) ? valid_until : undefined,
    max_runs: isFitting("max_runs", max_runs) ? max_runs : undefined,
    data: filled({
      ...without(part, ...NAMED, ...(ended === undefined ? [] : ["ended_by"])),
      // as written, where the log wants another form of it
      made_at: isWall ? undefined : madeAt,
      valid_until: isFitting("valid_until", valid_until) ? undefined : valid_until,
      max_runs: isFitting("max_runs", max_runs) ? undefined : max_runs,
    }),
    log_file: kept,
  });
  if (!isTaken("calibration", body)) return undefined;
  return { thing: thingKey("calibration", id), body, ended: ended ?? [] };
}

const SMALLEST: JsonObject = {
  calibration: "c",
  instrument: "i",
  kind: "k",
  made_at: "2000-01-01T00:00:00Z",
  data: {},
};

const isFitting = (field: string, value: JsonValue | undefined): boolean =>
  value === undefined || isTaken("calibration", { ...SMALLEST, [field]: value });

/** Bodies of `calibration-ended`; undefined where one of the events does not fit, so that all stay in the raw data. */
function endedOf(calibration: string, events: JsonValue | undefined): readonly JsonObject[] | undefined {
  if (events === undefined) return [];
  if (!Array.isArray(events)) return undefined;
  const bodies = (events as readonly JsonValue[]).map((event) =>
    isObject(event) ? { ...event, calibration } : {},
  );
  return bodies.every((body) => isTaken("calibration-ended", body)) ? bodies : undefined;
}
