import { describe, expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { deviance, logGamma, stirlingError } from "./gamma.ts";

describe("logGamma", () => {
  test("is the logarithm of the factorial at whole numbers", () => {
    let factorial = 1;
    for (let n = 1; n <= 25; n++) {
      expect(Math.abs(logGamma(n) - Math.log(factorial))).toBeLessThan(3e-14);
      factorial *= n;
    }
  });

  test("Gamma(1/2) = sqrt(pi), Gamma(1/3) as tabled", () => {
    expect(Math.abs(logGamma(0.5) - Math.log(Math.PI) / 2)).toBeLessThan(2e-14);
    expect(Math.abs(Math.exp(logGamma(1 / 3)) / 2.678938534707747 - 1)).toBeLessThan(3e-14);
  });

  test("obeys Gamma(x + 1) = x Gamma(x) across the change of formula", () => {
    for (let x = 0.1; x < 40; x += 0.37)
      expect(Math.abs(logGamma(x + 1) - logGamma(x) - Math.log(x))).toBeLessThan(5e-14);
  });

  test("throws ContractError at zero and below; a missing number stays missing", () => {
    expect(() => logGamma(0)).toThrow(ContractError);
    expect(logGamma(Number.NaN)).toBeNaN();
  });
});

test("stirlingError is what Stirling's formula leaves over, on both sides of the change of formula", () => {
  expect(stirlingError(1)).toBeCloseTo(1 - Math.log(2 * Math.PI) / 2, 14);
  expect(stirlingError(15 - 1e-9)).toBeCloseTo(stirlingError(15 + 1e-9), 11);
});

test("deviance is u^2/2 - u^3/3 + … for a ratio of 1 + u and agrees with the plain form far from 1", () => {
  const near = 2 ** -26; // exact as 1 + u, so that only the formula is tested
  expect(Math.abs(deviance(1 + near, 1) / (near ** 2 / 2 - near ** 3 / 3) - 1)).toBeLessThan(1e-14);
  expect(deviance(3, 3)).toBe(0);
  for (const r of [1e-9, 0.1, 0.51, 0.8, 1.3, 1.499, 3])
    expect(Math.abs(deviance(2 * r, 2) / (r - 1 - Math.log(r)) - 1)).toBeLessThan(2e-14);
  expect(deviance(Number.NaN, 1)).toBeNaN();
});
