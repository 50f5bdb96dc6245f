import { expect, test } from "vitest";
import published from "../../../test/published/jcgm-106/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { probabilityBelow, probabilityBetween } from "./probability-of-value.ts";

test.each(published.conformance)(
  "$name",
  ({ value, standardUncertainty, lower, upper, probability, printed }) => {
    const found = probabilityBetween(
      value,
      standardUncertainty,
      lower ?? Number.NEGATIVE_INFINITY,
      upper ?? Number.POSITIVE_INFINITY,
    );
    expect(Math.abs(found - probability)).toBeLessThan(5.1e-5);
    expect(Number(found.toFixed(2))).toBe(printed);
  },
);

test("without uncertainty the limit itself is inside", () => {
  expect(probabilityBelow(3, 0, 3)).toBe(1);
  expect(probabilityBelow(3.0001, 0, 3)).toBe(0);
});

test("on the limit one half, however large the uncertainty", () => {
  expect(probabilityBelow(5, 0.001, 5)).toBe(0.5);
  expect(probabilityBelow(5, 1000, 5)).toBe(0.5);
});

test("a missing number stays missing; mistakes of the caller are told", () => {
  expect(probabilityBelow(Number.NaN, 1, 2)).toBeNaN();
  expect(probabilityBelow(1, Number.NaN, 2)).toBeNaN();
  expect(probabilityBelow(1, 1, Number.NaN)).toBeNaN();
  expect(() => probabilityBelow(1, -1, 2)).toThrow(ContractError);
  expect(() => probabilityBetween(1, 1, 3, 2)).toThrow(ContractError);
});
