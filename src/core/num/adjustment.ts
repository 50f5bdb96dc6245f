import { contract } from "../result.ts";
import { chiSquareQuantile, chiSquareUpper } from "./chi-square.ts";
import { solveLeastSquares } from "./least-squares.ts";
import type { Matrix } from "./matrix.ts";
import { normalQuantile } from "./normal.ts";

/** How an adjustment is tested; probabilities between 0 and 1. */
export interface AdjustmentTest {
  /** chance of calling a clean set of observations bad in the global test */
  readonly globalSignificance: number;
  /** chance of calling a clean observation bad in the test of its own residual */
  readonly outlierSignificance: number;
  /** chance of finding a gross error as large as the minimal detectable one */
  readonly power: number;
}

/** 5 % for the whole, 0.1 % for one observation, 80 % power: Baarda's usual figures (from memory). */
export const USUAL_ADJUSTMENT_TEST: AdjustmentTest = {
  globalSignificance: 0.05,
  outlierSignificance: 0.001,
  power: 0.8,
};

/** Test of the whole adjustment: the spread found against the spread stated beforehand. */
export interface GlobalTest {
  /** v'Pv, chi-square distributed when the stated spread is right */
  readonly statistic: number;
  /** chance of a statistic at least as large */
  readonly probability: number;
  /** spread found over spread stated, m0'/m0 */
  readonly ratio: number;
  readonly ratioLower: number;
  readonly ratioUpper: number;
  /** "too-large": errors larger than stated, or a gross one. "too-small": stated too pessimistically. */
  readonly outcome: "as-stated" | "too-large" | "too-small";
}

/** What the adjustment says about one observation. */
export interface AdjustedObservation {
  /** computed minus observed, unit of the observation */
  readonly residual: number;
  /** standard deviation of the residual from the stated spread */
  readonly residualStandardDeviation: number;
  /** share of an error of this observation that shows in its own residual, 0 to 1 */
  readonly redundancy: number;
  /** residual over its standard deviation; NaN where the observation is not checked by others */
  readonly normalisedResidual: number;
  /** error in the observation (observed minus true) if it alone is wrong; NaN where not checked */
  readonly estimatedError: number;
  /** smallest error found with the stated power; Infinity where the observation is not checked */
  readonly minimalDetectableError: number;
}

/** Least-squares adjustment with its tests. */
export interface Adjustment {
  readonly parameters: Float64Array;
  /** covariance of the parameters from the stated spread of the observations. Shape: u x u */
  readonly covariance: Matrix;
  readonly observations: readonly AdjustedObservation[];
  readonly degreesOfFreedom: number;
  /** spread found over spread stated, s0 = sqrt(v'Pv / r); NaN without degrees of freedom */
  readonly unitStandardDeviation: number;
  /** undefined without degrees of freedom: nothing was checked */
  readonly globalTest: GlobalTest | undefined;
  /** critical value of the normalised residuals */
  readonly outlierLimit: number;
  /** place of the observation with the largest normalised residual over the limit; undefined if none is */
  readonly suspect: number | undefined;
  /** spread that would be found without the worst observation; NaN with fewer than 2 degrees of freedom */
  readonly unitStandardDeviationWithoutWorst: number;
}

/** Redundancy below this counts as none: rounding leaves about 1e-15. */
const NO_REDUNDANCY = 1e-9;

/**
 * Adjusts redundant observations by least squares and tests them for gross errors.
 *
 * The spread of the observations is the one stated beforehand, not the one found: so a gross error cannot hide
 * by making everything look worse. Only the largest normalised residual is suspected: one error raises several.
 *
 * @param design A of A x = l + v. Shape: n x u, n >= u.
 * @param observations l. Shape: n.
 * @param standardDeviations stated beforehand, unit of each observation, > 0. Shape: n.
 * @returns the adjustment; undefined if the observations do not determine the parameters.
 * @throws ContractError as `solveLeastSquares`, or if a probability is not between 0 and 1.
 *
 * Frame: none.
 * Source: Baarda, A testing procedure for use in geodetic networks, 1968 (from memory); ratio test, its
 *   interval and the spread without the worst observation: GNU Gama manual, "Standard deviation".
 * Checked against: test/published/adjustment-ghilani, adjustment-closed-loop, adjustment-levelled-differences
 */
