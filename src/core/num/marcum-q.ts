import { contract } from "../result.ts";
import { incompleteGamma, powerTerm } from "./incomplete-gamma.ts";

/**
 * Marcum's Q function of whole order: upper tail of the noncentral chi-square distribution.
 *
 * Q_1(d/s, R/s) is the chance that a point at distance d from the centre, with spread s in every direction, lies
 * outside the circle of radius R.
 *
 * @param order M, whole, >= 1; half the degrees of freedom.
 * @param a >= 0, root of the noncentrality. NaN gives NaN.
 * @param b >= 0, root of the value. NaN gives NaN.
 * @returns `upper` = Q_M(a, b) and `lower` = 1 - Q_M, each exact where it is small, to about 1e-13 relative.
 * @throws ContractError if the order is not a whole number >= 1 or a or b is negative.
 *
 * Frame: none.
 * Source: Abramowitz & Stegun 26.4.25: Poisson mixture of central chi-square distributions (from memory).
 * Checked against: test/published/marcum-q
 */
export function marcumQ(
  order: number,
  a: number,
  b: number,
): { readonly lower: number; readonly upper: number } {
  contract(Number.isInteger(order) && order >= 1, `marcumQ: order ${order}`);
  if (Number.isNaN(a) || Number.isNaN(b)) return { lower: Number.NaN, upper: Number.NaN };
  contract(a >= 0 && b >= 0, `marcumQ: a = ${a}, b = ${b}`);
  const expected = (a * a) / 2;
  const x = (b * b) / 2;
  if (expected === 0) return incompleteGamma(order, x);

  // The smaller tail is summed, from its largest term both ways; all terms are positive.
  const isUpper = x > expected + order;
  const term = (k: number): number => {
    const part = incompleteGamma(order + k, x);
    return powerTerm(k, expected) * (isUpper ? part.upper : part.lower);
  };
  const start = Math.floor(Math.sqrt(expected * x));
  let tail = 0;
  const add = (k: number): boolean => {
    const value = term(k);
    tail += value;
    return value > Number.EPSILON * 1e-2 * tail;
  };
  for (let k = start; add(k); k++);
  for (let k = start - 1; k >= 0 && add(k); k--);
  return isUpper ? { lower: 1 - tail, upper: tail } : { lower: tail, upper: 1 - tail };
}
