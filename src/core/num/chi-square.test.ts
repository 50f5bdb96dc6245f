import { describe, expect, test } from "vitest";
import regions from "../../../test/published/confidence-regions/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { chiSquareCdf, chiSquareQuantile, chiSquareUpper } from "./chi-square.ts";

describe("chi-square", () => {
  test.each(regions.factors)("factors of regions for probability $probability", ({ probability, k }) => {
    for (const [i, value] of k.entries())
      expect(Math.abs(Math.sqrt(chiSquareQuantile(probability, i + 1)) - value)).toBeLessThanOrEqual(1e-4);
  });

  test.each(regions.coverage)("coverage of regions of $k standard deviations", ({ k, probability }) => {
    for (const [i, value] of probability.entries())
      expect(Math.abs(chiSquareCdf(k * k, i + 1) - value)).toBeLessThanOrEqual(5.1e-7);
  });

  // Computed to 17 digits with mpmath, apart from this program.
  test.each([
    [0.01, 3, 0.0002651650586556098, 0.9997348349413444],
    [3, 3, 0.608374823728911, 0.391625176271089],
    [60, 3, 0.9999999999994122, 5.878230727906912e-13],
    [1000, 1000, 0.5059471461707604, 0.4940528538292396],
    [1200, 1000, 0.9999877440576694, 1.2255942330622905e-5],
    [5, 0.5, 0.99078625152046, 0.009213748479540033],
  ])("value %d, %d degrees of freedom", (x, degreesOfFreedom, lower, upper) => {
    expect(Math.abs(chiSquareCdf(x, degreesOfFreedom) / lower - 1)).toBeLessThan(2e-13);
    expect(Math.abs(chiSquareUpper(x, degreesOfFreedom) / upper - 1)).toBeLessThan(2e-13);
  });

  test("two degrees of freedom: -2 ln(1 - p), far tails too", () => {
    for (const p of [1e-300, 1e-12, 0.05, 0.5, 0.95])
      expect(Math.abs(chiSquareQuantile(p, 2) / (-2 * Math.log1p(-p)) - 1)).toBeLessThan(1e-13);
  });

  test("at the ends, without a number and outside", () => {
    expect(chiSquareQuantile(0, 3)).toBe(0);
    expect(chiSquareQuantile(1, 3)).toBe(Number.POSITIVE_INFINITY);
    expect(chiSquareCdf(-1, 3)).toBe(0);
    expect(chiSquareUpper(-1, 3)).toBe(1);
    expect(chiSquareCdf(Number.NaN, 3)).toBeNaN();
    expect(() => chiSquareCdf(1, 0)).toThrow(ContractError);
    expect(() => chiSquareQuantile(2, 3)).toThrow(ContractError);
  });
});
