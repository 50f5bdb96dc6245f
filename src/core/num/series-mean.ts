import { contract } from "../result.ts";
import { lag1Autocorrelation, mean, sampleStandardDeviation } from "./moments.ts";

/** Mean of a series of readings that may depend on their neighbours. */
export interface SeriesMean {
  /** unit of the values */
  readonly mean: number;
  readonly standardDeviation: number;
  /** of the mean, allowing for the dependence of neighbours; unit of the values */
  readonly standardError: number;
  /** lag-1 autocorrelation; 0 when all values are equal */
  readonly autocorrelation: number;
  /** number of independent values that would give the same standard error, 1 to n */
  readonly effectiveCount: number;
}

/**
 * Mean of a series with a standard error that allows for the dependence of neighbouring values.
 *
 * The series is taken as autoregressive of first order: n (1 - r)/(1 + r) independent values. A negative
 * correlation is not used to make the error smaller.
 *
 * @param values any unit, evenly spaced. Shape: n, n >= 3. A NaN among them makes the results NaN.
 * @throws ContractError if n < 3.
 *
 * Frame: none.
 * Source: Bayley & Hammersley, The effective number of independent observations, J. R. Stat. Soc. Suppl. 8, 1946
 *   (from memory).
 * Checked against: test/published/series-tests
 */
export function seriesMean(values: ArrayLike<number>): SeriesMean {
  const n = values.length;
  contract(n >= 3, `seriesMean: needs at least 3 values, got ${n}`);
  const standardDeviation = sampleStandardDeviation(values);
  // Equal values (a quantised sensor at rest) have no correlation to speak of; NaN must stay.
  const autocorrelation = standardDeviation === 0 ? 0 : lag1Autocorrelation(values);
  const effectiveCount = effectiveCountOf(n, autocorrelation);
  return {
    mean: mean(values),
    standardDeviation,
    standardError: standardDeviation / Math.sqrt(effectiveCount),
    autocorrelation,
    effectiveCount,
  };
}

/** Number of independent values worth as much as n with lag-1 autocorrelation r; at least 1, never more than n. */
export function effectiveCountOf(n: number, autocorrelation: number): number {
  const used = Math.max(0, autocorrelation);
  return Math.max(1, (n * (1 - used)) / (1 + used));
}
