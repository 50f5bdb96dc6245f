import { expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { choleskyFactor } from "./cholesky.ts";
import { matrixFromRows } from "./matrix.ts";

test("the factor of a covariance known in closed form", () => {
  const factor = choleskyFactor(
    matrixFromRows([
      [4, 2, -2],
      [2, 10, 5],
      [-2, 5, 6],
    ]),
  );
  expect([...factor!.values]).toEqual([2, 0, 0, 1, 3, 0, -1, 2, 1]);
});

test("variables without spread and fully correlated ones are allowed", () => {
  const factor = choleskyFactor(
    matrixFromRows([
      [1, 2, 0],
      [2, 4, 0],
      [0, 0, 0],
    ]),
  );
  expect([...factor!.values]).toEqual([1, 0, 0, 2, 0, 0, 0, 0, 0]);
});

test.each([
  [
    "a correlation above 1",
    [
      [1, 2],
      [2, 1],
    ],
  ],
  [
    "a negative variance",
    [
      [-1, 0],
      [0, 1],
    ],
  ],
  [
    "a covariance with a variable that has none",
    [
      [0, 1],
      [1, 1],
    ],
  ],
  [
    "a missing value",
    [
      [Number.NaN, 0],
      [0, 1],
    ],
  ],
])("%s is no covariance", (_why, rows) => {
  expect(choleskyFactor(matrixFromRows(rows))).toBeUndefined();
});

test("throws ContractError for a matrix that is not square", () => {
  expect(() => choleskyFactor(matrixFromRows([[1, 0]]))).toThrow(ContractError);
});
