import type { AllanCurve } from "../num/allan-curve.ts";

import type { DeclaredError } from "../readings/declared-error.ts";

/** Until when a calibration may be used. All rules that are given must hold. */
export interface Validity {
  /** ISO 8601 */
  readonly until: string | undefined;
  readonly maxRuns: number | undefined;
  /** things that ended the calibration (a knock, a repair), ISO 8601 time of each */
  readonly endedBy: readonly { readonly at: string; readonly what: string }[];
}

interface CalibrationRecord {
  readonly id: string;
  readonly instrumentId: string;
  /** ISO 8601 */
  readonly madeAt: string;
  readonly validity: Validity;
  /** place in job.json, e.g. "calibrations[0]" */
  readonly field: string;
}

export interface FaceReading {
  readonly face: 1 | 2;
  readonly xRad: number;
  readonly yRad: number;
}

/** B1: readings of the two tilts on both faces in a steady seat. */
export interface TiltZeroCalibration extends CalibrationRecord {
  readonly kind: "tilt-zero";
  readonly faces: readonly FaceReading[];
}

/** B2: accelerometer outputs in known positions; the 12 numbers are fitted from them. */
export interface AccelerometerCalibration extends CalibrationRecord {
  readonly kind: "accelerometer";
  /** what each axis should show and did show, any one unit; reaction to gravity, as in the readings */
  readonly positions: readonly {
    readonly expected: readonly [number, number, number];
    readonly shown: readonly [number, number, number];
  }[];
}

/** B3: rate shown at rest. It holds the earth's rate for its attitude and latitude. */
export interface GyroZeroCalibration extends CalibrationRecord {
  readonly kind: "gyro-zero";
  readonly rateRadPerS: number;
  readonly standardUncertaintyRadPerS: number | undefined;
  /** direction of the probe's down-hole axis while at rest: true north-east-down, unit length */
  readonly axisTrueNed: readonly [number, number, number];
  readonly latitudeRad: number;
  /** where the rate was worked out from a log at rest: how the gyro's noise averages out */
  readonly allan?: AllanRecord;
}

/** A value read off a curve, with the ends of its confidence interval. */
export interface ReadOff {
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
}

/** Allan deviation of a gyro at rest and what is read off it, kept with the calibration so that it can be drawn. */
export interface AllanRecord {
  /** deviations in rad/s, with the ends of their confidence intervals */
  readonly curve: AllanCurve;
  /** probability of all the intervals */
  readonly confidence: number;
  /** length of the log, seconds */
  readonly seconds: number;
  /** angle random walk N, rad per root second */
  readonly walk: ReadOff;
  /** bias instability B, rad/s; where the curve still falls at its end only an upper bound */
  readonly instability: ReadOff & { readonly isReached: boolean; readonly atS: number };
  /** rate random walk K, rad/s per root second; undefined where the log is too short to show it */
  readonly rateWalk: ReadOff | undefined;
}

/** Gyro scale: shown turn over a known turn. */
export interface GyroScaleCalibration extends CalibrationRecord {
  readonly kind: "gyro-scale";
  readonly trueTurnRad: number;
  readonly shownTurnsRad: readonly number[];
}

/** B4: counts over a marked length, repeated. */
export interface DepthScaleCalibration extends CalibrationRecord {
  readonly kind: "depth-scale";
  readonly lengthM: number;
  readonly counts: readonly number[];
}

export type Calibration =
  | TiltZeroCalibration
  | AccelerometerCalibration
  | GyroZeroCalibration
  | GyroScaleCalibration
  | DepthScaleCalibration;
export type CalibrationKind = Calibration["kind"];

/** The probe hanging on its cable: what the cable stretches by. */
export interface HangingCable {
  /** EA, newtons */
  readonly axialStiffnessN: number;
  /** weight of the probe in the fluid, newtons */
  readonly probeWeightN: number;
  /** weight of one metre of cable in the fluid, newtons per metre */
  readonly cableWeightNPerM: number;
}

/** One instrument of the job. */
export interface Instrument {
  readonly id: string;
  readonly serial: string | undefined;
  readonly gaugeLengthM: number | undefined;
  readonly outerDiameterM: number | undefined;
  /** rigid length of the probe, for the passage of tubes */
  readonly lengthM: number | undefined;
  /** cable that the probe hangs on, where its stretch is to be allowed for */
  readonly cable: HangingCable | undefined;
  /** id of the budget class */
  readonly budget: string | undefined;
  /** values of the budget that the job gives for this instrument, in SI and radians */
  readonly declaredErrors: readonly DeclaredError[];
  /** place in job.json */
  readonly field: string;
}