export function adjust(
  design: Matrix,
  observations: Float64Array,
  standardDeviations: Float64Array,
  testing: AdjustmentTest = USUAL_ADJUSTMENT_TEST,
): Adjustment | undefined {
  const { globalSignificance, outlierSignificance, power } = testing;
  contract(
    [globalSignificance, outlierSignificance, power].every((p) => p > 0 && p < 1),
    "adjust: probabilities of the tests must lie between 0 and 1",
  );
  const weights = standardDeviations.map((sigma) => 1 / (sigma * sigma));
  const solution = solveLeastSquares(design, observations, weights);
  if (solution === undefined) return undefined;

  const outlierLimit = -normalQuantile(outlierSignificance / 2);
  const noncentrality = outlierLimit + normalQuantile(power);
  const adjusted = Array.from(solution.residuals, (residual, i) => {
    const sigma = standardDeviations[i]!;
    const redundancy = redundancyOf(design, solution.cofactors, i, sigma);
    const isChecked = redundancy > NO_REDUNDANCY;
    const residualStandardDeviation = sigma * Math.sqrt(redundancy);
    return {
      residual,
      residualStandardDeviation,
      redundancy,
      normalisedResidual: isChecked ? residual / residualStandardDeviation : Number.NaN,
      estimatedError: isChecked ? -residual / redundancy : Number.NaN,
      minimalDetectableError: isChecked
        ? (noncentrality * sigma) / Math.sqrt(redundancy)
        : Number.POSITIVE_INFINITY,
    };
  });
  const worst = worstOf(adjusted);
  const worstSize = worst === undefined ? Number.NaN : Math.abs(adjusted[worst]!.normalisedResidual);
  const statistic = solution.weightedSumOfSquares;
  const r = solution.degreesOfFreedom;
  return {
    parameters: solution.parameters,
    covariance: solution.cofactors,
    observations: adjusted,
    degreesOfFreedom: r,
    unitStandardDeviation: Math.sqrt(solution.unitVariance),
    globalTest: r > 0 ? globalTest(statistic, r, globalSignificance) : undefined,
    outlierLimit,
    suspect: worstSize > outlierLimit ? worst : undefined,
    unitStandardDeviationWithoutWorst:
      r > 1 ? Math.sqrt(Math.max(0, statistic - worstSize ** 2) / (r - 1)) : Number.NaN,
  };
}

function globalTest(statistic: number, degreesOfFreedom: number, significance: number): GlobalTest {
  const ratio = Math.sqrt(statistic / degreesOfFreedom);
  const limit = (p: number) => Math.sqrt(chiSquareQuantile(p, degreesOfFreedom) / degreesOfFreedom);
  const ratioLower = limit(significance / 2);
  const ratioUpper = limit(1 - significance / 2);
  return {
    statistic,
    probability: chiSquareUpper(statistic, degreesOfFreedom),
    ratio,
    ratioLower,
    ratioUpper,
    outcome: ratio > ratioUpper ? "too-large" : ratio < ratioLower ? "too-small" : "as-stated",
  };
}

/** 1 - p_i a_i (A'PA)^-1 a_i', kept within [0, 1] against rounding. */
function redundancyOf(design: Matrix, cofactors: Matrix, i: number, sigma: number): number {
  const u = design.columns;
  let quadratic = 0;
  for (let j = 0; j < u; j++)
    for (let k = 0; k < u; k++)
      quadratic += design.values[i * u + j]! * cofactors.values[j * u + k]! * design.values[i * u + k]!;
  return Math.min(1, Math.max(0, 1 - quadratic / (sigma * sigma)));
}

function worstOf(observations: readonly AdjustedObservation[]): number | undefined {
  let worst: number | undefined;
  let size = 0;
  for (const [i, { normalisedResidual }] of observations.entries()) {
    if (Math.abs(normalisedResidual) > size) {
      worst = i;
      size = Math.abs(normalisedResidual);
    }
  }
  return worst;
}
