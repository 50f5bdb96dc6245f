import { solveLeastSquares } from "../num/least-squares.ts";
import { matrixFromRows } from "../num/matrix.ts";
import { contract } from "../result.ts";

/** A known heading held against the heading carried to it. */
export interface HeadingTie {
  /** seconds from the first tie */
  readonly timeS: number;
  /** net turn of the probe since the first tie, radians */
  readonly turnRad: number;
  /** carried less known heading, radians */
  readonly errorRad: number;
  /** of the known heading, radians, >= 0 */
  readonly standardUncertaintyRad: number;
}

/** error = start + rate * time + scale * turn */
export interface GyroDrift {
  readonly startRad: number;
  readonly rateRadPerS: number;
  /** dimensionless; 0 where the turns of the ties do not show it */
  readonly scale: number;
  /** square root of the variance of unit weight; NaN without degrees of freedom */
  readonly sigma0: number;
  /** standard uncertainties of start, rate and scale from the scatter; NaN where not estimated */
  readonly standardUncertainties: readonly [number, number, number];
}

/** Ties whose uncertainty is given as 0 still get a finite weight: 0.001 degree, far below any site reference. */
const LEAST_UNCERTAINTY_RAD = 1.7e-5;

/** A scale is fitted only where the ties show it better than this: gyros are made to it. Common practice, no source. */
const USEFUL_SCALE_UNCERTAINTY = 0.005;

/**
 * Drift and scale error of the gyro from two or more known headings, by weighted least squares.
 *
 * The scale is estimated only from four or more ties whose turns tell it from a drift; else it is left at 0. Ties read at
 * nearly the same turn would give any scale at all, and spoil the rows between them.
 *
 * @param ties in the order of time. @throws ContractError with fewer than two ties or no time between them.
 *
 * Frame: probe axis, clockwise looking down. Source: rule C4; docs/sources.md [E6].
 * Checked against: seven-tie example in the test (values by an independent solver).
 */
export function fitGyroDrift(ties: readonly HeadingTie[]): GyroDrift {
  contract(ties.length >= 2, `fitGyroDrift: ${ties.length} tie`);
  const uncertainties = ties.map((tie) => Math.max(tie.standardUncertaintyRad, LEAST_UNCERTAINTY_RAD));
  const largest = Math.max(...uncertainties);
  const weights = Float64Array.from(uncertainties, (u) => (largest / u) ** 2);
  const errors = Float64Array.from(ties, (tie) => tie.errorRad);
  const columns = ties.map((tie) => [1, tie.timeS, tie.turnRad]);
  const solve = (unknowns: number) =>
    solveLeastSquares(matrixFromRows(columns.map((row) => row.slice(0, unknowns))), errors, weights);
  const withScale = ties.length >= 4 ? solve(3) : undefined;
  const ofScale = largest * Math.sqrt(withScale?.cofactors.values[8] ?? Number.POSITIVE_INFINITY);
  const solution = ofScale <= USEFUL_SCALE_UNCERTAINTY ? withScale : solve(2);
  contract(solution !== undefined, "fitGyroDrift: no time between the ties");
  const { parameters, cofactors } = solution;
  const sigma0 = Math.sqrt(solution.unitVariance);
  const uncertainty = (i: number) =>
    i < parameters.length ? sigma0 * Math.sqrt(cofactors.values[i * (parameters.length + 1)]!) : Number.NaN;
  return {
    startRad: parameters[0]!,
    rateRadPerS: parameters[1]!,
    scale: parameters[2] ?? 0,
    sigma0,
    standardUncertainties: [uncertainty(0), uncertainty(1), uncertainty(2)],
  };
}
