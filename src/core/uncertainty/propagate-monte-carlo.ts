import { choleskyFactor } from "../num/cholesky.ts";
import type { Matrix } from "../num/matrix.ts";
import { mean, sampleStandardDeviation } from "../num/moments.ts";
import { fillUniforms } from "../num/random-stream.ts";
import { contract } from "../result.ts";
import { type CoverageInterval, shortestInterval, symmetricInterval } from "./coverage-interval.ts";
import { drawFrom, type InputDistribution, normalFrom } from "./input-distribution.ts";
import type { Model } from "./propagate-first-order.ts";

export interface MonteCarloOptions {
  /** correlation of the inputs; only normal ones may be correlated. Shape: n x n */
  readonly correlation?: Matrix;
  /** number of the first trial, for carrying on an earlier run; 0 when left out */
  readonly firstTrial?: number;
}

/**
 * Draws inputs from their distributions and runs each set through a model.
 *
 * A trial depends on the seed and its own number only: any split of the trials among workers gives the same values.
 *
 * @param model gives m >= 1 outputs.
 * @param inputs distribution of each input. Shape: n.
 * @param trials number of trials, whole, >= 1.
 * @param seed whole number, 0 to 2^53 - 1; to be printed with the result.
 * @returns one array for each output, in the order of the trials. Shape: m arrays of `trials`.
 * @throws ContractError if trials or seed are not whole numbers, or the correlation does not fit.
 *
 * Frame: none.
 * Source: JCGM 101:2008, clause 7 (from memory).
 * Checked against: test/published/jcgm-101
 */
export function propagateMonteCarlo(
  model: Model,
  inputs: readonly InputDistribution[],
  trials: number,
  seed: number,
  options: MonteCarloOptions = {},
): readonly Float64Array[] {
  const { correlation, firstTrial = 0 } = options;
  contract(Number.isInteger(trials) && trials >= 1, `propagateMonteCarlo: ${trials} trials`);
  const draws = inputs.map((_, stream) => {
    const uniforms = new Float64Array(2 * trials);
    fillUniforms({ seed, stream }, 2 * firstTrial, uniforms);
    return uniforms;
  });
  const mix = correlation && correlationMixer(inputs, correlation);
  const set = new Float64Array(inputs.length);
  const outputs: Float64Array[] = [];
  for (let trial = 0; trial < trials; trial++) {
    for (const [j, input] of inputs.entries()) {
      const [a, b] = [draws[j]![2 * trial]!, draws[j]![2 * trial + 1]!];
      set[j] = mix === undefined ? drawFrom(input, a, b) : normalFrom(a, b);
    }
    mix?.(set, (j) => drawFrom(inputs[j]!, draws[j]![2 * trial]!, draws[j]![2 * trial + 1]!));
    const values = model(set);
    if (trial === 0) for (let i = 0; i < values.length; i++) outputs.push(new Float64Array(trials));
    for (const [i, output] of outputs.entries()) output[trial] = values[i]!;
  }
  return outputs;
}

/** Turns independent normal numbers into correlated inputs, in place; others are drawn as they are. */
function correlationMixer(inputs: readonly InputDistribution[], correlation: Matrix) {
  const n = inputs.length;
  contract(
    correlation.rows === n && correlation.columns === n,
    `propagateMonteCarlo: correlation ${correlation.rows} x ${correlation.columns} for ${n} inputs`,
  );
  for (let i = 0; i < n; i++) {
    contract(correlation.values[i * n + i] === 1, `propagateMonteCarlo: correlation ${i}, ${i} is not 1`);
    const isAlone = inputs.every((_, j) => i === j || correlation.values[i * n + j] === 0);
    contract(
      isAlone || inputs[i]!.kind === "normal",
      `propagateMonteCarlo: correlated input ${i} is not normal`,
    );
  }
  const factor = choleskyFactor(correlation);
  contract(factor !== undefined, "propagateMonteCarlo: the correlations contradict each other");
  return (set: Float64Array, draw: (j: number) => number): void => {
    for (let i = n - 1; i >= 0; i--) {
      const input = inputs[i]!;
      let z = 0;
      for (let k = 0; k <= i; k++) z += factor.values[i * n + k]! * set[k]!;
      set[i] = input.kind === "normal" ? input.mean + input.standardUncertainty * z : draw(i);
    }
  };
}

/** One output of a Monte Carlo run, summed up. */
export interface SampleSummary {
  readonly mean: number;
  readonly standardUncertainty: number;
  readonly symmetric: CoverageInterval;
  readonly shortest: CoverageInterval;
}

/**
 * Mean, standard uncertainty and coverage intervals of a sample.
 *
 * @param sample any order; not changed. Shape: n; no NaN.
 * @param probability of the intervals, between 0 and 1.
 * @throws ContractError if the sample is too small for the probability or holds a NaN.
 *
 * Frame: none.
 * Source: JCGM 101:2008, clauses 7.6 and 7.7 (from memory).
 */
export function summariseSample(sample: Float64Array, probability: number): SampleSummary {
  const sorted = sample.slice().sort();
  return {
    mean: mean(sample),
    standardUncertainty: sampleStandardDeviation(sample),
    symmetric: symmetricInterval(sorted, probability),
    shortest: shortestInterval(sorted, probability),
  };
}
