import fc from "fast-check";
import { expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { shortestInterval, symmetricInterval } from "./coverage-interval.ts";

const hundred = Float64Array.from({ length: 100 }, (_, i) => i + 1);

test("symmetric: the 5 values left out of 100 are shared between both ends", () => {
  // q = 95, r = (100 - 95 + 1) / 2 = 3: from the 3rd to the 98th value.
  expect(symmetricInterval(hundred, 0.95)).toEqual({ lower: 3, upper: 98 });
});

test("shortest: the crowded end of a skew sample", () => {
  const skew = hundred.map((value) => value ** 2);
  expect(shortestInterval(skew, 0.95)).toEqual({ lower: 1, upper: 96 ** 2 });
  expect(shortestInterval(hundred, 0.95)).toEqual({ lower: 1, upper: 96 });
});

test("both hold the stated share, and the shortest is never the longer one", () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 30, maxLength: 200 }),
      fc.double({ min: 0.5, max: 0.95, noNaN: true }),
      (values, p) => {
        const sorted = Float64Array.from(values).sort();
        const one = symmetricInterval(sorted, p);
        const other = shortestInterval(sorted, p);
        for (const { lower, upper } of [one, other])
          expect(sorted.filter((v) => v >= lower && v <= upper).length).toBeGreaterThanOrEqual(
            p * values.length,
          );
        expect(other.upper - other.lower).toBeLessThanOrEqual(one.upper - one.lower);
      },
    ),
  );
});

test("throws ContractError for a sample too small, unsorted or with a missing value", () => {
  expect(() => symmetricInterval(Float64Array.of(1, 2, 3), 0.95)).toThrow(ContractError);
  expect(() => shortestInterval(hundred.toReversed(), 0.95)).toThrow(ContractError);
  expect(() => shortestInterval(hundred.with(99, Number.NaN), 0.95)).toThrow(ContractError);
  expect(() => symmetricInterval(hundred, 1)).toThrow(ContractError);
});
