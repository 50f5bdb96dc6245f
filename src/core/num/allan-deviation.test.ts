import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../../test/published/nbs14-allan/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { type AllanEstimator, allanDeviation } from "./allan-deviation.ts";

/** The published generator: n(i+1) = 16807 n(i) mod 2147483647, exact in doubles. */
function thousandPoints(): Float64Array {
  let state = 1234567890;
  return Float64Array.from({ length: 1000 }, () => {
    const value = state / 2147483647;
    state = (16807 * state) % 2147483647;
    return value;
  });
}

const SETS: Readonly<Record<string, Float64Array>> = {
  nine: Float64Array.from(published.nine),
  thousand: thousandPoints(),
};
const ESTIMATORS: Readonly<Record<string, AllanEstimator>> = {
  ADEV: "separate",
  OADEV: "overlapping",
  MDEV: "modified",
  TDEV: "modified",
  HDEV: "hadamard",
  OHDEV: "overlapping-hadamard",
};

/** One unit in the last digit of a number as printed. */
function lastDigit(printed: string): number {
  const [mantissa, exponent] = printed.split("e");
  const decimals = (mantissa!.split(".")[1] ?? "").length;
  return 10 ** (Number(exponent ?? 0) - decimals);
}

describe("allanDeviation", () => {
  test("the generator gives the published first numbers", () => {
    const numbers = [1, 2, 3].map((i) => Math.round(SETS["thousand"]![i]! * 2147483647));
    expect(numbers).toEqual(published.generatorFirst);
    expect(Math.round(SETS["thousand"]![999]! * 2147483647)).toBe(1560135652);
  });

  test.each(published.expected)("$statistic of the $set points, averaging $factor", (one) => {
    const { deviation } = allanDeviation(SETS[one.set]!, one.factor, ESTIMATORS[one.statistic]!);
    const value = one.statistic === "TDEV" ? (deviation * one.factor) / Math.sqrt(3) : deviation;
    expect(Math.abs(value - Number(one.printed))).toBeLessThanOrEqual(1.01 * lastDigit(one.printed));
  });

  test("[B3] neither a constant rate nor, for the Hadamard form, a ramp shows", () => {
    fc.assert(
      fc.property(fc.double({ min: -1, max: 1, noNaN: true }), fc.integer({ min: 1, max: 6 }), (ramp, m) => {
        const noisy = SETS["thousand"]!.subarray(0, 60);
        const moved = noisy.map((rate, i) => rate + 1000 + ramp * i);
        const still = allanDeviation(noisy, m, "overlapping-hadamard").deviation;
        expect(allanDeviation(moved, m, "overlapping-hadamard").deviation).toBeCloseTo(still, 8);
        const offset = noisy.map((rate) => rate + 1000);
        expect(allanDeviation(offset, m).deviation).toBeCloseTo(allanDeviation(noisy, m).deviation, 9);
      }),
    );
  });

  test("a series too short for one difference has no deviation", () => {
    for (const estimator of new Set(Object.values(ESTIMATORS))) {
      const { deviation, differences } = allanDeviation(Float64Array.of(1, 2, 3), 2, estimator);
      expect(deviation).toBeNaN();
      expect(differences).toBe(0);
    }
  });

  test("throws ContractError for a missing rate and for half a sample", () => {
    expect(() => allanDeviation(Float64Array.of(1, Number.NaN, 3), 1)).toThrow(ContractError);
    expect(() => allanDeviation(Float64Array.of(1, 2, 3), 1.5)).toThrow(ContractError);
  });
});
