import { earthRateNed, type NorthEastDown, ned } from "#core";

/**
 * Turning rate of the ground in space, in the axes of the map grid.
 *
 * @param latitudeRad geodetic latitude, radians. NaN gives NaN.
 * @param convergenceRad grid bearing = true bearing - convergence, radians.
 * @returns radians a second. True north has the grid bearing -convergence.
 * Frame: grid north-east-down.
 * Source: core's earthRateNed, turned.
 */
export function earthRateGrid(latitudeRad: number, convergenceRad: number): NorthEastDown {
  const rate = earthRateNed(latitudeRad);
  return ned(rate.north * Math.cos(convergenceRad), -rate.north * Math.sin(convergenceRad), rate.down);
}
