import { describe, expect, test } from "vitest";
import regions from "../../../test/published/confidence-regions/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { fCdf, fQuantile, fUpper } from "./f-distribution.ts";
import { studentTQuantile } from "./student-t.ts";

describe("F distribution", () => {
  test.each(regions.ellipse95)("95 %% ellipse from $degreesOfFreedom degrees of freedom", (row) => {
    const k = Math.sqrt(2 * fQuantile(0.95, 2, row.degreesOfFreedom));
    expect(Math.abs(k - row.k)).toBeLessThanOrEqual(5.001e-5);
  });

  test("one numerator degree is the square of Student's t", () => {
    for (const nu of [1, 3, 10.5, 200])
      expect(Math.abs(fQuantile(0.95, 1, nu) / studentTQuantile(0.975, nu) ** 2 - 1)).toBeLessThan(1e-12);
  });

  // Computed to 17 digits with mpmath, apart from this program.
  test.each([
    [1.5, 2, 10, 0.7306709256570956, 0.2693290743429044],
    [30, 3, 7, 0.999771644911747, 0.00022835508825303646],
    [0.2, 5, 200, 0.03783566918931471, 0.9621643308106853],
    [1.1, 500, 700, 0.8765548611983524, 0.12344513880164765],
  ])("value %d, %d and %d degrees of freedom", (x, numerator, denominator, lower, upper) => {
    expect(Math.abs(fCdf(x, numerator, denominator) / lower - 1)).toBeLessThan(1e-12);
    expect(Math.abs(fUpper(x, numerator, denominator) / upper - 1)).toBeLessThan(1e-12);
  });

  test("at the ends, without a number and outside", () => {
    expect(fCdf(-1, 2, 3)).toBe(0);
    expect(fUpper(Number.POSITIVE_INFINITY, 2, 3)).toBe(0);
    expect(fQuantile(0, 2, 3)).toBe(0);
    expect(fCdf(Number.NaN, 2, 3)).toBeNaN();
    expect(() => fCdf(1, 0, 3)).toThrow(ContractError);
  });
});
