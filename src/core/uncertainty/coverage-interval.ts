import { contract } from "../result.ts";

/** An interval that holds a stated share of a sample. */
export interface CoverageInterval {
  readonly lower: number;
  readonly upper: number;
}

/**
 * Interval of a sample that leaves the same share out below and above.
 *
 * @param sorted rising values, unit as they are. Shape: n; no NaN.
 * @param probability share held, between 0 and 1; n must be large enough to leave at least one value out.
 * @throws ContractError if the probability is out of range or the sample too small for it or not sorted at its ends.
 *
 * Frame: none.
 * Source: JCGM 101:2008, clause 7.7.2 (from memory).
 * Checked against: test/published/jcgm-101
 */
export function symmetricInterval(sorted: Float64Array, probability: number): CoverageInterval {
  const held = heldCount(sorted, probability);
  const first = Math.ceil((sorted.length - held) / 2) - 1;
  return { lower: sorted[first]!, upper: sorted[first + held]! };
}

/**
 * Shortest interval of a sample that holds the stated share; of several equally short ones the lowest.
 *
 * For a skew distribution (an offset near zero) it differs from the symmetric one and is the one to state.
 *
 * @param sorted, probability as in `symmetricInterval`.
 * @throws ContractError as `symmetricInterval`.
 *
 * Frame: none.
 * Source: JCGM 101:2008, clause 7.7.3 (from memory).
 * Checked against: test/published/jcgm-101
 */
export function shortestInterval(sorted: Float64Array, probability: number): CoverageInterval {
  const held = heldCount(sorted, probability);
  let best = 0;
  for (let i = 1; i + held < sorted.length; i++)
    if (sorted[i + held]! - sorted[i]! < sorted[best + held]! - sorted[best]!) best = i;
  return { lower: sorted[best]!, upper: sorted[best + held]! };
}

/** q of JCGM 101: p M rounded to a whole number. */
function heldCount(sorted: Float64Array, probability: number): number {
  const n = sorted.length;
  contract(probability > 0 && probability < 1, `coverage interval: probability ${probability}`);
  const held = Math.floor(probability * n + 0.5);
  contract(held >= 1 && held < n, `coverage interval: ${n} values are too few for ${probability}`);
  contract(
    sorted[0]! <= sorted[n - 1]! && !Number.isNaN(sorted[n - 1]!),
    "coverage interval: values must be sorted, without NaN",
  );
  return held;
}
