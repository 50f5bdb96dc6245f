import fc from "fast-check";
import { expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { erf, erfc } from "./error-function.ts";
import { logGamma } from "./gamma.ts";
import { incompleteGamma } from "./incomplete-gamma.ts";

test("whole shape: the upper part is e^-x times the first terms of e^x", () => {
  for (const a of [1, 2, 5, 30])
    for (const x of [0.1, 1, 4, 25, 60, 200]) {
      let term = 1;
      let sum = 1;
      for (let k = 1; k < a; k++) {
        term *= x / k;
        sum += term;
      }
      const upper = Math.exp(-x) * sum;
      expect(Math.abs(incompleteGamma(a, x).upper / upper - 1), `a ${a}, x ${x}`).toBeLessThan(1e-13);
    }
});

test("shape one half: the error function", () => {
  for (const x of [0.01, 0.5, 1, 3, 10]) {
    const { lower, upper } = incompleteGamma(0.5, x * x);
    expect(Math.abs(lower / erf(x) - 1)).toBeLessThan(1e-14);
    expect(Math.abs(upper / erfc(x) - 1)).toBeLessThan(1e-12);
  }
});

test("obeys P(a + 1, x) = P(a, x) - x^a e^-x / Gamma(a + 1), large shapes too", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 5000, noNaN: true }),
      fc.double({ min: 0.3, max: 3, noNaN: true }),
      (a, share) => {
        const x = a * share;
        const { lower, upper } = incompleteGamma(a, x);
        const step = Math.exp(a * Math.log(x) - x - logGamma(a + 1));
        expect(Math.abs(lower - incompleteGamma(a + 1, x).lower - step)).toBeLessThan(1e-12);
        expect(Math.abs(lower + upper - 1)).toBeLessThan(1e-15);
      },
    ),
  );
});

test("at the ends, without a number and outside", () => {
  expect(incompleteGamma(2, 0)).toEqual({ lower: 0, upper: 1 });
  expect(incompleteGamma(2, Number.POSITIVE_INFINITY)).toEqual({ lower: 1, upper: 0 });
  expect(incompleteGamma(2, Number.NaN).lower).toBeNaN();
  expect(() => incompleteGamma(0, 1)).toThrow(ContractError);
  expect(() => incompleteGamma(1, -1)).toThrow(ContractError);
});
