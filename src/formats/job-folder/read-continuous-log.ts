import {
  type ContinuousLog,
  condenseLog,
  LEGS,
  type Measures,
  type NoReadingReason,
  type PassedOver,
  radiansFromDegrees,
  type SteadySettings,
  USUAL_STEADY,
} from "#core";
import type { Finder } from "../finding/finder.ts";
import { type LongColumn, type LongCsv, readLongCsv } from "../table/read-long-csv.ts";
import { checkReadings } from "./check-readings.ts";
import { type ReadingsRead, readFace, requireColumns } from "./read-readings.ts";
import { RunClock, tellTimesBackwards } from "./read-times.ts";
import { measuresTurn, NEEDED_COLUMNS, READINGS_COLUMNS } from "./readings-columns.ts";
import type { SteadyInput } from "./schema/run-schema.ts";

const NUMBERS = [
  ["depthM", "depth_m"],
  ["depthCounts", "count"],
  ["tiltXRad", "tilt_x_deg"],
  ["tiltYRad", "tilt_y_deg"],
  ["accX", "acc_x"],
  ["accY", "acc_y"],
  ["accZ", "acc_z"],
  ["turnRad", "turn_deg"],
  ["temperatureC", "temperature_c"],
] as const;
type NumberField = (typeof NUMBERS)[number][0];

/** What the run says about its log, and what is known besides. */
export interface LogSettings {
  readonly steady: SteadyInput | undefined;
  /** metres in one count of the depth device; NaN where no calibration tells */
  readonly metresPerCount: number;
  readonly closes: boolean;
  readonly ties: number;
}

/**
 * Reads a run that was logged continuously and finds its stops: the rest goes on as with a run read stop by stop.
 *
 * A cell that cannot be read blocks the run as in a run read stop by stop; so does a log in which nothing was at rest.
 *
 * @returns undefined when no readings come out.
 * Frame: probe. Angles in radians, lengths in metres; NaN = not recorded.
 * Blocking: formats.continuous-measures, formats.log-no-stop, formats.time-backwards, and those of requireColumns.
 * Warnings: formats.stop-without-reading. Notes: formats.log-condensed.
 */
export function readContinuousLog(
  bytes: Uint8Array,
  measures: Measures,
  settings: LogSettings,
  found: Finder,
): ReadingsRead | undefined {
  if (measures === "inclination-azimuth") {
    const values = { found: measures, expected: "tilt-turn, acceleration-turn or keyed-tilt" };
    found.block("formats.continuous-measures", {}, values);
    return undefined;
  }
  const file = readLongCsv(bytes, READINGS_COLUMNS, found);
  if (file === undefined) return undefined;
  requireColumns(file.head, measures, found);
  if (!file.head.has("time_s")) file.head.require("time");
  if (found.blocked) return undefined;
  const { log, startedAt } = readRows(file, measures, found);
  if (found.blocked) return undefined;
  const options = { ...settings, steady: steadyOf(settings.steady) };
  const { readings, passedOver } = condenseLog(log, options);
  tellPassedOver(passedOver, log, options.steady, found);
  if (readings.count === 0) {
    const values = { found: log.count, expected: `a stop of ${options.steady.seconds} s at rest` };
    found.block("formats.log-no-stop", {}, values);
    return undefined;
  }
  const note = { found: log.count, expected: readings.count };
  found.note("formats.log-condensed", {}, note);
  checkReadings(readings, measures, (name) => file.head.heading(name), found);
  return { readings, startedAt };
}

export function steadyOf(input: SteadyInput | undefined): SteadySettings {
  const { seconds, tilt_deg: tilt, turn_deg: turn, depth_m: depthM } = input ?? {};
  return {
    seconds: seconds ?? USUAL_STEADY.seconds,
    tiltRad: tilt === undefined ? USUAL_STEADY.tiltRad : radiansFromDegrees(tilt),
    turnRad: turn === undefined ? USUAL_STEADY.turnRad : radiansFromDegrees(turn),
    depthM: depthM ?? USUAL_STEADY.depthM,
  };
}

