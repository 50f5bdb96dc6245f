import { contract } from "../result.ts";
import { mean } from "./moments.ts";

/** Straight line `y = intercept + slope * x` with the covariance of its two coefficients. */
export interface LineFit {
  /** unit of y */
  readonly intercept: number;
  /** unit of y per unit of x */
  readonly slope: number;
  /** unit of y, squared */
  readonly interceptVariance: number;
  /** (unit of y per unit of x), squared */
  readonly slopeVariance: number;
  /** (unit of y) squared per unit of x */
  readonly covariance: number;
  /** sum of squared residuals, unit of y squared */
  readonly residualSumOfSquares: number;
  readonly degreesOfFreedom: number;
}

/**
 * Fits a straight line by ordinary least squares, all points weighted equally.
 *
 * Used for instrument drift against time, so `x` may be seconds since 1970: both
 * variables are centred on their means before anything is squared.
 *
 * @param x abscissae, any unit. Shape: n, n >= 3.
 * @param y ordinates, any unit. Shape: n.
 * @returns the fit; its variances assume independent errors of equal size, estimated from the residuals.
 * @throws ContractError if the lengths differ, n < 3, a value is not finite, or all x are equal.
 *
 * Frame: none.
 * Source: Draper & Smith, Applied Regression Analysis, 3rd ed., ch. 1 (from memory).
 * Checked against: test/published/nist-strd-norris, test/published/jcgm-100
 */
export function fitLine(x: Float64Array, y: Float64Array): LineFit {
  const n = x.length;
  contract(y.length === n, `fitLine: x has ${n} values, y has ${y.length}`);
  contract(n >= 3, `fitLine: needs at least 3 points, got ${n}`);
  contract(x.every(Number.isFinite) && y.every(Number.isFinite), "fitLine: every value must be finite");

  const meanX = mean(x);
  const meanY = mean(y);

  let sumXX = 0;
  let sumXY = 0;
  for (let i = 0; i < n; i++) {
    const dx = x[i]! - meanX;
    sumXX += dx * dx;
    sumXY += dx * (y[i]! - meanY);
  }
  contract(sumXX > 0, "fitLine: all x are equal, the slope is undefined");

  const slope = sumXY / sumXX;
  const intercept = meanY - slope * meanX;

  let residualSumOfSquares = 0;
  for (let i = 0; i < n; i++) {
    const residual = y[i]! - meanY - slope * (x[i]! - meanX);
    residualSumOfSquares += residual * residual;
  }

  const degreesOfFreedom = n - 2;
  const variance = residualSumOfSquares / degreesOfFreedom;
  return {
    intercept,
    slope,
    interceptVariance: variance * (1 / n + (meanX * meanX) / sumXX),
    slopeVariance: variance / sumXX,
    covariance: (-variance * meanX) / sumXX,
    residualSumOfSquares,
    degreesOfFreedom,
  };
}
