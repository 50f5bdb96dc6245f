import { normalBetween, normalCdf } from "../num/normal.ts";
import { contract } from "../result.ts";

/**
 * Probability that a measured value is truly at or below a limit.
 *
 * @param value measured, any unit. NaN gives NaN.
 * @param standardUncertainty of the value, same unit, >= 0; with 0 the answer is 0 or 1.
 * @param limit same unit.
 * @throws ContractError if the uncertainty is negative.
 *
 * Frame: none.
 * Source: JCGM 106:2012, clause 7.3 (from memory).
 * Checked against: test/published/jcgm-106
 */
export function probabilityBelow(value: number, standardUncertainty: number, limit: number): number {
  return probabilityBetween(value, standardUncertainty, Number.NEGATIVE_INFINITY, limit);
}

/**
 * Probability that a measured value truly lies between two limits, both included.
 *
 * @param value measured, any unit. NaN gives NaN.
 * @param standardUncertainty of the value, same unit, >= 0; with 0 the answer is 0 or 1.
 * @param lower, upper same unit, lower <= upper; may be infinite.
 * @throws ContractError if the uncertainty is negative or the limits change places.
 *
 * Frame: none.
 * Source: JCGM 106:2012, clause 7.4 (from memory).
 * Checked against: test/published/jcgm-106
 */
export function probabilityBetween(
  value: number,
  standardUncertainty: number,
  lower: number,
  upper: number,
): number {
  if (Number.isNaN(value + standardUncertainty) || Number.isNaN(lower) || Number.isNaN(upper))
    return Number.NaN;
  contract(
    standardUncertainty >= 0 && lower <= upper,
    `probabilityBetween: uncertainty ${standardUncertainty}, limits ${lower} to ${upper}`,
  );
  if (standardUncertainty === 0) return value >= lower && value <= upper ? 1 : 0;
  if (lower === Number.NEGATIVE_INFINITY) return normalCdf((upper - value) / standardUncertainty);
  return normalBetween((lower - value) / standardUncertainty, (upper - value) / standardUncertainty);
}
