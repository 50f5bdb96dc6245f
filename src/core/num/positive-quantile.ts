import { contract } from "../result.ts";
import { findRoot } from "./find-root.ts";

/** Distribution function of a positive variable with both tails, each exact where it is small. */
export type BothTails = (x: number) => { readonly lower: number; readonly upper: number };

/** Steps of a factor 4 by which a bracket is sought; reaches both ends of the doubles. */
const MAX_BRACKET_STEPS = 600;

/**
 * The value a positive variable stays below with the given probability, from its distribution function.
 *
 * Worked in the logarithms of the value and of the smaller tail, so that it is exact in both tails.
 *
 * @param probability from 0 to 1. NaN gives NaN.
 * @param tails distribution function on [0, Infinity).
 * @param start any positive value of the size of the variable.
 * @throws ContractError if the probability lies outside [0, 1].
 */
export function positiveQuantile(probability: number, tails: BothTails, start: number): number {
  if (Number.isNaN(probability)) return Number.NaN;
  contract(probability >= 0 && probability <= 1, `positiveQuantile: probability ${probability}`);
  if (probability === 0) return 0;
  if (probability === 1) return Number.POSITIVE_INFINITY;
  const isLower = probability <= 0.5;
  const goal = Math.log(isLower ? probability : 1 - probability);
  const excess = (logX: number): number => {
    const { lower, upper } = tails(Math.exp(logX));
    return isLower ? Math.log(lower) - goal : goal - Math.log(upper);
  };

  const step = Math.log(4);
  let from = Math.log(start);
  let to = from;
  for (let i = 0; i < MAX_BRACKET_STEPS && excess(from) > 0; i++) from -= step;
  for (let i = 0; i < MAX_BRACKET_STEPS && excess(to) < 0; i++) to += step;
  const floor = Number.NEGATIVE_INFINITY;
  const bounded = (value: number) => (value === floor ? -1e300 : value === -floor ? 1e300 : value);
  return Math.exp(findRoot((logX) => bounded(excess(logX)), from, to));
}
