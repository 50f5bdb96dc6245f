import { type NorthEastDown, ned } from "../geometry/vector.ts";

/** Sines of the lean of the down-hole axis towards probe +x and +y. Dimensionless. */
export interface TiltSines {
  readonly x: number;
  readonly y: number;
}

/**
 * Direction of the hole axis from the two tilts and the heading of probe +x.
 *
 * Never goes through inclination and azimuth: at zero tilt the azimuth has no meaning (A3).
 *
 * @param tilt sines of the lean, dimensionless. @param headingRad azimuth of probe x in the levelled frame,
 *   radians clockwise from grid north.
 * @returns unit tangent pointing down the hole; NaN if a tilt or the heading is missing or the sines exceed 1 together.
 *
 * Frame: probe to site NED. Source: rule A2.
 * Checked against: the rigid-body simulator (test/jobs).
 */
export function tangentFromTilt(tilt: TiltSines, headingRad: number): NorthEastDown {
  const sine = Math.sin(headingRad);
  const cosine = Math.cos(headingRad);
  const north = tilt.x * cosine - tilt.y * sine;
  const east = tilt.x * sine + tilt.y * cosine;
  const down = Math.sqrt(1 - north * north - east * east);
  return Number.isNaN(down) ? ned(Number.NaN, Number.NaN, Number.NaN) : ned(north, east, down);
}

/**
 * Direction of the hole axis from inclination and azimuth.
 *
 * Where the inclination is 0 the azimuth is ignored, even a missing one: plumb is plumb.
 *
 * @param inclinationRad from vertical, radians. @param azimuthRad clockwise from grid north, radians.
 *
 * Frame: site NED. Source: rule A3.
 */
export function tangentFromInclination(inclinationRad: number, azimuthRad: number): NorthEastDown {
  if (inclinationRad === 0) return ned(0, 0, 1);
  const lateral = Math.sin(inclinationRad);
  return ned(lateral * Math.cos(azimuthRad), lateral * Math.sin(azimuthRad), Math.cos(inclinationRad));
}

/**
 * Tilts from what three accelerometers show at rest.
 *
 * They show the reaction to gravity: plumb, with z down the hole, (0, 0, -g). So the unit "down" seen in probe axes
 * is -f/|f| and the sine of the lean towards x is +f_x/|f|.
 *
 * @param x y z any one unit. @returns sines of the lean, the magnitude in the same unit, and whether z points up
 *   (a probe mounted the other way round, or a sensor that shows gravity instead of its reaction).
 *
 * Frame: probe. Source: rule A1.
 */
export function tiltFromAcceleration(
  x: number,
  y: number,
  z: number,
): TiltSines & { readonly magnitude: number; readonly upsideDown: boolean } {
  const magnitude = Math.hypot(x, y, z);
  return { x: x / magnitude, y: y / magnitude, magnitude, upsideDown: z > 0 };
}
