import { expect, test } from "vitest";
import { endAllowanceM } from "./end-allowance.ts";

test.each([
  [0.25, 1],
  [0.5, 1],
  [1, 2],
  [3, 6],
  [Number.NaN, 1],
])("[D4] stations every %f m: readings may end %f m from the end", (intervalM, allowedM) => {
  expect(endAllowanceM(intervalM)).toBe(allowedM);
});
