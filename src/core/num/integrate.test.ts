import { expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { integrate } from "./integrate.ts";
import { normalDensity } from "./normal.ts";

test.each([
  ["a polynomial of degree 7", (x: number) => 8 * x ** 7, [0, 2], 256],
  ["the upper half circle", (x: number) => Math.sqrt(Math.max(0, 1 - x * x)), [-1, 1], Math.PI / 2],
  ["a kink", (x: number) => Math.abs(x - 0.3), [0, 1], (0.09 + 0.49) / 2],
  [
    "a narrow peak with its flanks told",
    (x: number) => normalDensity((x - 0.7) * 1e6) * 1e6,
    [0, 0.7 - 9e-6, 0.7, 0.7 + 9e-6, 1],
    1,
  ],
  ["an interval without length", () => 1, [3, 3], 0],
])("%s", (_name, f, breaks, value) => {
  expect(Math.abs(integrate(f, breaks) - value)).toBeLessThan(1e-10 * Math.max(1, value));
});

test("a missing value comes out; ends must be finite", () => {
  expect(integrate((x) => (x > 0.5 ? Number.NaN : 1), [0, 1])).toBeNaN();
  expect(() => integrate(() => 1, [0, Number.POSITIVE_INFINITY])).toThrow(ContractError);
  expect(() => integrate(() => 1, [0])).toThrow(ContractError);
});
