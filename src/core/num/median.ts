import { contract } from "../result.ts";

/**
 * Middle value of a sample; the mean of the two middle ones for an even count.
 *
 * @param values any unit, in any order; not changed. Shape: n, n >= 1. A NaN among them makes the median NaN.
 * @returns unit of the values.
 * @throws ContractError if there are no values.
 */
export function median(values: ArrayLike<number>): number {
  const n = values.length;
  contract(n > 0, "median: needs at least one value");
  const sorted = Float64Array.from(values).sort();
  // Typed arrays sort NaN to the end: one look is enough.
  if (Number.isNaN(sorted[n - 1]!)) return Number.NaN;
  const upper = sorted[n >> 1]!;
  return n % 2 === 1 ? upper : sorted[(n >> 1) - 1]! + (upper - sorted[(n >> 1) - 1]!) / 2;
}
