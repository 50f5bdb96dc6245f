import { type NorthEastDown, ned } from "../geometry/vector.ts";

/** Angular rate of the earth, radians a second. Source: WGS 84 (NIMA TR8350.2), 7292115e-11. */
export const EARTH_RATE_RAD_PER_S = 7.292115e-5;

/** WGS 84 ellipsoid and its normal gravity. Source: NIMA TR8350.2, tables 3.1 to 3.4. */
const SEMI_MAJOR_AXIS_M = 6378137;
const FLATTENING = 1 / 298.257223563;
const ECCENTRICITY_SQUARED = 0.00669437999014;
const EQUATORIAL_GRAVITY_M_PER_S2 = 9.7803253359;
const SOMIGLIANA_CONSTANT = 0.00193185265241;
/** centrifugal over gravitational acceleration, the m of the height formula */
const GRAVITY_RATIO = 0.00344978650684;

/**
 * Turning rate of the ground in space, seen at a latitude.
 *
 * A gyro at rest shows the component along its axis: an axis pointing down in the northern hemisphere shows a negative rate.
 *
 * @param latitudeRad geodetic latitude, radians, positive north. NaN gives NaN.
 * @returns radians a second; east is 0.
 * Frame: true north-east-down.
 * Source: WGS 84 earth rate; (cos, 0, -sin) of the latitude by geometry.
 * Checked against: test/published/gravity-earth-rate
 */
export function earthRateNed(latitudeRad: number): NorthEastDown {
  return ned(EARTH_RATE_RAD_PER_S * Math.cos(latitudeRad), 0, -EARTH_RATE_RAD_PER_S * Math.sin(latitudeRad));
}

/**
 * Turning rate of the ground in space, in the axes of the map grid.
 *
 * @param latitudeRad geodetic latitude, radians. NaN gives NaN.
 * @param convergenceRad grid bearing = true bearing - convergence, radians.
 * @returns radians a second. True north has the grid bearing -convergence.
 * Frame: grid north-east-down.
 * Source: rules A5 and C6; `earthRateNed`, turned.
 */
export function earthRateGrid(latitudeRad: number, convergenceRad: number): NorthEastDown {
  const rate = earthRateNed(latitudeRad);
  return ned(rate.north * Math.cos(convergenceRad), -rate.north * Math.sin(convergenceRad), rate.down);
}

/**
 * Normal gravity: what an accelerometer at rest should show within some 5e-5 of it (anomalies left out).
 *
 * @param latitudeRad geodetic latitude, radians. NaN gives NaN.
 * @param heightM height above the ellipsoid, metres; height above sea level does (100 m are 3e-5 of gravity).
 * @returns m/s2, positive.
 * Frame: none.
 * Source: Somigliana's formula with the second-order height correction, NIMA TR8350.2 eq. 4-1 and 4-3.
 * Checked against: test/published/gravity-earth-rate
 */
export function normalGravity(latitudeRad: number, heightM: number): number {
  const sineSquared = Math.sin(latitudeRad) ** 2;
  const onEllipsoid =
    (EQUATORIAL_GRAVITY_M_PER_S2 * (1 + SOMIGLIANA_CONSTANT * sineSquared)) /
    Math.sqrt(1 - ECCENTRICITY_SQUARED * sineSquared);
  const height = heightM / SEMI_MAJOR_AXIS_M;
  const first = 2 * (1 + FLATTENING + GRAVITY_RATIO - 2 * FLATTENING * sineSquared);
  return onEllipsoid * (1 - first * height + 3 * height ** 2);
}
