import type { UnsteadyReason } from "../num/steadiness.ts";
import { type AssessedWindow, assessWindow } from "./assess-window.ts";
import type {
  ContinuousLog,
  NoReadingReason,
  SteadySettings,
  StopReading,
  Stretch,
} from "./continuous-log.ts";
import { LEGS } from "./survey-run.ts";

/**
 * Parts of a stretch that are tried, in eighths, longest first: a probe that has just stopped still swings, and one about to
 * be hoisted is already touched.
 */
const TRIMS: readonly (readonly [number, number])[] = [
  [0, 8],
  [1, 8],
  [0, 7],
  [2, 8],
  [1, 7],
  [0, 6],
  [3, 8],
  [4, 8],
  [2, 6],
  [0, 4],
];

/** The turn of a stretch is judged by so many steps. */
const TURN_STEPS = 64;
/** A slope of the rate that is chance alone reaches several times its standard error. */
const RATE_CHANGE = 6;

/** Part of the limits below which it does not matter whether a change is chance. Common practice, no source. */
const NEGLIGIBLE = 0.1;

/** What is needed beside the log to judge its stretches. */
export interface StopLimits {
  readonly steady: SteadySettings;
  readonly restRateRadPerS: number;
}

/**
 * Averages a stretch in which neither depth nor gyro moved into one reading, if a part of it that is long enough is steady.
 *
 * The gyro's turn is averaged like everything else and belongs to the mean of the times: at a steady rate the mean of the turn
 * is the turn at that moment exactly.
 *
 * @param depth depth of each row as the log gives it. @param depthM the same in metres. Shape: log.count.
 * @returns the reading, or why the longest part is none.
 *
 * Frame: probe. Source: rule C3, docs/method/steadiness.md.
 */
export function averageStop(
  log: ContinuousLog,
  stretch: Stretch,
  depth: Float64Array,
  depthM: Float64Array,
  limits: StopLimits,
): StopReading | NoReadingReason {
  const length = stretch.toRow - stretch.fromRow;
  let whole: NoReadingReason = "too-short";
  for (const [index, [first, last]] of TRIMS.entries()) {
    const part = {
      fromRow: stretch.fromRow + Math.floor((first * length) / 8),
      toRow: stretch.fromRow + Math.floor((last * length) / 8),
    };
    if (secondsOf(log, part) < limits.steady.seconds) continue;
    const reason = reasonAgainst(log, part, depthM, limits);
    if (reason === undefined) return readingOf(log, part, depth, depthM, limits);
    if (index === 0) whole = reason;
  }
  return whole;
}

export const secondsOf = (log: ContinuousLog, { fromRow, toRow }: Stretch): number =>
  log.timeS[toRow - 1]! - log.timeS[fromRow]!;

function reasonAgainst(
  log: ContinuousLog,
  part: Stretch,
  depthM: Float64Array,
  limits: StopLimits,
): NoReadingReason | undefined {
  // a cable that creeps stays still over every second and yet goes far
  if (!(rangeOf(depthM, part) <= 2 * limits.steady.depthM)) return "depth";
  const turn = log.turnRad.length > 0 ? turnReason(log, part, limits) : undefined;
  if (turn !== undefined) return turn;
  const { windows, limit } = tiltWindows(log, part, limits.steady);
  const seconds = secondsOf(log, part);
  for (const window of windows)
    if (!window.steady && !isNegligible(window, limit, seconds)) return tiltReason(window.why);
  return undefined;
}

/**
 * With many readings chance can be told from the slightest swing: one that stays far inside the limits does not matter, and
 * the standard error allows for it.
 */
const isNegligible = (window: AssessedWindow, limit: number, seconds: number): boolean =>
  window.standardError <= NEGLIGIBLE * limit && Math.abs(window.slope) * seconds <= NEGLIGIBLE * limit;

function tiltReason(why: readonly UnsteadyReason[]): NoReadingReason {
  if (why.includes("too-few")) return "too-short";
  if (why.includes("drift") || why.includes("slope")) return "tilt-change";
  return why.includes("standard-error") || why.includes("missing") ? "tilt-error" : "tilt-order";
}

