import { contract } from "../result.ts";
import { normalCdf } from "./normal.ts";

/** Up to this many values the distribution is worked out exactly. */
const EXACT_UP_TO = 120;

/**
 * Number of pairs in reverse order: pairs i < j with x_i > x_j, ties counted one half.
 *
 * Small for rising values, large for falling ones; about n (n - 1) / 4 for values in random order. Quantised
 * readings have many ties: counted as nothing they would look like a rise.
 *
 * @param values any unit. Shape: n, n >= 2. A NaN among them makes the result NaN.
 * @throws ContractError if n < 2.
 *
 * Frame: none.
 * Source: Bendat & Piersol, Random Data, section on the reverse arrangements test (from memory).
 * Checked against: test/published/series-tests
 */
export function reverseArrangements(values: ArrayLike<number>): number {
  const n = values.length;
  contract(n >= 2, `reverseArrangements: needs at least 2 values, got ${n}`);
  let halves = 0;
  for (let i = 0; i < n; i++) {
    if (Number.isNaN(values[i]!)) return Number.NaN;
    for (let j = i + 1; j < n; j++) halves += values[i]! > values[j]! ? 2 : values[i]! === values[j]! ? 1 : 0;
  }
  return halves / 2;
}

/**
 * Probability that values in random order have at most so many reverse arrangements.
 *
 * Exact up to 120 values (without ties), from there on normal with mean n (n - 1) / 4 and variance
 * n (2n + 5) (n - 1) / 72.
 *
 * @param arrangements from `reverseArrangements`; a half is rounded down. NaN gives NaN.
 * @param count number of values, >= 2.
 * @throws ContractError if count is not a whole number >= 2.
 *
 * Frame: none.
 * Source: Kendall: the number is a sum of independent numbers spread evenly over 0 … k - 1 (from memory).
 * Checked against: test/published/series-tests
 */
export function reverseArrangementsCdf(arrangements: number, count: number): number {
  contract(Number.isInteger(count) && count >= 2, `reverseArrangementsCdf: ${count} values`);
  if (Number.isNaN(arrangements)) return Number.NaN;
  if (arrangements < 0) return 0;
  if (count > EXACT_UP_TO) {
    const centre = (count * (count - 1)) / 4;
    const spread = Math.sqrt((count * (2 * count + 5) * (count - 1)) / 72);
    return normalCdf((Math.floor(arrangements) + 0.5 - centre) / spread);
  }
  const chances = distribution(count);
  const last = Math.min(Math.floor(arrangements), chances.length - 1);
  let sum = 0;
  for (let a = 0; a <= last; a++) sum += chances[a]!;
  return Math.min(1, sum);
}

/** Chance of each number of reverse arrangements of `count` values. */
function distribution(count: number): Float64Array {
  let chances = Float64Array.of(1);
  for (let k = 2; k <= count; k++) {
    const next = new Float64Array(chances.length + k - 1);
    let window = 0;
    for (let a = 0; a < next.length; a++) {
      window += (chances[a] ?? 0) - (chances[a - k] ?? 0);
      next[a] = Math.max(0, window) / k;
    }
    chances = next;
  }
  return chances;
}
