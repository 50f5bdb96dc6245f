import { contract } from "../result.ts";

const HALF_LOG_TWO_PI = Math.log(2 * Math.PI) / 2;
/** From here on seven terms of Stirling's series reach the precision of a double. */
const STIRLING_FROM = 15;
/** B_2k / (2k (2k - 1)) for k = 1, 2, …: exact fractions of Bernoulli numbers. */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156];

/**
 * Natural logarithm of the gamma function for positive x.
 *
 * @param x > 0. NaN gives NaN.
 * @returns to about 2e-15 relative or 3e-14 absolute, whichever is larger.
 * @throws ContractError if x <= 0.
 *
 * Frame: none.
 * Source: Abramowitz & Stegun 6.1.40 with the recurrence 6.1.15 below 15 (from memory).
 * Checked against: factorials and Gamma(1/2) = sqrt(pi) (gamma.test.ts).
 */
export function logGamma(x: number): number {
  if (Number.isNaN(x)) return Number.NaN;
  contract(x > 0, `logGamma: ${x} is not positive`);
  let shifted = x;
  let product = 1;
  while (shifted < STIRLING_FROM) {
    product *= shifted;
    shifted += 1;
  }
  return (
    (shifted - 0.5) * Math.log(shifted) - shifted + HALF_LOG_TWO_PI + stirling(shifted) - Math.log(product)
  );
}

/**
 * What is left of ln Gamma(x) after Stirling's formula (x - 1/2) ln x - x + ln(2 pi)/2.
 *
 * Lets ratios of gamma functions be formed without the cancellation of their large logarithms.
 *
 * @param x > 0.
 * @throws ContractError if x <= 0.
 */
export function stirlingError(x: number): number {
  if (x >= STIRLING_FROM) return stirling(x);
  return logGamma(x) - ((x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI);
}

/**
 * r - 1 - ln r for the ratio r = value / reference, accurate near r = 1, where the terms cancel.
 *
 * @param value, reference > 0. NaN gives NaN.
 * Source: Loader, Fast and accurate computation of binomial probabilities, 2000 (from memory).
 */
export function deviance(value: number, reference: number): number {
  const u = (value - reference) / reference;
  if (!(Math.abs(u) < 0.5)) return u - Math.log(value / reference);
  // ln(1 + u) = 2 artanh(r) with r = u / (2 + u), and 2 r - u = -r u.
  const r = u / (2 + u);
  const square = r * r;
  let power = 2 * r * square;
  let sum = 0;
  for (let k = 3; Math.abs(power) > Number.EPSILON * 1e-2 * Math.abs(r * u); k += 2) {
    sum += power / k;
    power *= square;
  }
  return r * u - sum;
}

function stirling(x: number): number {
  const inverseSquare = 1 / (x * x);
  let sum = 0;
  for (let k = STIRLING.length - 1; k >= 0; k--) sum = sum * inverseSquare + STIRLING[k]!;
  return sum / x;
}
