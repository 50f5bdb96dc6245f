import { contract } from "../result.ts";
import { incompleteBeta } from "./incomplete-beta.ts";
import { normalCdf, normalQuantile } from "./normal.ts";
import { positiveQuantile } from "./positive-quantile.ts";

/**
 * Probability that Student's t is at most the value given.
 *
 * @param value NaN gives NaN.
 * @param degreesOfFreedom > 0, need not be whole; Infinity gives the normal distribution.
 * @returns within [0, 1], exact in the lower tail.
 * @throws ContractError if the degrees of freedom are not positive.
 *
 * Frame: none.
 * Source: Abramowitz & Stegun 26.7.1, 26.5.27 (from memory).
 * Checked against: test/published/normal-and-student-tables, closed forms for 1 and 2 degrees (student-t.test.ts).
 */
export function studentTCdf(value: number, degreesOfFreedom: number): number {
  contract(degreesOfFreedom > 0, `studentTCdf: ${degreesOfFreedom} degrees of freedom`);
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return normalCdf(value);
  const half = tailsOfSquare(value * value, degreesOfFreedom).upper / 2;
  return value > 0 ? 1 - half : half;
}

/**
 * The value that Student's t stays below with the given probability.
 *
 * For a two-sided interval of probability p ask for (1 + p)/2.
 *
 * @param probability from 0 (gives -Infinity) to 1 (gives Infinity). NaN gives NaN.
 * @param degreesOfFreedom > 0, need not be whole; Infinity gives the normal distribution.
 * @throws ContractError if the probability lies outside [0, 1] or the degrees of freedom are not positive.
 *
 * Frame: none.
 * Source: inverse of `studentTCdf`.
 */
export function studentTQuantile(probability: number, degreesOfFreedom: number): number {
  contract(degreesOfFreedom > 0, `studentTQuantile: ${degreesOfFreedom} degrees of freedom`);
  if (degreesOfFreedom === Number.POSITIVE_INFINITY) return normalQuantile(probability);
  if (Number.isNaN(probability)) return Number.NaN;
  contract(probability >= 0 && probability <= 1, `studentTQuantile: probability ${probability}`);
  if (probability > 0.5) return -studentTQuantile(1 - probability, degreesOfFreedom);
  if (probability === 0.5) return 0;
  if (probability === 0) return Number.NEGATIVE_INFINITY;
  // t^2 exceeds x with twice the probability of one tail: the tails change places so that none is lost.
  const inverse = (x: number) => {
    const { lower, upper } = tailsOfSquare(1 / x, degreesOfFreedom);
    return { lower: upper, upper: lower };
  };
  return -1 / Math.sqrt(positiveQuantile(2 * probability, inverse, 1));
}

/** Both tails of t^2, which is an F variable with 1 and nu degrees of freedom. */
function tailsOfSquare(square: number, degreesOfFreedom: number): { lower: number; upper: number } {
  if (square === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  const total = degreesOfFreedom + square;
  return incompleteBeta(0.5, degreesOfFreedom / 2, square / total, degreesOfFreedom / total);
}
