import type { NorthEastDown } from "../geometry/vector.ts";

/**
 * Turn of the levelled frame when the axis goes from one tangent to the next without turning about itself.
 *
 * A gyro along the probe axis does not feel this turn; the heading in the levelled frame does. It is the signed area of
 * the spherical triangle (down, first, second), and adds to the heading with sign +. Zero for a plumb hole; in a raked
 * hole whose bearing wanders it is worth hundreds of millimetres at the toe.
 *
 * @returns radians, (-2 pi, 2 pi), antisymmetric: swapping the tangents changes the sign.
 *
 * Frame: site NED. Source: rule A4; solid angle of a triangle, A. Van Oosterom and J. Strackee 1983 (from memory).
 * Checked against: the rigid-body simulator (test/jobs), cone of half angle I: 2 pi (1 - cos I).
 */
export function holonomy(first: NorthEastDown, second: NorthEastDown): number {
  return holonomyOf(first.north, first.east, first.down, second.north, second.east, second.down);
}

/** The same from plain components, for long series. Frame: site NED. Source: rule A4. */
export function holonomyOf(n1: number, e1: number, d1: number, n2: number, e2: number, d2: number): number {
  return 2 * Math.atan2(n1 * e2 - e1 * n2, 1 + d1 + n1 * n2 + e1 * e2 + d1 * d2 + d2);
}
