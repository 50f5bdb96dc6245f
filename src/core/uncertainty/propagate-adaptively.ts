import { mean, sampleStandardDeviation } from "../num/moments.ts";
import { contract } from "../result.ts";
import type { InputDistribution } from "./input-distribution.ts";
import type { Model } from "./propagate-first-order.ts";
import {
  type MonteCarloOptions,
  propagateMonteCarlo,
  type SampleSummary,
  summariseSample,
} from "./propagate-monte-carlo.ts";

export interface AdaptiveOptions extends MonteCarloOptions {
  /** probability of the coverage interval; 0.95 when left out */
  readonly probability?: number;
  /** digits of the standard uncertainty that must stand; 2 when left out */
  readonly significantDigits?: number;
  /** no more trials than this; 1e7 when left out */
  readonly maxTrials?: number;
}

/** Outcome of a run whose length was found on the way. */
export interface AdaptiveResult {
  readonly summary: SampleSummary;
  readonly trials: number;
  /** numerical tolerance asked for, unit of the output */
  readonly tolerance: number;
  /** false when the largest number of trials came first: the last digit does not stand */
  readonly stabilised: boolean;
}

/**
 * Runs trials in batches until mean, standard uncertainty and both ends of the interval stand.
 *
 * Stands means: twice the standard deviation of each, averaged over the batches, is within half a unit of the last
 * significant digit of the standard uncertainty.
 *
 * @param model with one output.
 * @param seed as in `propagateMonteCarlo`.
 * @throws ContractError as `propagateMonteCarlo`, or if the model has more than one output or an option makes no sense.
 *
 * Frame: none.
 * Source: JCGM 101:2008, clause 7.9 (from memory).
 * Checked against: test/published/jcgm-101
 */
export function propagateAdaptively(
  model: Model,
  inputs: readonly InputDistribution[],
  seed: number,
  options: AdaptiveOptions = {},
): AdaptiveResult {
  const { probability = 0.95, significantDigits = 2, maxTrials = 1e7 } = options;
  contract(
    probability > 0 && probability < 1 && Number.isInteger(significantDigits) && significantDigits >= 1,
    `propagateAdaptively: probability ${probability}, ${significantDigits} digits`,
  );
  const batch = Math.max(Math.ceil(100 / (1 - probability)), 10_000);
  const batches: Float64Array[] = [];
  const summaries: SampleSummary[] = [];
  for (;;) {
    const firstTrial = (options.firstTrial ?? 0) + batches.length * batch;
    const outputs = propagateMonteCarlo(model, inputs, batch, seed, { ...options, firstTrial });
    contract(outputs.length === 1, `propagateAdaptively: the model has ${outputs.length} outputs`);
    batches.push(outputs[0]!);
    summaries.push(summariseSample(outputs[0]!, probability));
    const isLast = (batches.length + 1) * batch > maxTrials;
    if (batches.length < 2 && !isLast) continue;

    const spread = mean(summaries.map(({ standardUncertainty }) => standardUncertainty));
    const tolerance = numericalTolerance(spread, significantDigits);
    const stabilised = batches.length >= 2 && hasStabilised(summaries, tolerance);
    if (!stabilised && !isLast) continue;
    const all = new Float64Array(batches.length * batch);
    for (const [i, values] of batches.entries()) all.set(values, i * batch);
    return { summary: summariseSample(all, probability), trials: all.length, tolerance, stabilised };
  }
}

/**
 * Half a unit of the last of the given digits of a standard uncertainty; 0 for an uncertainty of 0.
 *
 * Frame: none.
 * Source: JCGM 101:2008, clause 7.9.2 (from memory).
 */
export function numericalTolerance(standardUncertainty: number, significantDigits: number): number {
  if (standardUncertainty === 0) return 0;
  // Rounded first: 0.0996 to two digits is 0.10, whose last digit is a hundredth.
  const [, exponent] = standardUncertainty.toExponential(significantDigits - 1).split("e");
  return 0.5 * 10 ** (Number(exponent) - significantDigits + 1);
}

function hasStabilised(summaries: readonly SampleSummary[], tolerance: number): boolean {
  const features: readonly ((summary: SampleSummary) => number)[] = [
    (summary) => summary.mean,
    (summary) => summary.standardUncertainty,
    (summary) => summary.symmetric.lower,
    (summary) => summary.symmetric.upper,
  ];
  const rootCount = Math.sqrt(summaries.length);
  return features.every(
    (feature) => (2 * sampleStandardDeviation(summaries.map(feature))) / rootCount <= tolerance,
  );
}
