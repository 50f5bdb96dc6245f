import { contract } from "../result.ts";
import { incompleteBeta } from "./incomplete-beta.ts";
import { positiveQuantile } from "./positive-quantile.ts";

/**
 * Probability that an F variable (ratio of two independent mean squares) is at most x.
 *
 * @param x value; anything below 0 gives 0. NaN gives NaN.
 * @param numeratorDegrees, denominatorDegrees degrees of freedom, > 0, need not be whole.
 * @throws ContractError if degrees of freedom are not positive.
 *
 * Frame: none.
 * Source: Abramowitz & Stegun 26.6.2 (from memory).
 * Checked against: test/published/confidence-regions; square of Student's t (f-distribution.test.ts).
 */
export function fCdf(x: number, numeratorDegrees: number, denominatorDegrees: number): number {
  return tails(x, numeratorDegrees, denominatorDegrees).lower;
}

/** Probability that an F variable exceeds x, exact in the upper tail; else as `fCdf`. */
export function fUpper(x: number, numeratorDegrees: number, denominatorDegrees: number): number {
  return tails(x, numeratorDegrees, denominatorDegrees).upper;
}

/**
 * The value that an F variable stays below with the given probability.
 *
 * @param probability from 0 (gives 0) to 1 (gives Infinity). NaN gives NaN.
 * @param numeratorDegrees, denominatorDegrees degrees of freedom, > 0, need not be whole.
 * @throws ContractError if the probability lies outside [0, 1] or degrees of freedom are not positive.
 *
 * Frame: none.
 * Source: inverse of `fCdf`.
 */
export function fQuantile(probability: number, numeratorDegrees: number, denominatorDegrees: number): number {
  return positiveQuantile(probability, (x) => tails(x, numeratorDegrees, denominatorDegrees), 1);
}

function tails(x: number, numerator: number, denominator: number): { lower: number; upper: number } {
  contract(numerator > 0 && denominator > 0, `F distribution: ${numerator} and ${denominator} degrees`);
  if (x < 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  const total = numerator * x + denominator;
  return incompleteBeta(numerator / 2, denominator / 2, (numerator * x) / total, denominator / total);
}
