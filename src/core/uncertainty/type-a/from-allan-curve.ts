import type { AllanCurve } from "../../num/allan-curve.ts";
import { readAllanTerms } from "../../num/allan-terms.ts";
import type { TypeAValue } from "./type-a-value.ts";

/**
 * Angle random walk N of the gyro from its Allan deviation at rest.
 *
 * N is read off the falling part of the curve, see `readAllanTerms`. Its degrees of freedom are those of the longest averaging
 * time of that part: the points share the record and are not added up.
 *
 * @param curve of rates in rad/s, at least one averaging time.
 * @returns rad / sqrt(s).
 * @throws ContractError if the curve is empty.
 *
 * Frame: probe axis. Source: rule B3.
 * Checked against: simulation (type-a.test.ts).
 */
export function fromAllanCurve(curve: AllanCurve): TypeAValue {
  const { randomWalk, lastFalling } = readAllanTerms(curve);
  return { value: randomWalk, degreesOfFreedom: curve.degreesOfFreedom[lastFalling]!, from: "allan-curve" };
}
