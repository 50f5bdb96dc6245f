import { contract } from "../result.ts";
import { fitLine } from "./fit-line.ts";
import { lag1Autocorrelation } from "./moments.ts";
import { effectiveCountOf, type SeriesMean, seriesMean } from "./series-mean.ts";
import { studentTQuantile } from "./student-t.ts";
import { vonNeumannLimit, vonNeumannRatio } from "./von-neumann.ts";

/** What a reading must keep to be taken as at rest; in the unit of the readings. */
export interface SteadinessLimits {
  /** largest standard error of the mean */
  readonly standardError: number;
  /** largest change over the whole window by the fitted line */
  readonly drift: number;
  /** chance of calling a reading at rest moving, for each of the two tests; 0.001 when left out */
  readonly significance?: number;
}

/** Why a reading does not count as steady. */
export type UnsteadyReason =
  | "too-few" // fewer readings than the tests need
  | "missing" // a reading in the window is missing
  | "standard-error" // the mean is not known well enough
  | "drift" // the change over the window is too large
  | "slope" // the slope cannot be chance
  | "order"; // neighbours are more alike than chance would make them

export interface Steadiness {
  readonly state: "steady" | "moving";
  /** empty when steady */
  readonly reasons: readonly UnsteadyReason[];
  /** undefined when there are too few readings */
  readonly mean: SeriesMean | undefined;
  /** change over the whole window by the fitted line, unit of the readings; NaN when there are too few */
  readonly drift: number;
  /** slope over its standard error as if neighbours were independent; NaN when there are too few */
  readonly slopeRatio: number;
  /** limit of the size of the slope ratio, allowing for the dependence of neighbours */
  readonly slopeLimit: number;
  readonly vonNeumann: number;
  /** a smaller ratio is called moving */
  readonly vonNeumannLimit: number;
}

/** Fewer readings cannot show that anything is at rest. */
const FEWEST = 8;

/**
 * Tests whether a window of evenly spaced readings is at rest.
 *
 * Steady needs all: standard error and drift inside their limits, slope and order of the readings within what
 * chance makes. Both kinds are needed: with many readings any slope is significant, with few none is.
 *
 * @param values any unit, evenly spaced over the whole window. Shape: n.
 * @throws ContractError if a limit is not positive or the significance is not between 0 and 1.
 *
 * Frame: none.
 * Source: common practice for the limits, no source; von Neumann 1941 for the order (from memory).
 * Checked against: test/published/series-tests (the drifting record Mavro is refused).
 */
export function judgeSteadiness(values: Float64Array, limits: SteadinessLimits): Steadiness {
  const { significance = 0.001 } = limits;
  contract(
    limits.standardError > 0 && limits.drift > 0 && significance > 0 && significance < 1,
    `judgeSteadiness: limits ${limits.standardError}, ${limits.drift}, ${significance}`,
  );
  const n = values.length;
  if (n < FEWEST) return unknown("too-few");
  if (!values.every(Number.isFinite)) return unknown("missing");

  const series = seriesMean(values);
  const { slope, slopeVariance, slopeRatio, slopeLimit } = testSlope(values, significance);
  const drift = slope * (n - 1);
  const isFlat = series.standardDeviation === 0; // a quantised sensor at rest
  const ratio = isFlat ? 2 : vonNeumannRatio(values);
  const ratioLimit = vonNeumannLimit(n, significance);
  const passed: readonly (readonly [UnsteadyReason, boolean])[] = [
    ["standard-error", series.standardError <= limits.standardError],
    ["drift", Math.abs(drift) <= limits.drift],
    ["slope", (isFlat && slopeVariance === 0) || Math.abs(slopeRatio) <= slopeLimit],
    ["order", ratio >= ratioLimit],
  ];
  const reasons = passed.filter(([, isPassed]) => !isPassed).map(([reason]) => reason);
  return {
    state: reasons.length === 0 ? "steady" : "moving",
    reasons,
    mean: series,
    drift,
    slopeRatio,
    slopeLimit,
    vonNeumann: ratio,
    vonNeumannLimit: ratioLimit,
  };
}

function testSlope(values: Float64Array, significance: number) {
  const n = values.length;
  const places = Float64Array.from({ length: n }, (_, i) => i);
  const { slope, intercept, slopeVariance } = fitLine(places, values);
  const residuals = values.map((value, i) => value - intercept - slope * i);
  const correlation = lag1Autocorrelation(residuals);
  const effective = Number.isNaN(correlation) ? n : effectiveCountOf(n, correlation);
  const degrees = Math.max(1, effective - 2);
  // The standard error of the slope grows like that of a mean of dependent values.
  const slopeLimit = studentTQuantile(1 - significance / 2, degrees) * Math.sqrt(n / effective);
  return { slope, slopeVariance, slopeRatio: slope / Math.sqrt(slopeVariance), slopeLimit };
}

function unknown(reason: UnsteadyReason): Steadiness {
  return {
    state: "moving",
    reasons: [reason],
    mean: undefined,
    drift: Number.NaN,
    slopeRatio: Number.NaN,
    slopeLimit: Number.NaN,
    vonNeumann: Number.NaN,
    vonNeumannLimit: Number.NaN,
  };
}
