import {
  assessRestLog,
  degreesFromRadians,
  type RestDisturbance,
  type RestLog,
  type RestResult,
  radiansFromDegrees,
  SECONDS_PER_HOUR,
  SHORT_REST_S,
  SHORTEST_REST_S,
} from "#core";
import type { Finder } from "../finding/finder.ts";
import type { Column } from "../table/column.ts";
import { type LongColumn, readLongCsv } from "../table/read-long-csv.ts";
import { RunClock, tellTimesBackwards } from "./read-times.ts";

const RATE = "rate_deg_per_h";
const TURN = "turn_deg";

export const REST_LOG_COLUMNS: readonly Column[] = [
  { name: "time", kind: "time" },
  { name: "time_s", kind: "number", min: -1e10, max: 1e10, anyNumber: true },
  { name: RATE, kind: "number", min: -1e7, max: 1e7, anyNumber: true },
  { name: TURN, kind: "angle", min: -1e6, max: 1e6 },
];

/**
 * Reads the log of a gyro at rest and works out its zero (rule B3). The rate is used where both rate and turn are there.
 *
 * @returns undefined when no zero comes out.
 * Frame: probe axis, clockwise looking down the hole.
 * Blocking: formats.column-missing, formats.time-backwards, formats.rest-log-too-short, and those of the cells.
 * Errors: formats.rest-log-jump. Warnings: formats.rest-log-short, formats.rest-log-trend, formats.rest-log-gap.
 */
export function readRestLog(bytes: Uint8Array, found: Finder): RestResult | undefined {
  const file = readLongCsv(bytes, REST_LOG_COLUMNS, found);
  if (file === undefined) return undefined;
  const { head, rowsAtMost } = file;
  const hasRate = head.has(RATE);
  if (!hasRate && !head.has(TURN)) {
    const values = { found: "no such heading", expected: `${RATE} or ${TURN}` };
    found.block("formats.column-missing", { line: 1, field: RATE }, values);
  }
  if (!head.has("time_s")) head.require("time");
  if (found.blocked) return undefined;
  const timeS = new Float64Array(rowsAtMost);
  const values = new Float64Array(rowsAtMost);
  const line = new Int32Array(rowsAtMost);
  const name = head.has("time") ? "time" : "time_s";
  const clock = new RunClock(name, head.heading(name), true, found);
  const columns: readonly LongColumn[] = [
    {
      name,
      need: "required",
      takeText: (row, text, at) => {
        timeS[row] = clock.next(text, at);
        return true;
      },
    },
    {
      name: hasRate ? RATE : TURN,
      need: "required",
      takeNumber: (row, value) => {
        values[row] = hasRate ? radiansFromDegrees(value) / SECONDS_PER_HOUR : value;
      },
    },
  ];
  const count = file.scan(columns, (row, at) => {
    line[row] = at;
  });
  clock.startedAt();
  tellTimesBackwards(timeS.subarray(0, count), line, head.heading(name), found);
  if (found.blocked) return undefined;
  const log = logOf(hasRate, timeS.subarray(0, count), values.subarray(0, count));
  const result = assessRestLog(log);
  tellResult(result, log, line, found);
  return result;
}

function logOf(hasRate: boolean, timeS: Float64Array, values: Float64Array): RestLog {
  const none = new Float64Array(0);
  return {
    count: timeS.length,
    timeS,
    rateRadPerS: hasRate ? values : none,
    turnRad: hasRate ? none : values,
  };
}

const degreesPerHour = (radiansPerS: number): number =>
  Number((degreesFromRadians(radiansPerS) * SECONDS_PER_HOUR).toPrecision(3));

function tellResult(result: RestResult | undefined, log: RestLog, line: Int32Array, found: Finder): void {
  const seconds = log.count < 2 ? 0 : Math.round(log.timeS[log.count - 1]! - log.timeS[0]!);
  if (result === undefined) {
    const values = {
      found: `${log.count} rows in ${seconds} s`,
      expected: `more than 60 in ${SHORTEST_REST_S} s or longer`,
    };
    found.block("formats.rest-log-too-short", {}, values);
    return;
  }
  if (seconds < SHORT_REST_S)
    found.warning(
      "formats.rest-log-short",
      {},
      { found: `${seconds} s`, expected: `${SHORT_REST_S} s or longer` },
    );
  for (const disturbance of result.disturbances) tellDisturbance(disturbance, line, result, found);
}

function tellDisturbance(each: RestDisturbance, line: Int32Array, result: RestResult, found: Finder): void {
  switch (each.kind) {
    case "jump": {
      const values = {
        found: degreesPerHour(each.sizeRadPerS),
        expected: "the noise of the gyro alone",
        count: each.count,
      };
      found.error("formats.rest-log-jump", { line: line[each.row]! }, values);
      return;
    }
    case "trend": {
      const usual = degreesPerHour(result.standardUncertaintyRadPerS);
      const values = {
        found: degreesPerHour(each.changeRadPerS),
        expected: `a steady rate, known to ${usual}`,
      };
      found.warning("formats.rest-log-trend", {}, values);
      return;
    }
    case "gap": {
      const values = {
        found: `${each.seconds.toFixed(2)} s`,
        expected: `a row every ${each.usualS.toPrecision(3)} s`,
      };
      found.warning("formats.rest-log-gap", { line: line[each.row]! }, values);
    }
  }
}
