import { cross, dot, type NorthEastDown, norm } from "../geometry/vector.ts";

/**
 * Angle between the tangents of two stations (dogleg), stable near 0 and near pi.
 *
 * @param first unit tangent at the upper station. @param second at the lower one.
 * @returns radians, [0, pi]; NaN if a component is NaN.
 *
 * Frame: any. Source: rule D1; vector form of the standard dogleg, docs/sources.md [P1].
 * Checked against: test/published/path-methods (0.5 degree hole with 0.001 degree of azimuth change).
 */
export function dogleg(first: NorthEastDown, second: NorthEastDown): number {
  return Math.atan2(norm(cross(first, second)), dot(first, second));
}

/**
 * Ratio factor of minimum curvature, tan(beta/2)/(beta/2): arc against the two half chords.
 *
 * Below 1e-4 rad the quotient loses digits, so the series takes over.
 *
 * @param beta dogleg, radians, [0, pi).
 * @returns dimensionless, 1 at 0, growing to infinity at pi.
 *
 * Frame: none. Source: rule D1; series from exact expansion, docs/sources.md [P1].
 */
export function ratioFactor(beta: number): number {
  if (beta < 1e-4) {
    const square = beta * beta;
    return 1 + square / 12 + (square * square) / 120;
  }
  return Math.tan(beta / 2) / (beta / 2);
}
