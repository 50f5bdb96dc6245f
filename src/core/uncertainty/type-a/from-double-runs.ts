import { contract } from "../../result.ts";
import type { TypeAValue } from "./type-a-value.ts";

/**
 * Standard uncertainty of one reading from readings taken twice: s = sqrt(sum d^2 / 2 (n - fitted)).
 *
 * The differences are not freed of their mean: what shifts all readings of the second run against the first is part of
 * what a repetition brings.
 *
 * @param differences second less first at each station, any unit. Shape: n, n >= 1; one that is not finite is left out.
 * @param fitted parameters that were estimated from these differences and taken off them.
 * @returns unit of the differences; undefined where none is left over. Degrees of freedom: n - fitted.
 *
 * Frame: none.
 * Source: double observations of equal weight, Ghilani, Adjustment Computations, on repeated pairs (from memory).
 * Checked against: closed form and simulation (type-a.test.ts).
 */
export function fromDoubleRuns(differences: ArrayLike<number>, fitted = 0): TypeAValue | undefined {
  const known = Array.from(differences).filter(Number.isFinite);
  const degreesOfFreedom = known.length - fitted;
  if (degreesOfFreedom <= 0) return undefined;
  const squares = known.reduce((sum, d) => sum + d * d, 0);
  contract(Number.isFinite(squares), "fromDoubleRuns: differences too large to square");
  return {
    value: Math.sqrt(squares / (2 * degreesOfFreedom)),
    degreesOfFreedom,
    from: "double-runs",
  };
}
