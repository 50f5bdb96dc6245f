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

/**
 * Drift and scale error of the gyro from three or more known headings, by weighted least squares.
 *
 * The scale is estimated only with four or more ties whose turns differ; with fewer it is left at 0.
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
  const columns = [() => 1, (tie: HeadingTie) => tie.timeS, (tie: HeadingTie) => tie.turnRad];
  for (const unknowns of ties.length >= 4 ? [3, 2] : [2]) {
    const used = columns.slice(0, unknowns);
    const design = matrixFromRows(ties.map((tie) => used.map((column) => column(tie))));
    const solution = solveLeastSquares(design, errors, weights);
    if (solution === undefined) continue;
    const sigma0 = Math.sqrt(solution.unitVariance);
    const uncertainty = (i: number) =>
      i < unknowns ? sigma0 * Math.sqrt(solution.cofactors.values[i * unknowns + i]!) : Number.NaN;
    return {
      startRad: solution.parameters[0]!,
      rateRadPerS: solution.parameters[1]!,
      scale: solution.parameters[2] ?? 0,
      sigma0,
      standardUncertainties: [uncertainty(0), uncertainty(1), uncertainty(2)],
    };
  }
  throw new Error("unreachable");
}
