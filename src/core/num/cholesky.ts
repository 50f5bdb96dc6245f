import { contract } from "../result.ts";
import { type Matrix, zeroMatrix } from "./matrix.ts";

/** How far below zero a pivot may fall by rounding, relative to the diagonal it came from. */
const PIVOT_TOLERANCE = 1e-12;

/**
 * Lower triangular factor L of a covariance matrix, C = L L'.
 *
 * Standard deviations of zero and fully correlated variables are allowed: their pivots are zero and so are
 * the columns below them, so that L times independent normals has the covariance asked for.
 *
 * @param covariance symmetric, square; only the lower triangle is read. Shape: n x n.
 * @returns L, shape n x n; undefined if the matrix is not a covariance (a negative pivot or a value not finite).
 * @throws ContractError if the matrix is not square.
 *
 * Frame: none.
 * Source: Golub & Van Loan, Matrix Computations, ch. 4 (from memory).
 */
export function choleskyFactor(covariance: Matrix): Matrix | undefined {
  const n = covariance.rows;
  contract(covariance.columns === n, `choleskyFactor: ${n} x ${covariance.columns} is not square`);
  const factor = zeroMatrix(n, n);
  const l = factor.values;
  for (let j = 0; j < n; j++) {
    const diagonal = covariance.values[j * n + j]!;
    let pivot = diagonal;
    for (let k = 0; k < j; k++) pivot -= l[j * n + k]! ** 2;
    if (!(diagonal >= 0 && pivot >= -PIVOT_TOLERANCE * diagonal && Number.isFinite(pivot))) return undefined;
    const isZero = pivot <= PIVOT_TOLERANCE * diagonal;
    const root = isZero ? 0 : Math.sqrt(pivot);
    l[j * n + j] = root;
    for (let i = j + 1; i < n; i++) {
      let rest = covariance.values[i * n + j]!;
      for (let k = 0; k < j; k++) rest -= l[i * n + k]! * l[j * n + k]!;
      if (!isZero) l[i * n + j] = rest / root;
      else if (!(Math.abs(rest) <= Math.sqrt(PIVOT_TOLERANCE * diagonal * covariance.values[i * n + i]!)))
        return undefined;
    }
  }
  return factor;
}
