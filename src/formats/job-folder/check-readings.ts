import type { Measures, Readings } from "#core";
import { degreesFromRadians } from "#core";
import type { Finder } from "../finding/finder.ts";
import { checkDepths } from "./check-depths.ts";
import { measuresTurn } from "./readings-columns.ts";

/** Part of its median by which the length of an acceleration may differ. Common practice, no source. */
const ACCELERATION_SPREAD = 0.02;

/** So much may rounding of the last digit add to a sum of squares. */
const ROUNDING = 1e-9;

/** Heading of a column in the file, for findings. */
export type HeadingOf = (name: string) => string;

/**
 * Looks at the rows of a run as a series: legs, time, depth, and what tilts and accelerations allow.
 *
 * Blocking: formats.time-backwards and formats.leg-order (runs that measure turn), formats.tilts-impossible,
 * formats.acceleration-zero, formats.too-few-rows.
 * Errors: formats.time-backwards, formats.leg-order (other runs), and those of checkDepths.
 * Warnings: formats.acceleration-odd and those of checkDepths.
 */
export function checkReadings(
  readings: Readings,
  measures: Measures,
  heading: HeadingOf,
  found: Finder,
): void {
  if (measuresTurn(measures) && readings.count < 2) {
    const values = { found: readings.count, expected: "at least 2" };
    found.block("formats.too-few-rows", { line: readings.line[0] ?? 1 }, values);
  }
  checkLegs(readings, measures, heading, found);
  checkTimes(readings, measures, heading, found);
  checkDepths(readings, heading, found);
  checkTilts(readings, heading, found);
  if (measures === "acceleration-turn") checkAccelerations(readings, heading, found);
}

function checkLegs(readings: Readings, measures: Measures, heading: HeadingOf, found: Finder): void {
  const { leg, line } = readings;
  const firstOther = leg.findIndex((each) => each !== "open");
  const lastOther = leg.findLastIndex((each) => each !== "close");
  for (const [index, each] of leg.entries()) {
    const misplaced = (each === "open" && index > firstOther) || (each === "close" && index < lastOther);
    if (!misplaced) continue;
    const at = { line: line[index]!, field: heading("leg") };
    const values = {
      found: each,
      expected: each === "open" ? "open before all other rows" : "close after all other rows",
    };
    if (measuresTurn(measures)) found.block("formats.leg-order", at, values);
    else found.error("formats.leg-order", at, values);
  }
}

function checkTimes(readings: Readings, measures: Measures, heading: HeadingOf, found: Finder): void {
  let previous = Number.NaN;
  for (const [index, time] of readings.timeS.entries()) {
    if (Number.isNaN(time)) continue;
    if (time < previous) {
      const at = { line: readings.line[index]!, field: heading("time") };
      const values = {
        found: `${(previous - time).toFixed(1)} s earlier`,
        expected: "a time after the row before",
      };
      if (measuresTurn(measures)) found.block("formats.time-backwards", at, values);
      else found.error("formats.time-backwards", at, values);
    }
    previous = time;
  }
}

/** Two leans at right angles to each other cannot both be near 90 degrees: their sines are parts of one unit vector. */
function checkTilts(readings: Readings, heading: HeadingOf, found: Finder): void {
  const { tiltXRad, tiltYRad, line } = readings;
  for (let i = 0; i < readings.count; i++) {
    if (!(Math.hypot(Math.sin(tiltXRad[i]!), Math.sin(tiltYRad[i]!)) > 1 + ROUNDING)) continue;
    const shown = [tiltXRad[i]!, tiltYRad[i]!].map((tilt) => degreesFromRadians(tilt).toFixed(2));
    const values = { found: shown.join(" and "), expected: "sines whose squares add up to 1 at most" };
    found.block("formats.tilts-impossible", { line: line[i]!, field: heading("tilt_x_deg") }, values);
  }
}

/** At rest the sensor shows gravity and nothing else: rows whose total differs from the others were shaken or are wrong. */
function checkAccelerations(readings: Readings, heading: HeadingOf, found: Finder): void {
  const totals = readings.accX.map((x, i) => Math.hypot(x, readings.accY[i]!, readings.accZ[i]!));
  const known = totals.filter(Number.isFinite).toSorted();
  const usual = known[known.length >> 1] ?? Number.NaN;
  for (const [index, total] of totals.entries()) {
    const at = { line: readings.line[index]!, field: heading("acc_z") };
    if (total === 0) found.block("formats.acceleration-zero", at, { found: 0, expected: "gravity" });
    else if (Math.abs(total - usual) > ACCELERATION_SPREAD * usual) {
      const values = { found: total.toPrecision(6), expected: usual.toPrecision(6) };
      found.warning("formats.acceleration-odd", at, values);
    }
  }
}
