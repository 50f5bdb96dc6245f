import { cross, dot, type NorthEastDown, ned } from "../geometry/vector.ts";

const down = ned(0, 0, 1);

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
  return 2 * Math.atan2(dot(down, cross(first, second)), 1 + first.down + dot(first, second) + second.down);
}
