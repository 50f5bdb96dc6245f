import { contract } from "../result.ts";

/** Metres for one count of the depth device. */
export interface DepthScale {
  readonly metresPerCount: number;
  /** standard uncertainty from the repeats, metres per count; NaN for a single pull */
  readonly standardUncertainty: number;
  readonly repeats: number;
}

/**
 * Depth scale from counts over a marked length, repeated.
 *
 * @param lengthM marked length, metres. @param counts one value a pull.
 * @throws ContractError unless there is a pull and every count is finite and their mean is not 0.
 *
 * Frame: none. Source: rule B4; uncertainty of a mean, JCGM 100:2008 4.2.3.
 */
export function depthScale(lengthM: number, counts: readonly number[]): DepthScale {
  contract(counts.length > 0 && counts.every(Number.isFinite), "depthScale: needs finite counts");
  const n = counts.length;
  const mean = counts.reduce((sum, count) => sum + count, 0) / n;
  contract(mean !== 0, "depthScale: the counts average 0");
  const squares = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0);
  const uncertaintyOfMean = n > 1 ? Math.sqrt(squares / (n - 1) / n) : Number.NaN;
  const metresPerCount = lengthM / mean;
  return {
    metresPerCount,
    standardUncertainty: Math.abs(metresPerCount / mean) * uncertaintyOfMean,
    repeats: n,
  };
}
