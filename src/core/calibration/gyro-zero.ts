import { earthRateNed } from "../frames/earth.ts";
import type { GyroZeroCalibration } from "./calibration.ts";

/**
 * The gyro's own rate: the rate shown at rest less the part of the earth's rate that it held.
 *
 * @returns radians per second, about the probe axis, positive clockwise looking down the hole.
 *
 * Frame: true north-east-down at the place of the calibration. Source: rules A5, B3.
 */
export function gyroOwnRate(calibration: GyroZeroCalibration): number {
  const earth = earthRateNed(calibration.latitudeRad);
  const [north, east, down] = calibration.axisTrueNed;
  return calibration.rateRadPerS - (earth.north * north + earth.east * east + earth.down * down);
}

/**
 * Gyro scale: shown turn for one radian of true turn, mean over the repeats.
 *
 * Frame: probe. Source: rule B3, C4 (scale factor); mean of repeats.
 */
export function gyroScale(trueTurnRad: number, shownTurnsRad: readonly number[]): number {
  return shownTurnsRad.reduce((sum, shown) => sum + shown, 0) / shownTurnsRad.length / trueTurnRad;
}
