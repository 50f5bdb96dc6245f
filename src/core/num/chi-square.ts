import { contract } from "../result.ts";
import { incompleteGamma } from "./incomplete-gamma.ts";
import { positiveQuantile } from "./positive-quantile.ts";

/**
 * Probability that a chi-square variable is at most x.
 *
 * @param x value; anything below 0 gives 0. NaN gives NaN.
 * @param degreesOfFreedom > 0, need not be whole.
 * @throws ContractError if the degrees of freedom are not positive.
 *
 * Frame: none.
 * Source: Abramowitz & Stegun 26.4.19 (from memory).
 * Checked against: test/published/confidence-regions, two degrees of freedom in closed form (chi-square.test.ts).
 */
export function chiSquareCdf(x: number, degreesOfFreedom: number): number {
  contract(degreesOfFreedom > 0, `chiSquareCdf: ${degreesOfFreedom} degrees of freedom`);
  return incompleteGamma(degreesOfFreedom / 2, x < 0 ? 0 : x / 2).lower;
}

/** Probability that a chi-square variable exceeds x, exact in the upper tail; else as `chiSquareCdf`. */
export function chiSquareUpper(x: number, degreesOfFreedom: number): number {
  contract(degreesOfFreedom > 0, `chiSquareUpper: ${degreesOfFreedom} degrees of freedom`);
  return incompleteGamma(degreesOfFreedom / 2, x < 0 ? 0 : x / 2).upper;
}

/**
 * The value that a chi-square variable stays below with the given probability.
 *
 * @param probability from 0 (gives 0) to 1 (gives Infinity). NaN gives NaN.
 * @param degreesOfFreedom > 0, need not be whole.
 * @throws ContractError if the probability lies outside [0, 1] or the degrees of freedom are not positive.
 *
 * Frame: none.
 * Source: inverse of `chiSquareCdf`.
 */
export function chiSquareQuantile(probability: number, degreesOfFreedom: number): number {
  contract(degreesOfFreedom > 0, `chiSquareQuantile: ${degreesOfFreedom} degrees of freedom`);
  const shape = degreesOfFreedom / 2;
  return 2 * positiveQuantile(probability, (half) => incompleteGamma(shape, half), shape);
}
