import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../../test/published/nist-strd-univariate/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { lag1Autocorrelation, mean, sampleStandardDeviation, sampleVariance } from "./moments.ts";

/** NumAcc2 to 4: the whole number, then .2 once and .1 and .3 in turn. */
const alternating = (whole: string) =>
  Array.from({ length: 1001 }, (_, i) => Number(`${whole}.${i === 0 ? 2 : i % 2 === 1 ? 1 : 3}`));

const SERIES: Readonly<Record<string, readonly number[]>> = {
  NumAcc1: [10000001, 10000003, 10000002],
  NumAcc2: alternating("1"),
  NumAcc3: alternating("1000000"),
  NumAcc4: alternating("10000000"),
  Michelso: published.michelso,
  Mavro: published.mavro,
};

const relativeError = (value: number, certified: number) => Math.abs(value / certified - 1);

describe("mean, standard deviation and autocorrelation", () => {
  test.each(published.certified)("agree with the certified values of NIST StRD $name", (certified) => {
    const values = SERIES[certified.name]!;
    expect(relativeError(mean(values), certified.mean)).toBeLessThanOrEqual(certified.relativeMean);
    expect(relativeError(sampleStandardDeviation(values), certified.standardDeviation)).toBeLessThanOrEqual(
      certified.relativeDeviation,
    );
    expect(relativeError(lag1Autocorrelation(values), certified.autocorrelation)).toBeLessThanOrEqual(
      certified.relativeAutocorrelation,
    );
  });

  test("stay the same when a whole number is added to all values", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 50 }),
        fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }),
        (values, offset) => {
          const moved = values.map((value) => value + offset);
          expect(mean(moved) - offset).toBeCloseTo(mean(values), 6);
          const spread = sampleVariance(values);
          expect(Math.abs(sampleVariance(moved) - spread)).toBeLessThanOrEqual(1e-9 * (spread + 1));
        },
      ),
    );
  });

  test("a missing value is never passed over", () => {
    expect(mean([1, Number.NaN, 3])).toBeNaN();
    expect(sampleVariance([1, Number.NaN, 3])).toBeNaN();
    expect(lag1Autocorrelation([1, Number.NaN, 3])).toBeNaN();
    expect(lag1Autocorrelation([2, 2, 2])).toBeNaN();
  });

  test("throw ContractError when there are too few values", () => {
    expect(() => mean([])).toThrow(ContractError);
    expect(() => sampleVariance([1])).toThrow(ContractError);
    expect(() => lag1Autocorrelation([1])).toThrow(ContractError);
  });
});
