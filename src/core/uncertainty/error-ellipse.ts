import { chiSquareQuantile } from "../num/chi-square.ts";
import { fQuantile } from "../num/f-distribution.ts";
import { contract } from "../result.ts";
import { type GridAzimuth, gridAzimuth, wrapToTurn } from "../units/quantity.ts";

/** Covariance of a position in plan: variances of north and east and their covariance, m^2. */
export interface PlanCovariance {
  readonly nn: number;
  readonly ne: number;
  readonly ee: number;
}

/** Standard ellipse (k = 1) of a position in plan; it holds 39.3 %. */
export interface ErrorEllipse {
  /** metres */
  readonly semiMajor: number;
  readonly semiMinor: number;
  /** of the major axis, within [0, pi); 0 for a circle */
  readonly majorAzimuth: GridAzimuth;
}

/** How far below zero rounding may push the smaller variance, relative to the larger. */
const ROUNDING = 1e-12;

/**
 * Axes and direction of the standard error ellipse.
 *
 * @param covariance m^2. A NaN makes the axes NaN.
 * @returns axes for k = 1; multiply by `coverageFactor`.
 * @throws ContractError if the matrix is not a covariance (a negative variance in some direction).
 *
 * Frame: site NED, plan.
 * Source: Mikhail & Gracie, Analysis and Adjustment of Survey Measurements, 1981 (from memory):
 *   azimuth = atan2(2 c, v_n - v_e) / 2.
 * Checked against: ellipses made from axes and azimuth (error-ellipse.test.ts).
 */
export function errorEllipse({ nn, ne, ee }: PlanCovariance): ErrorEllipse {
  const middle = (nn + ee) / 2;
  const reach = Math.hypot((nn - ee) / 2, ne);
  const major = middle + reach;
  // From the determinant, not as a difference: a thin ellipse keeps its width.
  const minor = major === 0 ? 0 : (nn * ee - ne * ne) / major;
  if (Number.isNaN(major) || Number.isNaN(minor))
    return { semiMajor: Number.NaN, semiMinor: Number.NaN, majorAzimuth: gridAzimuth(Number.NaN) };
  contract(
    nn >= 0 && ee >= 0 && minor >= -ROUNDING * major,
    `errorEllipse: ${nn}, ${ne}, ${ee} is no covariance`,
  );
  const azimuth = wrapToTurn(Math.atan2(2 * ne, nn - ee)) / 2;
  return {
    semiMajor: Math.sqrt(major),
    semiMinor: Math.sqrt(Math.max(0, minor)),
    majorAzimuth: gridAzimuth(reach === 0 ? 0 : azimuth),
  };
}

/**
 * Factor by which a standard interval (1 dimension), ellipse (2) or ellipsoid (3) is enlarged to hold a probability.
 *
 * 95 % is 1.96 on a line, 2.45 in the plane, 2.80 in space: always say which one is meant.
 *
 * @param probability between 0 and 1.
 * @param dimensions 1, 2 or 3.
 * @param degreesOfFreedom of the estimated variance; Infinity (known variance) when left out.
 * @throws ContractError if the probability is not between 0 and 1.
 *
 * Frame: none.
 * Source: square root of the chi-square quantile, or of dimensions times the F quantile (from memory).
 * Checked against: test/published/confidence-regions
 */
export function coverageFactor(
  probability: number,
  dimensions: 1 | 2 | 3,
  degreesOfFreedom: number = Number.POSITIVE_INFINITY,
): number {
  contract(probability > 0 && probability < 1, `coverageFactor: probability ${probability}`);
  if (degreesOfFreedom === Number.POSITIVE_INFINITY)
    return Math.sqrt(chiSquareQuantile(probability, dimensions));
  return Math.sqrt(dimensions * fQuantile(probability, dimensions, degreesOfFreedom));
}
