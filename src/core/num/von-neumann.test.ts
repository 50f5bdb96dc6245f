import { describe, expect, test } from "vitest";
import univariate from "../../../test/published/nist-strd-univariate/case.json" with { type: "json" };
import published from "../../../test/published/series-tests/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { vonNeumannLimit, vonNeumannRatio } from "./von-neumann.ts";

describe("vonNeumannRatio", () => {
  test("of the drifting record Mavro", () => {
    expect(vonNeumannRatio(univariate.mavro)).toBeCloseTo(published.mavro.vonNeumann, 7);
  });

  test("large for an alternation, untouched by an offset, missing where a reading is", () => {
    expect(vonNeumannRatio([1, -1, 1, -1])).toBe(3);
    expect(vonNeumannRatio([1001, 999, 1001, 999])).toBe(3);
    expect(vonNeumannRatio([1, Number.NaN, 2])).toBeNaN();
    expect(vonNeumannRatio([2, 2, 2])).toBeNaN();
    expect(() => vonNeumannRatio([1])).toThrow(ContractError);
  });
});

describe("vonNeumannLimit", () => {
  test.each(published.vonNeumann)("of $count values", ({ count, limits }) => {
    for (const { probability, ratio } of limits)
      expect(Math.abs(vonNeumannLimit(count, probability) - ratio), `${probability}`).toBeLessThan(6e-5);
  });

  test.each(published.hart1942)("of $count values as printed by Hart", ({ count, ratios }) => {
    for (const [i, probability] of [0.001, 0.01, 0.05].entries())
      expect(Math.abs(vonNeumannLimit(count, probability) - ratios[i]!)).toBeLessThan(0.003);
  });

  test("the exact form and the approximation meet", () => {
    for (const p of [0.001, 0.01, 0.05]) {
      const step = vonNeumannLimit(60, p) - vonNeumannLimit(59, p);
      const next = vonNeumannLimit(61, p) - vonNeumannLimit(60, p);
      expect(Math.abs(step - next)).toBeLessThan(2e-4);
    }
  });

  test("throws ContractError for too few values or no probability", () => {
    expect(() => vonNeumannLimit(3, 0.05)).toThrow(ContractError);
    expect(() => vonNeumannLimit(10, 0)).toThrow(ContractError);
  });
});
