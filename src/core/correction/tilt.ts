import { tiltFromAcceleration } from "../frames/attitude.ts";
import { median } from "../num/median.ts";
import type { Readings } from "../readings/survey-run.ts";

/** Sines of the lean of every row towards probe +x and +y, corrected. NaN where not read. */
export interface CorrectedTilts {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** A zero to take off the tilts, as angles in radians. */
export interface AngleZero {
  readonly xRad: number;
  readonly yRad: number;
}

const ofLength = (count: number, value: (i: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => value(i));

/**
 * Sines of the lean from tilt readings: reading less zero, as angles, then the sine.
 *
 * Frame: probe. Source: rules A1, C1.
 */
export function tiltsFromAngles(readings: Readings, zero: AngleZero): CorrectedTilts {
  const { count, tiltXRad, tiltYRad } = readings;
  return {
    x: ofLength(count, (i) => Math.sin(tiltXRad[i]! - zero.xRad)),
    y: ofLength(count, (i) => Math.sin(tiltYRad[i]! - zero.yRad)),
  };
}

/** Takes a zero off sines of the lean. The zero is an angle, as in tilt readings. */
export function withoutZero(tilts: CorrectedTilts, zero: AngleZero): CorrectedTilts {
  return {
    x: tilts.x.map((sine) => Math.sin(Math.asin(sine) - zero.xRad)),
    y: tilts.y.map((sine) => Math.sin(Math.asin(sine) - zero.yRad)),
  };
}

/** Accelerations turned to tilts, with what the magnitude says about them. */
export interface TiltsFromAccelerations extends CorrectedTilts {
  /** largest departure of a magnitude from the median, as a part of the median */
  readonly magnitudeSpread: number;
  /** rows whose z points up: probe or sensor the other way round */
  readonly upsideDownRows: readonly number[];
}

/**
 * Sines of the lean from three accelerations.
 *
 * @param correct what the calibration makes of one row's accelerations; the same values where there is none.
 *
 * Frame: probe. Source: rules A1, B2. The magnitude is a check of each reading: it must not depend on the attitude.
 */
export function tiltsFromAccelerations(
  readings: Readings,
  correct: (x: number, y: number, z: number) => readonly [number, number, number],
): TiltsFromAccelerations {
  const { count, accX, accY, accZ } = readings;
  const rows = Array.from({ length: count }, (_, i) =>
    tiltFromAcceleration(...correct(accX[i]!, accY[i]!, accZ[i]!)),
  );
  const magnitudes = rows.map((row) => row.magnitude).filter(Number.isFinite);
  const middle = magnitudes.length > 0 ? median(magnitudes) : Number.NaN;
  return {
    x: Float64Array.from(rows, (row) => row.x),
    y: Float64Array.from(rows, (row) => row.y),
    magnitudeSpread: magnitudes.reduce((most, m) => Math.max(most, Math.abs(m / middle - 1)), 0),
    upsideDownRows: rows.flatMap((row, i) => (row.upsideDown ? [i] : [])),
  };
}
