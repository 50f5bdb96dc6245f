import { expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { median } from "./median.ts";

test.each([
  [[3], 3],
  [[5, 1, 3], 3],
  [[10, 9, 2, 1], 5.5],
  [[-1, -10], -5.5],
  [[1, 2, Number.NaN], Number.NaN],
])("the median of %j is %d", (values, expected) => {
  expect(median(values)).toBe(expected);
});

test("the sample given is left in its order", () => {
  const values = Float64Array.of(3, 1, 2);
  median(values);
  expect([...values]).toEqual([3, 1, 2]);
});

test("throws ContractError without values", () => {
  expect(() => median([])).toThrow(ContractError);
});
