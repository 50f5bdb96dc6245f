import { contract } from "../result.ts";
import { type AllanEstimator, anglesOf, fromAngles } from "./allan-deviation.ts";
import { chiSquareQuantile } from "./chi-square.ts";

/** Allan deviation against averaging time, one place in the arrays for each averaging time. */
export interface AllanCurve {
  readonly count: number;
  /** averaging times, seconds */
  readonly averagingTimeS: Float64Array;
  /** unit of the rates */
  readonly deviation: Float64Array;
  /** ends of the confidence interval of each deviation, unit of the rates */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** effective degrees of freedom: windows that do not overlap, less one */
  readonly degreesOfFreedom: Float64Array;
}

export interface AllanCurveOptions {
  readonly estimator?: AllanEstimator;
  /** averaging times in a factor of ten; 8 when left out */
  readonly perDecade?: number;
  /** probability of the confidence interval; 0.6827 when left out (one standard deviation either way) */
  readonly confidence?: number;
}

/**
 * Allan deviation curve of a record of rates at evenly spread averaging times (on a logarithmic scale).
 *
 * Stops at a third of the record: beyond it a point rests on one or two differences and shows nothing. The
 * confidence interval counts only windows that do not overlap, so it is on the safe side for the overlapping form.
 *
 * @param rates evenly spaced samples, any unit. Shape: n, n >= 6. Finite.
 * @param spacing time between samples, s, > 0.
 * @throws ContractError if n < 6, a rate is not finite, or spacing, perDecade or confidence makes no sense.
 *
 * Frame: none.
 * Source: NIST Special Publication 1065 (Riley), section 5.4; degrees of freedom after the accuracy
 *   1 / sqrt(2 (n/m - 1)) of IEEE Std 952 (from memory).
 * Checked against: test/published/nbs14-allan
 */
export function allanCurve(
  rates: Float64Array,
  spacing: number,
  options: AllanCurveOptions = {},
): AllanCurve {
  const { estimator = "overlapping", perDecade = 8, confidence = 0.6827 } = options;
  contract(rates.length >= 6, `allanCurve: needs at least 6 rates, got ${rates.length}`);
  contract(rates.every(Number.isFinite), "allanCurve: every rate must be finite");
  contract(spacing > 0 && perDecade > 0, `allanCurve: spacing ${spacing} s, ${perDecade} times a decade`);
  contract(confidence > 0 && confidence < 1, `allanCurve: confidence ${confidence}`);

  const averagings = averagingFactors(Math.floor(rates.length / 3), perDecade);
  const angles = anglesOf(rates);
  const deviation = averagings.map((m) => fromAngles(angles, m, estimator).deviation);
  const degreesOfFreedom = averagings.map((m) => Math.floor(rates.length / m) - 1);
  // The variance found, times its degrees of freedom, over the true one is chi-square distributed.
  const limit = (probability: number) =>
    deviation.map((sigma, i) => {
      const freedom = degreesOfFreedom[i]!;
      return sigma * Math.sqrt(freedom / chiSquareQuantile(probability, freedom));
    });
  return {
    count: averagings.length,
    averagingTimeS: averagings.map((m) => m * spacing),
    deviation,
    lower: limit((1 + confidence) / 2),
    upper: limit((1 - confidence) / 2),
    degreesOfFreedom,
  };
}

/** Whole numbers from 1 to the largest, evenly spread on a logarithmic scale, none twice. */
export function averagingFactors(largest: number, perDecade: number): Float64Array {
  const factors = new Set<number>();
  for (let k = 0; ; k++) {
    const factor = Math.round(10 ** (k / perDecade));
    if (factor > largest) return Float64Array.from(factors);
    factors.add(factor);
  }
}
