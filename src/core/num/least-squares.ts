import { contract } from "../result.ts";
import { choleskyFactor } from "./cholesky.ts";
import { ExactSum } from "./exact-arithmetic.ts";
import {
  applyQ,
  applyQTransposed,
  factorHouseholder,
  type HouseholderFactors,
  solveUpper,
  solveUpperTransposed,
} from "./householder.ts";
import { type Matrix, zeroMatrix } from "./matrix.ts";

/** Least-squares solution x of A x = l + v, v'Pv smallest. */
export interface LeastSquaresSolution {
  /** x, unit of each parameter. Shape: u */
  readonly parameters: Float64Array;
  /** v = A x - l, computed minus observed, unit of the observations. Shape: n */
  readonly residuals: Float64Array;
  /** (A'PA)^-1: covariance of the parameters for unit variance of weight. Shape: u x u */
  readonly cofactors: Matrix;
  /** v'Pv */
  readonly weightedSumOfSquares: number;
  /** n - u */
  readonly degreesOfFreedom: number;
  /** v'Pv / (n - u), variance of unit weight a posteriori; NaN without degrees of freedom */
  readonly unitVariance: number;
}

/** Refinement steps: one reaches the precision of the data, the second is proof against a bad first one. */
const REFINEMENTS = 2;

/**
 * Solves an overdetermined linear system by least squares.
 *
 * Householder reflections on columns scaled to unit length, then iterative refinement of parameters and
 * residuals together, with products kept in twice the working precision. Never by normal equations.
 *
 * @param design A. Shape: n x u, n >= u.
 * @param observations l. Shape: n.
 * @param weights P, inverse variances (any common factor), > 0; equal when left out. Shape: n.
 * @returns the solution; undefined if the columns of A depend on each other to working precision: then the
 *   observations do not determine the parameters.
 * @throws ContractError if shapes do not match, n < u, a value is not finite, or a weight is not positive.
 *
 * Frame: none.
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., section 5.3; Björck, Iterative refinement of linear
 *   least squares solutions, BIT 7, 1967 (both from memory).
 * Checked against: test/published/nist-strd-longley, -wampler, -filip, test/published/adjustment-ghilani
 */
export function solveLeastSquares(
  design: Matrix,
  observations: Float64Array,
  weights?: Float64Array,
): LeastSquaresSolution | undefined {
  const { rows, columns } = design;
  contract(
    observations.length === rows,
    `solveLeastSquares: ${rows} rows, ${observations.length} observations`,
  );
  contract(rows >= columns, `solveLeastSquares: ${rows} observations for ${columns} parameters`);
  contract(design.values.every(Number.isFinite), "solveLeastSquares: every element must be finite");
  contract(observations.every(Number.isFinite), "solveLeastSquares: every observation must be finite");
  if (weights === undefined) return solveUnweighted(design, observations);

  contract(weights.length === rows, `solveLeastSquares: ${rows} rows, ${weights.length} weights`);
  contract(
    weights.every((weight) => weight > 0 && Number.isFinite(weight)),
    "solveLeastSquares: every weight must be positive",
  );
  const roots = weights.map(Math.sqrt);
  const scaled = { rows, columns, values: design.values.map((a, i) => a * roots[Math.floor(i / columns)]!) };
  const solution = solveUnweighted(
    scaled,
    observations.map((value, i) => value * roots[i]!),
  );
  return solution && { ...solution, residuals: solution.residuals.map((v, i) => v / roots[i]!) };
}

/**
 * Least squares for observations whose errors are correlated.
 *
 * @param design A. Shape: n x u, n >= u.
 * @param observations l. Shape: n.
 * @param covariance of the observations, positive definite. Shape: n x n.
 * @returns as `solveLeastSquares`, v'Pv with P the inverse of the covariance; undefined also if the covariance
 *   is not positive definite.
 * @throws ContractError as `solveLeastSquares`.
 *
 * Frame: none.
 * Source: Aitken 1935 (from memory): the observations are made independent by the factor of their covariance.
 * Checked against: worked drift example, computed by two methods (least-squares.test.ts).
 */
