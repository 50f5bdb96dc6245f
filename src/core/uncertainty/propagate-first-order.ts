import { type Matrix, zeroMatrix } from "../num/matrix.ts";
import { contract } from "../result.ts";

/** A model: output quantities from input quantities, each in a unit of its own. Free of side effects. */
export type Model = (inputs: Float64Array) => ArrayLike<number>;

/** Outcome of first-order propagation. */
export interface FirstOrderResult {
  /** outputs at the given inputs. Shape: m */
  readonly values: Float64Array;
  /** of the outputs. Shape: m x m */
  readonly covariance: Matrix;
  /** partial derivatives. Shape: m x n */
  readonly sensitivities: Matrix;
}

/** Step of the derivative in standard uncertainties: small against them, large against rounding. */
const STEP = 1e-3;

/**
 * Propagates a covariance through a model by its first derivatives (law of propagation of uncertainty).
 *
 * Derivatives are differences over a thousandth of each standard uncertainty either way. Says nothing useful where
 * they vanish (a distance near zero): compare with `propagateMonteCarlo`.
 *
 * @param model gives m >= 1 outputs.
 * @param inputs best values. Shape: n.
 * @param covariance of the inputs; variances may be zero. Shape: n x n.
 * @returns NaN from the model comes out as NaN.
 * @throws ContractError if the shapes do not match or a variance is negative.
 *
 * Frame: none.
 * Source: JCGM 100:2008, equations 13 and H.9 (from memory).
 * Checked against: test/published/jcgm-100
 */
export function propagateFirstOrder(
  model: Model,
  inputs: Float64Array,
  covariance: Matrix,
): FirstOrderResult {
  const n = inputs.length;
  contract(
    covariance.rows === n && covariance.columns === n,
    `propagateFirstOrder: covariance ${covariance.rows} x ${covariance.columns} for ${n} inputs`,
  );
  const values = Float64Array.from(model(inputs));
  const m = values.length;
  const sensitivities = zeroMatrix(m, n);
  for (let j = 0; j < n; j++) {
    const variance = covariance.values[j * n + j]!;
    contract(variance >= 0, `propagateFirstOrder: variance ${variance} of input ${j}`);
    if (variance === 0) continue; // contributes nothing, whatever its derivative
    const step = STEP * Math.sqrt(variance);
    const above = model(inputs.with(j, inputs[j]! + step));
    const below = model(inputs.with(j, inputs[j]! - step));
    // The step as it was really taken, after rounding.
    const width = inputs[j]! + step - (inputs[j]! - step);
    for (let i = 0; i < m; i++) sensitivities.values[i * n + j] = (above[i]! - below[i]!) / width;
  }
  const output = zeroMatrix(m, m);
  const c = sensitivities.values;
  for (let i = 0; i < m; i++)
    for (let k = 0; k < m; k++)
      for (let j = 0; j < n; j++)
        for (let l = 0; l < n; l++)
          output.values[i * m + k]! += c[i * n + j]! * covariance.values[j * n + l]! * c[k * n + l]!;
  return { values, covariance: output, sensitivities };
}

/**
 * Effective degrees of freedom of a sum of independent contributions (Welch-Satterthwaite).
 *
 * @param contributions standard uncertainty that each input brings into the result, same unit. Shape: n.
 * @param degreesOfFreedom of each, > 0; Infinity for one known exactly. Shape: n.
 * @returns Infinity if every contribution is zero or known exactly.
 * @throws ContractError if the lengths differ or degrees of freedom are not positive.
 *
 * Frame: none.
 * Source: JCGM 100:2008, equation G.2b (from memory).
 * Checked against: test/published/jcgm-100
 */
export function effectiveDegreesOfFreedom(
  contributions: readonly number[],
  degreesOfFreedom: readonly number[],
): number {
  contract(
    contributions.length === degreesOfFreedom.length && degreesOfFreedom.every((nu) => nu > 0),
    `effectiveDegreesOfFreedom: ${contributions.length} contributions, degrees ${degreesOfFreedom.join(", ")}`,
  );
  const variance = contributions.reduce((sum, u) => sum + u * u, 0);
  const doubt = contributions.reduce((sum, u, i) => sum + u ** 4 / degreesOfFreedom[i]!, 0);
  return doubt === 0 ? Number.POSITIVE_INFINITY : (variance * variance) / doubt;
}
