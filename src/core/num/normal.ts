import { contract } from "../result.ts";
import { erfc, expMinusSquare } from "./error-function.ts";

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Density of the standard normal distribution. */
export const normalDensity = (z: number): number => expMinusSquare(z / Math.SQRT2) / ROOT_TWO_PI;

/**
 * Probability that a standard normal variable is at most z.
 *
 * @returns within [0, 1], to about 1e-14 relative in the lower tail too. NaN stays NaN.
 *
 * Frame: none.
 * Source: definition through the complement of the error function.
 * Checked against: table of coverage factors (normal.test.ts), test/published/normal-and-student-tables
 */
export const normalCdf = (z: number): number => erfc(-z / Math.SQRT2) / 2;

/** Probability that a standard normal variable exceeds z, exact in the upper tail. */
export const normalUpper = (z: number): number => erfc(z / Math.SQRT2) / 2;

/** Probability that a standard normal variable lies between a and b, a <= b, exact in both tails. */
export function normalBetween(a: number, b: number): number {
  return a > 0 ? normalUpper(a) - normalUpper(b) : normalCdf(b) - normalCdf(a);
}

/**
 * The value that a standard normal variable stays below with probability p.
 *
 * A rough rational start, then Halley's method on the exact distribution.
 *
 * @param p probability, 0 to 1; 0 gives -Infinity, 1 gives Infinity. NaN gives NaN.
 * @returns to about 1e-14 relative, also for tiny p; for p near 1 give the other tail and turn the sign.
 * @throws ContractError if p lies outside [0, 1].
 *
 * Frame: none.
 * Source: Abramowitz & Stegun 26.2.23 for the start (from memory).
 * Checked against: inverse of normalCdf; tabled 1.959964, 2.575829, 3.290527 (normal.test.ts).
 */
export function normalQuantile(p: number): number {
  if (Number.isNaN(p)) return Number.NaN;
  contract(p >= 0 && p <= 1, `normalQuantile: probability ${p} outside [0, 1]`);
  if (p === 0) return Number.NEGATIVE_INFINITY;
  if (p === 1) return Number.POSITIVE_INFINITY;
  if (p > 0.5) return -normalQuantile(1 - p);
  if (p === 0.5) return 0;

  const t = Math.sqrt(-2 * Math.log(p));
  let z =
    (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let step = 0; step < 3; step++) {
    const error = (normalCdf(z) - p) / normalDensity(z);
    z -= error / (1 + (z * error) / 2);
  }
  return z;
}
