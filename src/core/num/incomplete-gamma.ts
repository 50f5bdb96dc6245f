import { contract } from "../result.ts";
import { continuedFraction } from "./continued-fraction.ts";
import { deviance, logGamma, stirlingError } from "./gamma.ts";

/**
 * Regularised incomplete gamma functions P(a, x) (lower) and Q(a, x) = 1 - P (upper), each without cancellation.
 *
 * @param a shape, > 0.
 * @param x >= 0; Infinity allowed. NaN gives NaN.
 * @returns both, within [0, 1], to about 1e-13 relative.
 * @throws ContractError if a <= 0 or x < 0.
 *
 * Frame: none.
 * Source: Abramowitz & Stegun 6.5.29 (series), 6.5.31 (continued fraction) (from memory).
 * Checked against: closed forms for whole and half a (incomplete-gamma.test.ts).
 */
export function incompleteGamma(a: number, x: number): { readonly lower: number; readonly upper: number } {
  if (Number.isNaN(a) || Number.isNaN(x)) return { lower: Number.NaN, upper: Number.NaN };
  contract(a > 0 && x >= 0, `incompleteGamma: a = ${a}, x = ${x}`);
  if (x === 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  if (x < a + 1) {
    const lower = powerTerm(a, x) * series(a, x);
    return { lower, upper: 1 - lower };
  }
  const fraction = continuedFraction(x + 1 - a, (n) => [-n * (n - a), x + 2 * n + 1 - a]);
  const upper = (powerTerm(a, x) * a) / fraction;
  return { lower: 1 - upper, upper };
}

/** x^a e^-x / Gamma(a + 1) for a >= 0, x > 0: for whole a the chance of a events where x are expected. */
export function powerTerm(a: number, x: number): number {
  // For small a the logarithms are small; for large a they would cancel.
  if (a < 1) return Math.exp(a * Math.log(x) - x - logGamma(a + 1));
  return Math.exp(-a * deviance(x, a) - stirlingError(a)) / Math.sqrt(2 * Math.PI * a);
}

/** 1 + x/(a+1) + x^2/((a+1)(a+2)) + … */
function series(a: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > Number.EPSILON * 1e-2 * sum; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}
