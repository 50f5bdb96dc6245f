import { logGamma } from "../num/gamma.ts";
import { integrate } from "../num/integrate.ts";
import { normalDensity, normalQuantile } from "../num/normal.ts";
import { contract } from "../result.ts";
import { probabilityBetween } from "./probability-of-value.ts";

/** How a quantity is spread over all the items that could be measured. */
export interface Population {
  /** density, per unit of the quantity */
  readonly density: (value: number) => number;
  /** rising places between which all of the population lies and where its density changes */
  readonly breaks: readonly number[];
}

/** An interval of the quantity; an end left out is unlimited. */
export interface Interval {
  readonly lower?: number;
  readonly upper?: number;
}

/** What a decision rule leads to over a whole population; all are shares of all items. */
export interface DecisionRisk {
  /** accepted though outside the tolerance */
  readonly consumer: number;
  /** rejected though inside the tolerance */
  readonly producer: number;
  /** accepted */
  readonly accepted: number;
  /** inside the tolerance, measured or not */
  readonly conforming: number;
}

/** Standard deviations up to which a normal distribution is followed. */
const FAR = 9;

/**
 * A normal population.
 *
 * @throws ContractError if the standard deviation is not positive.
 *
 * Frame: none.
 * Source: definition.
 */
export function normalPopulation(mean: number, standardDeviation: number): Population {
  contract(standardDeviation > 0, `normalPopulation: standard deviation ${standardDeviation}`);
  return {
    density: (value) => normalDensity((value - mean) / standardDeviation) / standardDeviation,
    breaks: [-FAR, -3, 0, 3, FAR].map((k) => mean + k * standardDeviation),
  };
}

/**
 * A gamma population, never negative: mean shape * scale.
 *
 * @throws ContractError if shape or scale is not positive.
 *
 * Frame: none.
 * Source: definition, as in the example of JCGM 106:2012, clause 9.5.4 (from memory).
 */
export function gammaPopulation(shape: number, scale: number): Population {
  contract(shape > 0 && scale > 0, `gammaPopulation: shape ${shape}, scale ${scale}`);
  const logFactor = logGamma(shape) + Math.log(scale);
  return {
    density: (value) =>
      value > 0 ? Math.exp((shape - 1) * Math.log(value / scale) - value / scale - logFactor) : 0,
    breaks: [
      0,
      scale,
      shape * scale,
      (shape + 10 * Math.sqrt(shape)) * scale,
      (shape + 40 * Math.sqrt(shape) + 40) * scale,
    ],
  };
}

/**
 * Consumer's and producer's risk of a decision rule, averaged over a population.
 *
 * @param population of the quantity before anything is measured.
 * @param standardUncertainty of one measurement, unit of the quantity, > 0; normal errors.
 * @param tolerance where the item is good.
 * @param acceptance where the measured value is accepted; inside the tolerance for a guard band.
 * @throws ContractError if the uncertainty is not positive.
 *
 * Frame: none.
 * Source: JCGM 106:2012, clause 9.4, equations 16 and 17 (from memory).
 * Checked against: test/published/jcgm-106
 */
export function decisionRisk(
  population: Population,
  standardUncertainty: number,
  tolerance: Interval,
  acceptance: Interval,
): DecisionRisk {
  contract(standardUncertainty > 0, `decisionRisk: standard uncertainty ${standardUncertainty}`);
  const [toleranceLower, toleranceUpper] = ends(tolerance);
  const [acceptLower, acceptUpper] = ends(acceptance);
  const acceptChance = (value: number) =>
    probabilityBetween(value, standardUncertainty, acceptLower, acceptUpper);
  const first = population.breaks[0]!;
  const last = population.breaks[population.breaks.length - 1]!;
  const flanks = [acceptLower, acceptUpper]
    .filter(Number.isFinite)
    .flatMap((limit) => [-FAR, -2, 0, 2, FAR].map((k) => limit + k * standardUncertainty));
  const inner = [...population.breaks, ...flanks];
  const share = (from: number, to: number, chance: (value: number) => number): number => {
    const [a, b] = [Math.min(Math.max(from, first), last), Math.min(Math.max(to, first), last)];
    return integrate((value) => population.density(value) * chance(value), [a, ...inner, b]);
  };
  const consumer = share(first, toleranceLower, acceptChance) + share(toleranceUpper, last, acceptChance);
  const conforming = share(toleranceLower, toleranceUpper, () => 1);
  const good = share(toleranceLower, toleranceUpper, acceptChance);
  return { consumer, producer: conforming - good, accepted: good + consumer, conforming };
}

/**
 * Distance by which a measured value must keep clear of its limit to conform with the stated probability.
 *
 * @param standardUncertainty unit of the value, >= 0.
 * @param probability of conformity asked for, between 0 and 1; below one half the distance is negative.
 * @throws ContractError if uncertainty or probability is out of range.
 *
 * Frame: none.
 * Source: JCGM 106:2012, clause 8.3.2: acceptance limit T - z_p u (from memory).
 * Checked against: test/published/jcgm-106
 */
export function guardBand(standardUncertainty: number, probability: number): number {
  contract(
    standardUncertainty >= 0 && probability > 0 && probability < 1,
    `guardBand: uncertainty ${standardUncertainty}, probability ${probability}`,
  );
  return standardUncertainty * normalQuantile(probability);
}

/**
 * Test uncertainty ratio: half the width of the tolerance over the expanded uncertainty (95 %, k = 2).
 *
 * @param toleranceHalfWidth, standardUncertainty same unit, > 0.
 * @throws ContractError if one of them is not positive.
 *
 * Frame: none.
 * Source: ANSI/NCSL Z540.3 (from memory); 4 and more is usually asked for.
 */
export function testUncertaintyRatio(toleranceHalfWidth: number, standardUncertainty: number): number {
  contract(
    toleranceHalfWidth > 0 && standardUncertainty > 0,
    `testUncertaintyRatio: ${toleranceHalfWidth} over ${standardUncertainty}`,
  );
  return toleranceHalfWidth / (2 * standardUncertainty);
}

const ends = ({ lower, upper }: Interval): [number, number] => [
  lower ?? Number.NEGATIVE_INFINITY,
  upper ?? Number.POSITIVE_INFINITY,
];
