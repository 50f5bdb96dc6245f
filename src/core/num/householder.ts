import type { Matrix } from "./matrix.ts";

/**
 * Householder factors of a design whose columns were scaled to unit length: A S^-1 = Q R.
 *
 * Q is kept as its reflections, below and on the diagonal of `packed`; R is above it, with its diagonal apart.
 */
export interface HouseholderFactors {
  readonly rows: number;
  readonly columns: number;
  /** row by row: reflections on and below the diagonal, R above it */
  readonly packed: Float64Array;
  /** diagonal of R, scaled columns */
  readonly diagonal: Float64Array;
  /** length of each column before scaling, s_j */
  readonly columnScale: Float64Array;
}

/**
 * Factors a design by Householder reflections after scaling each column to unit length.
 *
 * @param design rows >= columns >= 1, finite.
 * @returns the factors; undefined if a column is zero or depends on those before it, to working precision.
 *
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., section 5.2 (from memory).
 */
export function factorHouseholder(design: Matrix): HouseholderFactors | undefined {
  const { rows, columns } = design;
  const packed = Float64Array.from(design.values);
  const columnScale = new Float64Array(columns);
  const diagonal = new Float64Array(columns);
  for (let j = 0; j < columns; j++) {
    const scale = columnNorm(packed, columns, rows, 0, j);
    if (!(scale > 0)) return undefined;
    columnScale[j] = scale;
    for (let i = 0; i < rows; i++) packed[i * columns + j]! /= scale;
  }

  for (let k = 0; k < columns; k++) {
    const length = columnNorm(packed, columns, rows, k, k);
    if (!(length > rows * Number.EPSILON)) return undefined;
    // The sign avoids cancellation in the first component of the reflection.
    const alpha = packed[k * columns + k]! > 0 ? -length : length;
    packed[k * columns + k]! -= alpha;
    diagonal[k] = alpha;
    for (let j = k + 1; j < columns; j++) {
      let sum = 0;
      for (let i = k; i < rows; i++) sum += packed[i * columns + k]! * packed[i * columns + j]!;
      const factor = sum / (alpha * packed[k * columns + k]!);
      for (let i = k; i < rows; i++) packed[i * columns + j]! += factor * packed[i * columns + k]!;
    }
  }
  return { rows, columns, packed, diagonal, columnScale };
}

/** Overwrites a vector of `rows` values with Q' times it. */
export function applyQTransposed(factors: HouseholderFactors, vector: Float64Array): void {
  for (let k = 0; k < factors.columns; k++) reflect(factors, k, vector);
}

/** Overwrites a vector of `rows` values with Q times it. */
export function applyQ(factors: HouseholderFactors, vector: Float64Array): void {
  for (let k = factors.columns - 1; k >= 0; k--) reflect(factors, k, vector);
}

/** Solves R S x = b for the unscaled x; b are the first `columns` values of the vector. */
export function solveUpper(factors: HouseholderFactors, right: Float64Array): Float64Array {
  const { columns, packed, diagonal, columnScale } = factors;
  const x = right.slice(0, columns);
  for (let j = columns - 1; j >= 0; j--) {
    for (let k = j + 1; k < columns; k++) x[j]! -= packed[j * columns + k]! * x[k]!;
    x[j]! /= diagonal[j]!;
  }
  return x.map((value, j) => value / columnScale[j]!);
}

/** Solves (R S)' h = g. */
export function solveUpperTransposed(factors: HouseholderFactors, right: Float64Array): Float64Array {
  const { columns, packed, diagonal, columnScale } = factors;
  const h = right.map((value, j) => value / columnScale[j]!);
  for (let j = 0; j < columns; j++) {
    for (let k = 0; k < j; k++) h[j]! -= packed[k * columns + j]! * h[k]!;
    h[j]! /= diagonal[j]!;
  }
  return h;
}

function reflect(factors: HouseholderFactors, k: number, vector: Float64Array): void {
  const { rows, columns, packed, diagonal } = factors;
  let sum = 0;
  for (let i = k; i < rows; i++) sum += packed[i * columns + k]! * vector[i]!;
  const factor = sum / (diagonal[k]! * packed[k * columns + k]!);
  for (let i = k; i < rows; i++) vector[i]! += factor * packed[i * columns + k]!;
}

function columnNorm(values: Float64Array, columns: number, rows: number, from: number, j: number): number {
  let largest = 0;
  for (let i = from; i < rows; i++) largest = Math.max(largest, Math.abs(values[i * columns + j]!));
  if (!(largest > 0)) return largest;
  let sum = 0;
  for (let i = from; i < rows; i++) sum += (values[i * columns + j]! / largest) ** 2;
  return largest * Math.sqrt(sum);
}