/** The two tilts, judged; accelerations are judged across the hole in the unit in which they stand. */
function tiltWindows(
  log: ContinuousLog,
  part: Stretch,
  steady: SteadySettings,
): {
  readonly windows: readonly [AssessedWindow, AssessedWindow];
  readonly limit: number;
  readonly unit: number;
} {
  const times = cut(log.timeS, part);
  const isAngle = log.tiltXRad.length > 0;
  const unit = isAngle ? 1 : gravityOf(log, part);
  const limit = steady.tiltRad * unit;
  const limits = { standardError: limit, drift: limit };
  const [x, y] = isAngle ? [log.tiltXRad, log.tiltYRad] : [log.accX, log.accY];
  const windows = [
    assessWindow(cut(x, part), times, limits),
    assessWindow(cut(y, part), times, limits),
  ] as const;
  return { windows, limit, unit };
}

function gravityOf(log: ContinuousLog, part: Stretch): number {
  const size = Math.hypot(meanOf(log.accX, part), meanOf(log.accY, part), meanOf(log.accZ, part));
  return size > 0 ? size : 1;
}

/**
 * The gyro: steps of the turn, as rates, must neither change nor hang together; and the whole turn must be the rate at rest.
 * The noise of the turn grows with the root of the time, and so does its limit.
 */
function turnReason(log: ContinuousLog, part: Stretch, limits: StopLimits): "turn" | "too-short" | undefined {
  const { steady, restRateRadPerS } = limits;
  const seconds = secondsOf(log, part);
  const rows = part.toRow - 1 - part.fromRow;
  const steps = Math.min(TURN_STEPS, rows);
  const rates = new Float64Array(steps);
  const times = new Float64Array(steps);
  for (let k = 0; k < steps; k++) {
    const a = part.fromRow + Math.floor((k * rows) / steps);
    const b = part.fromRow + Math.floor(((k + 1) * rows) / steps);
    // rows of one moment share a time that was written too coarsely: their even share of the window stands for it
    const dt = seconds * ((b - a) / rows);
    rates[k] = (log.turnRad[b]! - log.turnRad[a]!) / dt;
    times[k] = (k + 0.5) * (seconds / steps);
  }
  const turnLimit = steady.turnRad * Math.max(1, Math.sqrt(seconds / steady.seconds));
  const limit = turnLimit / seconds;
  const window = assessWindow(rates, times, { standardError: limit, drift: RATE_CHANGE * limit });
  if (window.why.includes("too-few")) return "too-short";
  return window.steady && Math.abs(window.mean - restRateRadPerS) <= limit ? undefined : "turn";
}

function readingOf(
  log: ContinuousLog,
  part: Stretch,
  depth: Float64Array,
  depthM: Float64Array,
  { steady }: StopLimits,
): StopReading {
  const { windows, unit } = tiltWindows(log, part, steady);
  const [x, y] = windows;
  const isAngle = log.tiltXRad.length > 0;
  return {
    ...part,
    timeS: meanOf(log.timeS, part),
    depth: meanOf(depth, part),
    depthM: meanOf(depthM, part),
    tiltXRad: isAngle ? x.mean : Number.NaN,
    tiltYRad: isAngle ? y.mean : Number.NaN,
    accX: isAngle ? Number.NaN : x.mean,
    accY: isAngle ? Number.NaN : y.mean,
    accZ: meanOf(log.accZ, part),
    turnRad: meanOf(log.turnRad, part),
    temperatureC: meanOf(log.temperatureC, part),
    seTiltXRad: x.standardError / unit,
    seTiltYRad: y.standardError / unit,
    face: log.face[part.fromRow] ?? 0,
    leg: LEGS[log.leg[part.fromRow] ?? 0]!,
  };
}

const cut = (values: Float64Array, { fromRow, toRow }: Stretch): Float64Array =>
  values.subarray(fromRow, toRow);

/** Mean of the values that are there; NaN where there is none. */
function meanOf(values: Float64Array, part: Stretch): number {
  let sum = 0;
  let count = 0;
  let first = Number.NaN;
  for (const value of cut(values, part)) {
    if (Number.isNaN(value)) continue;
    if (count === 0) first = value;
    sum += value - first;
    count++;
  }
  return first + sum / count;
}

function rangeOf(values: Float64Array, part: Stretch): number {
  let smallest = Number.POSITIVE_INFINITY;
  let largest = Number.NEGATIVE_INFINITY;
  for (const value of cut(values, part)) {
    smallest = Math.min(smallest, value);
    largest = Math.max(largest, value);
  }
  return largest - smallest;
}
