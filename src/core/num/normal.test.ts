import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { normalBetween, normalCdf, normalDensity, normalQuantile, normalUpper } from "./normal.ts";

describe("normal distribution", () => {
  // Tabled quantiles to 16 digits (from memory); the tail of -10 and -20 likewise.
  test.each([
    [0.975, 1.959963984540054],
    [0.95, 1.6448536269514722],
    [0.995, 2.5758293035489004],
    [0.9995, 3.2905267314919255],
    [0.8, 0.8416212335729143],
  ])("the quantile of %d", (p, z) => {
    expect(Math.abs(normalQuantile(p) - z)).toBeLessThan(4e-15);
    expect(Math.abs(normalCdf(z) / p - 1)).toBeLessThan(1e-15);
  });

  test.each([
    [-10, 7.619853024160525e-24],
    [-20, 2.7536241186062337e-89],
    [-37, 5.7255712225245e-300],
  ])("the lower tail of %d to 12 digits", (z, p) => {
    expect(Math.abs(normalCdf(z) / p - 1)).toBeLessThan(1e-12);
    expect(normalUpper(-z)).toBe(normalCdf(z));
    expect(Math.abs(normalQuantile(p) / z - 1)).toBeLessThan(1e-14);
  });

  test("probability and quantile undo each other", () => {
    fc.assert(
      fc.property(fc.double({ min: -37, max: 0, noNaN: true }), (z) => {
        const back = normalQuantile(normalCdf(z));
        expect(Math.abs(back - z)).toBeLessThan(1e-13 * Math.max(1, -z));
      }),
    );
  });

  test("the density is the slope of the probability", () => {
    for (const z of [-3, -0.5, 0, 1.2]) {
      const slope = (normalCdf(z + 1e-5) - normalCdf(z - 1e-5)) / 2e-5;
      expect(Math.abs(slope - normalDensity(z))).toBeLessThan(1e-9);
    }
  });

  test("the part between two values keeps its digits in both tails", () => {
    expect(normalBetween(-1, 1)).toBeCloseTo(0.682689492137086, 14);
    expect(Math.abs(normalBetween(10, 11) / normalBetween(-11, -10) - 1)).toBeLessThan(1e-14);
    expect(normalBetween(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalBetween(Number.NaN, 1)).toBeNaN();
  });

  test("at the ends and without a number", () => {
    expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
    expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
    expect(normalQuantile(0.5)).toBe(0);
    expect(normalQuantile(Number.NaN)).toBeNaN();
    expect(normalCdf(Number.NaN)).toBeNaN();
    expect(() => normalQuantile(1.1)).toThrow(ContractError);
  });
});
