import { contract } from "../result.ts";
import { ExactSum } from "./exact-arithmetic.ts";

/**
 * Arithmetic mean, summed with its rounding errors kept, so that large common offsets do no harm.
 *
 * @param values any unit. Shape: n, n >= 1. A NaN among them makes the mean NaN.
 * @returns unit of the values.
 * @throws ContractError if there are no values.
 *
 * Frame: none.
 * Source: definition.
 * Checked against: test/published/nist-strd-univariate
 */
export function mean(values: ArrayLike<number>): number {
  contract(values.length > 0, "mean: needs at least one value");
  const sum = new ExactSum();
  for (let i = 0; i < values.length; i++) sum.add(values[i]!);
  return sum.value / values.length;
}

/**
 * Sample variance with divisor n - 1, from differences to the mean (two passes).
 *
 * The second pass also takes away the square of the mean of the differences, which is not zero because the
 * mean itself is rounded.
 *
 * @param values any unit. Shape: n, n >= 2. A NaN among them makes the result NaN.
 * @returns unit of the values, squared.
 * @throws ContractError if n < 2.
 *
 * Frame: none.
 * Source: Chan, Golub & LeVeque, Algorithms for computing the sample variance, Am. Stat. 37, 1983 (from memory).
 * Checked against: test/published/nist-strd-univariate
 */
export function sampleVariance(values: ArrayLike<number>): number {
  const n = values.length;
  contract(n >= 2, `sampleVariance: needs at least 2 values, got ${n}`);
  const centre = mean(values);
  const squares = new ExactSum();
  const differences = new ExactSum();
  for (let i = 0; i < n; i++) {
    const difference = values[i]! - centre;
    squares.addProduct(difference, difference);
    differences.add(difference);
  }
  return (squares.value - (differences.value * differences.value) / n) / (n - 1);
}

/** Square root of `sampleVariance`. Unit of the values. */
export function sampleStandardDeviation(values: ArrayLike<number>): number {
  return Math.sqrt(sampleVariance(values));
}

/**
 * Correlation of a series with itself one place later:
 * sum (x_i - m)(x_(i+1) - m) / sum (x_i - m)^2.
 *
 * @param values any unit. Shape: n, n >= 2. A NaN among them, or all equal, makes the result NaN.
 * @returns dimensionless, within (-1, 1).
 * @throws ContractError if n < 2.
 *
 * Frame: none.
 * Source: NIST StRD, univariate summary statistics, definition of the lag-1 autocorrelation coefficient.
 * Checked against: test/published/nist-strd-univariate
 */
export function lag1Autocorrelation(values: ArrayLike<number>): number {
  return autocorrelation(values, 1);
}

/** Correlation of a series with itself `lag` places later, as `lag1Autocorrelation`; lag from 0 to n - 1. */
export function autocorrelation(values: ArrayLike<number>, lag: number): number {
  const n = values.length;
  contract(n >= 2, `autocorrelation: needs at least 2 values, got ${n}`);
  contract(Number.isInteger(lag) && lag >= 0 && lag < n, `autocorrelation: lag ${lag} of ${n} values`);
  const centre = mean(values);
  const products = new ExactSum();
  const squares = new ExactSum();
  for (let i = 0; i < n; i++) {
    const difference = values[i]! - centre;
    squares.addProduct(difference, difference);
    if (i + lag < n) products.addProduct(difference, values[i + lag]! - centre);
  }
  return products.value / squares.value;
}