export function solveCorrelatedLeastSquares(
  design: Matrix,
  observations: Float64Array,
  covariance: Matrix,
): LeastSquaresSolution | undefined {
  const { rows, columns } = design;
  contract(
    covariance.rows === rows && covariance.columns === rows,
    `solveCorrelatedLeastSquares: covariance ${covariance.rows} x ${covariance.columns} for ${rows} observations`,
  );
  const factor = choleskyFactor(covariance);
  if (factor === undefined) return undefined;
  for (let i = 0; i < rows; i++) if (!(factor.values[i * rows + i]! > 0)) return undefined;

  const white = zeroMatrix(rows, columns);
  for (let j = 0; j < columns; j++) {
    const column = Float64Array.from({ length: rows }, (_, i) => design.values[i * columns + j]!);
    solveLower(factor, column).forEach((value, i) => {
      white.values[i * columns + j] = value;
    });
  }
  const solution = solveLeastSquares(white, solveLower(factor, observations));
  if (solution === undefined) return undefined;
  return { ...solution, residuals: residualsOf(design, observations, solution.parameters) };
}

function solveUnweighted(design: Matrix, observations: Float64Array): LeastSquaresSolution | undefined {
  const factors = factorHouseholder(design);
  if (factors === undefined) return undefined;
  const { rows, columns } = design;

  let parameters: Float64Array = new Float64Array(columns);
  let rest: Float64Array = new Float64Array(rows);
  for (let step = 0; step <= REFINEMENTS; step++) {
    const change = solveAugmented(
      factors,
      defectOfObservations(design, observations, rest, parameters),
      (j) => {
        const sum = new ExactSum();
        for (let i = 0; i < rows; i++) sum.addProduct(-design.values[i * columns + j]!, rest[i]!);
        return sum.value;
      },
    );
    parameters = parameters.map((value, j) => value + change.parameters[j]!);
    rest = rest.map((value, i) => value + change.rest[i]!);
  }

  const residuals = residualsOf(design, observations, parameters);
  const squares = new ExactSum();
  for (const residual of residuals) squares.addProduct(residual, residual);
  const degreesOfFreedom = rows - columns;
  return {
    parameters,
    residuals,
    cofactors: cofactorsOf(factors),
    weightedSumOfSquares: squares.value,
    degreesOfFreedom,
    unitVariance: degreesOfFreedom > 0 ? squares.value / degreesOfFreedom : Number.NaN,
  };
}

/** One solution of the augmented system [I A; A' 0] [rest; x] = [f; g]. */
function solveAugmented(
  factors: HouseholderFactors,
  f: Float64Array,
  g: (j: number) => number,
): { parameters: Float64Array; rest: Float64Array } {
  const { columns } = factors;
  const h = solveUpperTransposed(
    factors,
    Float64Array.from({ length: columns }, (_, j) => g(j)),
  );
  const d = f.slice();
  applyQTransposed(factors, d);
  const parameters = solveUpper(
    factors,
    h.map((value, j) => d[j]! - value),
  );
  d.set(h);
  applyQ(factors, d);
  return { parameters, rest: d };
}

/** l - rest - A x, rounded once. */
function defectOfObservations(
  design: Matrix,
  observations: Float64Array,
  rest: Float64Array,
  parameters: Float64Array,
): Float64Array {
  return observations.map((observed, i) => {
    const sum = new ExactSum();
    sum.add(observed);
    sum.add(-rest[i]!);
    for (let j = 0; j < design.columns; j++)
      sum.addProduct(-design.values[i * design.columns + j]!, parameters[j]!);
    return sum.value;
  });
}

/** A x - l, rounded once. */
function residualsOf(design: Matrix, observations: Float64Array, parameters: Float64Array): Float64Array {
  const none = new Float64Array(design.rows);
  return defectOfObservations(design, observations, none, parameters).map((value) => -value);
}

/** (R S)^-1 (R S)^-T. */
function cofactorsOf(factors: HouseholderFactors): Matrix {
  const { columns } = factors;
  const inverse = Array.from({ length: columns }, (_, j) => {
    const unit = new Float64Array(columns);
    unit[j] = 1;
    return solveUpper(factors, unit); // column j of the inverse
  });
  const cofactors = zeroMatrix(columns, columns);
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < columns; j++)
      for (let k = Math.max(i, j); k < columns; k++)
        cofactors.values[i * columns + j]! += inverse[k]![i]! * inverse[k]![j]!;
  return cofactors;
}

function solveLower(factor: Matrix, right: Float64Array): Float64Array {
  const n = factor.rows;
  const x = right.slice();
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= factor.values[i * n + k]! * x[k]!;
    x[i]! /= factor.values[i * n + i]!;
  }
  return x;
}
