import { describe, expect, test } from "vitest";
import norris from "../../../test/published/nist-strd-norris/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { fitLine } from "./fit-line.ts";

describe("fitLine", () => {
  test("agrees with the certified values of NIST StRD Norris", () => {
    const fit = fitLine(Float64Array.from(norris.x), Float64Array.from(norris.y));
    const actual = {
      intercept: fit.intercept,
      slope: fit.slope,
      interceptStandardDeviation: Math.sqrt(fit.interceptVariance),
      slopeStandardDeviation: Math.sqrt(fit.slopeVariance),
      residualSumOfSquares: fit.residualSumOfSquares,
    };
    expect(Object.keys(actual).sort()).toEqual(Object.keys(norris.certified).sort()); // no quantity silently skipped
    for (const [name, { value, relative }] of Object.entries(norris.certified)) {
      const error = Math.abs(actual[name as keyof typeof actual] / value - 1);
      expect(error, `${name}: relative error ${error}`).toBeLessThanOrEqual(relative);
    }
  });

  test("gives the same slope when time is counted from 1970 instead of from the first reading", () => {
    const t = Float64Array.from({ length: 20 }, (_, i) => i * 30);
    const y = t.map((v) => 0.1 + 2e-6 * v);
    const near = fitLine(t, y).slope;
    const far = fitLine(
      t.map((v) => v + 1_800_000_000),
      y,
    ).slope;
    expect(Math.abs(far / near - 1)).toBeLessThan(1e-9);
  });

  test.each([
    ["lengths differ", [1, 2, 3], [1, 2]],
    ["fewer than 3 points", [1, 2], [1, 2]],
    ["a value is not finite", [1, 2, Number.NaN], [1, 2, 3]],
    ["all x are equal", [5, 5, 5], [1, 2, 3]],
  ])("throws ContractError when %s", (_why, x, y) => {
    expect(() => fitLine(Float64Array.from(x), Float64Array.from(y))).toThrow(ContractError);
  });
});
