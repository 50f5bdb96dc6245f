import { tidyPath } from "#formats";
import type { JsonObject, JsonValue, ThingState } from "#records";
import { filled, objectOf, without } from "../shared/objects.ts";
import { type HeldRow, rowsOfRun } from "../shared/readings-of-run.ts";
import { referencesOf } from "../shared/references-of-run.ts";

/** A run as job.json writes it, without the name of its file, and its readings. */
export interface GivenRun {
  readonly entry: JsonObject;
  /** the file that the run names; undefined where the log does not say */
  readonly file: string | undefined;
  /** a file that is kept as a whole, instead of rows */
  readonly kept: JsonObject | undefined;
  /** rows that count */
  readonly rows: readonly HeldRow[];
  /** rows of the log, those that were set aside too */
  readonly held: number;
  /** rows that the end of the run names; undefined while it is open */
  readonly expected: number | undefined;
}

/** @param fields of the run, settled; `opened` must be there. */
export function giveRun(id: string, thing: ThingState, fields: JsonObject): GivenRun {
  const opened = objectOf(fields["opened"]);
  const settings = objectOf(opened["settings"]);
  const { opening, ties, closing } = referencesOf(thing);
  const calibrations = opened["calibrations"];
  const hasCalibrations = Array.isArray(calibrations) && calibrations.length > 0;
  const held = rowsOfRun(thing, fields);
  const { readings } = settings;
  const entry = filled({
    id,
    element: opened["element"],
    tube: opened["tube"],
    instrument: opened["instrument"],
    readings,
    measures: opened["measures"],
    calibrations: hasCalibrations ? calibrations : undefined,
    operator: opened["operator"],
    started_at: opened["started_at"],
    opening,
    closing,
    ties: ties.length > 0 ? (ties as readonly JsonValue[]) : undefined,
    ...without(settings, "readings"),
  });
  const rows = objectOf(fields["closed"])["rows"];
  const kept = objectOf(opened["readings_file"]);
  return {
    entry,
    file: typeof readings === "string" ? tidyPath(readings) : undefined,
    kept: typeof kept["blob"] === "string" ? kept : undefined,
    rows: held.filter(({ isAside }) => !isAside),
    held: held.length,
    expected: typeof rows === "number" ? rows : undefined,
  };
}