function readRows(
  file: LongCsv,
  measures: Measures,
  found: Finder,
): { log: ContinuousLog; startedAt: string | undefined } {
  const { head, rowsAtMost } = file;
  const needed = NEEDED_COLUMNS[measures];
  const usesCounts = !head.has("depth_m");
  const isRead = (name: string): boolean =>
    head.has(name) && (name !== "count" || usesCounts) && (name !== "turn_deg" || measuresTurn(measures));
  const has = new Set(NUMBERS.map(([, name]) => name).filter(isRead));
  const arrays = Object.fromEntries(
    NUMBERS.map(([field, name]) => [
      field,
      new Float64Array(has.has(name) ? rowsAtMost : 0).fill(Number.NaN),
    ]),
  ) as Record<NumberField, Float64Array>;
  const columns: LongColumn[] = NUMBERS.filter(([, name]) => has.has(name)).map(([field, name]) => {
    const out = arrays[field];
    const isDepth = name === "depth_m" || name === "count";
    return {
      name,
      need: isDepth || needed.includes(name) ? "required" : "optional",
      takeNumber: (row, value) => {
        out[row] = value;
      },
    };
  });
  const timeS = new Float64Array(rowsAtMost).fill(Number.NaN);
  const clock = addTime(file, columns, timeS, found);
  const leg = new Uint8Array(head.has("leg") ? rowsAtMost : 0);
  const face = new Uint8Array(head.has("face") ? rowsAtMost : 0);
  addWords(columns, leg, face, needed.includes("face"));
  const line = new Int32Array(rowsAtMost);
  const count = file.scan(columns, (row, at) => {
    line[row] = at;
  });
  tellTimesBackwards(timeS.subarray(0, count), line, head.heading("time"), found);
  if (count === 0) {
    found.block("formats.no-rows", { line: 1 }, { found: "headings only", expected: "rows of the log" });
  }
  const cut = <T extends Float64Array | Uint8Array | Int32Array>(values: T): T =>
    values.subarray(0, values.length === 0 ? 0 : count) as T;
  const numbers = Object.fromEntries(
    NUMBERS.map(([field]) => [field, cut(arrays[field])]),
  ) as unknown as Pick<ContinuousLog, NumberField>;
  return {
    log: { measures, count, timeS: cut(timeS), ...numbers, leg: cut(leg), face: cut(face), line: cut(line) },
    startedAt: clock.startedAt(),
  };
}

function addTime(file: LongCsv, columns: LongColumn[], timeS: Float64Array, found: Finder): RunClock {
  const name = file.head.has("time") ? "time" : "time_s";
  const clock = new RunClock(name, file.head.heading(name), true, found);
  columns.push({
    name,
    need: "required",
    takeText: (row, text, line) => {
      timeS[row] = clock.next(text, line);
      return true;
    },
  });
  return clock;
}

function addWords(columns: LongColumn[], leg: Uint8Array, face: Uint8Array, needsFace: boolean): void {
  columns.push({
    name: "leg",
    need: "optional",
    takeText: (row, text) => {
      const place = LEGS.indexOf(text.toLowerCase() as (typeof LEGS)[number]);
      leg[row] = Math.max(0, place);
      return place > 0;
    },
    check: (table, row) => table.word(row, "leg", "optional"),
  });
  columns.push({
    name: "face",
    need: needsFace ? "required" : "optional",
    takeText: (row, text) => {
      if (text !== "1" && text !== "2") return false;
      face[row] = Number(text);
      return true;
    },
    check: (table, row, heard) => readFace(table, row, needsFace, heard),
  });
}

/** What a stop lacks, in words. */
const LACKS: Readonly<Record<NoReadingReason, string>> = {
  "too-short": "too short",
  depth: "the depth creeps",
  "tilt-error": "the tilts scatter too much",
  "tilt-change": "the tilts change",
  "tilt-order": "the tilts swing slowly",
  turn: "the probe turns",
  "same-place": "a longer one at the same depth is used",
};

function tellPassedOver(
  passedOver: readonly PassedOver[],
  log: ContinuousLog,
  steady: SteadySettings,
  found: Finder,
): void {
  for (const { fromRow, seconds, depth, why } of passedOver) {
    const values = {
      depth: Number(depth.toFixed(3)),
      seconds: Number(seconds.toFixed(1)),
      found: LACKS[why],
      expected: `${steady.seconds} s at rest`,
    };
    const at = { line: log.line[fromRow]! };
    // nothing is lost with a pause that nobody meant as a stop, or with the shorter of two readings
    if (why === "same-place" || why === "too-short") found.note("formats.stop-without-reading", at, values);
    else found.warning("formats.stop-without-reading", at, values);
  }
}
