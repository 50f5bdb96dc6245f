import { contract } from "../result.ts";

/** A dense matrix, row by row in one array: element (i, j) is `values[i * columns + j]`. */
export interface Matrix {
  readonly rows: number;
  readonly columns: number;
  readonly values: Float64Array;
}

/** A matrix of zeros. */
export const zeroMatrix = (rows: number, columns: number): Matrix => ({
  rows,
  columns,
  values: new Float64Array(rows * columns),
});

/**
 * A matrix from its rows.
 *
 * @throws ContractError if there are no rows or they differ in length.
 */
export function matrixFromRows(rows: readonly ArrayLike<number>[]): Matrix {
  const columns = rows[0]?.length ?? 0;
  contract(rows.length > 0 && columns > 0, "matrixFromRows: needs at least one row and one column");
  const matrix = zeroMatrix(rows.length, columns);
  for (const [i, row] of rows.entries()) {
    contract(
      row.length === columns,
      `matrixFromRows: row ${i} has ${row.length} values, row 0 has ${columns}`,
    );
    matrix.values.set(Array.from(row), i * columns);
  }
  return matrix;
}

/**
 * Element (i, j).
 *
 * @throws ContractError outside the matrix.
 */
export function matrixElement(matrix: Matrix, i: number, j: number): number {
  contract(
    i >= 0 && i < matrix.rows && j >= 0 && j < matrix.columns,
    `matrixElement: (${i}, ${j}) of a ${matrix.rows} x ${matrix.columns} matrix`,
  );
  return matrix.values[i * matrix.columns + j]!;
}
