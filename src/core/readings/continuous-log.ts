import type { Leg, Measures } from "./survey-run.ts";

/**
 * A run logged continuously, in the order of the file. Struct of arrays, each of length `count`, or of length 0 where the
 * log has no such column. Angles in radians, lengths in metres. Nothing is corrected here.
 */
export interface ContinuousLog {
  readonly measures: Measures;
  readonly count: number;
  /** seconds from the first row, never falling */
  readonly timeS: Float64Array;
  /** depth as the file gives it; one of depthM and depthCounts is there */
  readonly depthM: Float64Array;
  readonly depthCounts: Float64Array;
  readonly tiltXRad: Float64Array;
  readonly tiltYRad: Float64Array;
  readonly accX: Float64Array;
  readonly accY: Float64Array;
  readonly accZ: Float64Array;
  /** gyro angle about the probe axis, accumulated, positive clockwise looking down the hole */
  readonly turnRad: Float64Array;
  readonly temperatureC: Float64Array;
  /** place in LEGS */
  readonly leg: Uint8Array;
  /** 1 or 2; 0 = the row does not say */
  readonly face: Uint8Array;
  /** line of the file each row stands in, from 1 */
  readonly line: Int32Array;
}

/** When a probe on its cable counts as at rest. */
export interface SteadySettings {
  /** shortest time at rest that makes a reading, seconds */
  readonly seconds: number;
  /** largest standard error of the mean tilt, and largest change of the tilt over the window, radians */
  readonly tiltRad: number;
  /** largest turn about the axis in `seconds` besides the steady rate that the gyro shows at rest, radians */
  readonly turnRad: number;
  /** largest change of the shown depth, metres */
  readonly depthM: number;
}

/** Settings of a run that gives none: common practice, no source. */
export const USUAL_STEADY: SteadySettings = {
  seconds: 5,
  tiltRad: 0.02 * (Math.PI / 180),
  turnRad: 0.1 * (Math.PI / 180),
  depthM: 0.01,
};

/** What the log is to be condensed for. */
export interface CondenseOptions {
  readonly steady: SteadySettings;
  /** metres in one count of the depth device; NaN where depths are in metres */
  readonly metresPerCount: number;
  /** the run ends with a known heading at the top */
  readonly closes: boolean;
  /** headings known at the top between passes */
  readonly ties: number;
}

/** Why a pause gives no reading. */
export type NoReadingReason =
  | "too-short"
  | "depth"
  | "tilt-error"
  | "tilt-change"
  | "tilt-order"
  | "turn"
  | "same-place";

/** A pause that gave no reading. */
export interface PassedOver {
  readonly fromRow: number;
  readonly seconds: number;
  /** metres, or counts where the log has counts */
  readonly depth: number;
  readonly why: NoReadingReason;
}

/** A stretch of rows in which the probe was at rest: from `fromRow` up to, not including, `toRow`. */
export interface Stretch {
  readonly fromRow: number;
  readonly toRow: number;
}

/** A stretch averaged into one reading; NaN where the log has no such column. */
export interface StopReading extends Stretch {
  readonly timeS: number;
  /** as the log gives it: metres or counts */
  readonly depth: number;
  /** metres */
  readonly depthM: number;
  readonly tiltXRad: number;
  readonly tiltYRad: number;
  readonly accX: number;
  readonly accY: number;
  readonly accZ: number;
  readonly turnRad: number;
  readonly temperatureC: number;
  readonly seTiltXRad: number;
  readonly seTiltYRad: number;
  readonly face: number;
  readonly leg: Leg;
}
