import fc from "fast-check";
import { expect, test } from "vitest";
import { ExactSum, twoProduct, twoSum } from "./exact-arithmetic.ts";

test("sum and product keep what rounding loses", () => {
  expect(twoSum(1e16, 1)).toEqual({ high: 1e16, low: 1 });
  // (2^27 + 1)^2 = 2^54 + 2^28 + 1 needs 55 bits.
  expect(twoProduct(2 ** 27 + 1, 2 ** 27 + 1)).toEqual({ high: 2 ** 54 + 2 ** 28, low: 1 });
});

test("a product of two whole numbers is exact, compared with whole-number arithmetic", () => {
  const whole = fc.integer({ min: -(2 ** 52), max: 2 ** 52 });
  fc.assert(
    fc.property(whole, whole, (a, b) => {
      const { high, low } = twoProduct(a, b);
      expect(BigInt(high) + BigInt(low)).toBe(BigInt(a) * BigInt(b));
    }),
  );
});

test("a running sum survives terms far larger than itself", () => {
  const sum = new ExactSum();
  for (const value of [1, 1e16, 1, -1e16]) sum.add(value);
  sum.addProduct(1e9 + 1, 1e9 + 1);
  sum.addProduct(-1e9, 1e9);
  expect(sum.value).toBe(2 + 2e9 + 1);
});
