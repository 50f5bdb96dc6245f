import { expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { findRoot } from "./find-root.ts";

test.each([
  ["cos x = x", (x: number) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
  ["x^3 = 2, bracket given backwards", (x: number) => x ** 3 - 2, 5, 0, 2 ** (1 / 3)],
  ["a flat root, x^9", (x: number) => x ** 9, -1, 1.7, 0],
  ["a jump", (x: number) => (x < 0.25 ? -1 : 1), 0, 1, 0.25],
  ["a root at the end", (x: number) => x, 0, 1, 0],
])("%s", (_name, f, lower, upper, root) => {
  expect(findRoot(f, lower, upper)).toBeCloseTo(root, _name.startsWith("a flat") ? 1 : 14);
});

test("stops at the tolerance asked for", () => {
  let calls = 0;
  const root = findRoot(
    (x) => {
      calls++;
      return Math.exp(x) - 3;
    },
    0,
    2,
    1e-3,
  );
  expect(Math.abs(root - Math.log(3))).toBeLessThan(1e-3);
  expect(calls).toBeLessThan(12);
});

test("a missing value is never taken for a root; no change of sign is a mistake of the caller", () => {
  expect(findRoot((x) => (x > 0.4 && x < 0.6 ? Number.NaN : x - 0.5), 0, 1)).toBeNaN();
  expect(findRoot(() => Number.NaN, 0, 1)).toBeNaN();
  expect(() => findRoot((x) => x * x + 1, -1, 1)).toThrow(ContractError);
});
