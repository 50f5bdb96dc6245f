import fc from "fast-check";
import { expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { incompleteBeta } from "./incomplete-beta.ts";

test("whole shapes: the tail of a binomial sum", () => {
  for (const [a, b] of [
    [1, 1],
    [2, 5],
    [7, 3],
    [20, 20],
  ] as const)
    for (const x of [0.01, 0.3, 0.5, 0.8, 0.99]) {
      const n = a + b - 1;
      let tail = 0;
      for (let k = a; k <= n; k++) {
        let choose = 1;
        for (let i = 1; i <= k; i++) choose *= (n - k + i) / i;
        tail += choose * x ** k * (1 - x) ** (n - k);
      }
      expect(Math.abs(incompleteBeta(a, b, x).lower / tail - 1), `${a} ${b} ${x}`).toBeLessThan(2e-13);
    }
});

test("I_x(1/2, 1/2) = 2/pi asin(sqrt(x))", () => {
  for (const x of [1e-12, 0.1, 0.5, 0.9])
    expect(
      Math.abs(incompleteBeta(0.5, 0.5, x).lower / ((2 / Math.PI) * Math.asin(Math.sqrt(x))) - 1),
    ).toBeLessThan(1e-13);
});

test("turning the interval round changes the shapes over", () => {
  const shape = fc.double({ min: 0.05, max: 2000, noNaN: true });
  fc.assert(
    fc.property(shape, shape, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, x) => {
      const one = incompleteBeta(a, b, x);
      const other = incompleteBeta(b, a, 1 - x, x);
      expect(Math.abs(one.lower - other.upper)).toBeLessThan(1e-12);
      expect(one.lower + one.upper).toBeCloseTo(1, 12);
    }),
  );
});

test("at the ends, without a number and outside", () => {
  expect(incompleteBeta(2, 3, 0)).toEqual({ lower: 0, upper: 1 });
  expect(incompleteBeta(2, 3, 1)).toEqual({ lower: 1, upper: 0 });
  expect(incompleteBeta(2, 3, Number.NaN).lower).toBeNaN();
  expect(() => incompleteBeta(2, 3, 1.1)).toThrow(ContractError);
  expect(() => incompleteBeta(0, 3, 0.5)).toThrow(ContractError);
});
