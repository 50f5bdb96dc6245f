import { describe, expect, test } from "vitest";
import tables from "../../../test/published/normal-and-student-tables/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { normalQuantile } from "./normal.ts";
import { studentTCdf, studentTQuantile } from "./student-t.ts";

describe("Student's t", () => {
  test.each(tables.studentTwoSided)("two-sided factors for $degreesOfFreedom degrees of freedom", (row) => {
    for (const [p, value] of [
      [0.9, row.t90],
      [0.95, row.t95],
      [0.99, row.t99],
    ] as const)
      expect(Math.abs(studentTQuantile((1 + p) / 2, row.degreesOfFreedom) - value)).toBeLessThanOrEqual(
        5.001e-5,
      );
  });

  test("closed forms for 1 and 2 degrees of freedom, far tails too", () => {
    for (const p of [1e-12, 1e-3, 0.2, 0.4]) {
      expect(Math.abs(studentTQuantile(p, 1) * Math.tan(Math.PI * p) + 1)).toBeLessThan(1e-12);
      const two = (2 * p - 1) / Math.sqrt(2 * p * (1 - p));
      expect(Math.abs(studentTQuantile(p, 2) / two - 1)).toBeLessThan(1e-12);
      expect(Math.abs(studentTCdf(two, 2) / p - 1)).toBeLessThan(1e-12);
    }
  });

  // Computed to 17 digits with mpmath, apart from this program.
  test.each([
    [3, 0.999, 10.214531852407386],
    [2.5, 0.95, 2.5582186141359364],
    [100, 0.995, 2.625890521438018],
  ])("%d degrees of freedom, probability %d", (degreesOfFreedom, p, t) => {
    expect(Math.abs(studentTQuantile(p, degreesOfFreedom) / t - 1)).toBeLessThan(2e-13);
  });

  test("is symmetric and becomes normal", () => {
    expect(studentTQuantile(0.25, 7)).toBe(-studentTQuantile(0.75, 7));
    expect(studentTCdf(0, 4)).toBe(0.5);
    expect(studentTQuantile(0.975, Number.POSITIVE_INFINITY)).toBe(normalQuantile(0.975));
    expect(studentTQuantile(0.975, 1e9)).toBeCloseTo(normalQuantile(0.975), 8);
  });

  test("at the ends, without a number and outside", () => {
    expect(studentTQuantile(0, 3)).toBe(Number.NEGATIVE_INFINITY);
    expect(studentTQuantile(1, 3)).toBe(Number.POSITIVE_INFINITY);
    expect(studentTCdf(Number.POSITIVE_INFINITY, 3)).toBe(1);
    expect(studentTCdf(Number.NaN, 3)).toBeNaN();
    expect(studentTQuantile(Number.NaN, 3)).toBeNaN();
    expect(() => studentTQuantile(0.9, 0)).toThrow(ContractError);
    expect(() => studentTQuantile(-0.1, 3)).toThrow(ContractError);
  });
});
