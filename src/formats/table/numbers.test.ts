import { describe, expect, test } from "vitest";
import { decimalUse, mayBeThousands, numberInCell } from "./numbers.ts";

describe("a number in a cell", () => {
  test.each([
    ["1.5", 1.5],
    [" -1.5 ", -1.5],
    ["+.5", 0.5],
    ["5.", 5],
    ["1e-1", 0.1],
    ["−3", -3],
    ["0", 0],
    ["1,5", undefined],
    ["1.5 m", undefined],
    ["1 000", undefined],
    ["0x10", undefined],
    ["Infinity", undefined],
    ["1e999", undefined],
    ["--1", undefined],
    ["1.2.3", undefined],
    ["", undefined],
    ["NaN", undefined],
  ])("%s with a decimal point is %s", (text, value) => {
    expect(numberInCell(text, ".")).toBe(value);
  });

  test.each([
    ["1,5", 1.5],
    [",5", 0.5],
    ["-1,5e2", -150],
    ["15", 15],
    ["1.5", undefined],
    ["1.000,5", undefined],
    ["1,000,5", undefined],
  ])("%s with a decimal comma is %s", (text, value) => {
    expect(numberInCell(text, ",")).toBe(value);
  });

  test("typed cells: only a finite number is one", () => {
    expect(numberInCell(2.5, ",")).toBe(2.5);
    for (const cell of [Number.NaN, Number.POSITIVE_INFINITY, true, undefined, new Date(0)])
      expect(numberInCell(cell, ".")).toBeUndefined();
  });
});

test.each([
  ["1.5", "point"],
  ["1,5", "comma"],
  ["15", "neither"],
  ["1.5 m", "neither"],
  ["a,b", "neither"],
])("%s shows %s", (text, use) => {
  expect(decimalUse(text)).toBe(use);
});

test("three digits behind one comma may be thousands", () => {
  expect(["1,024", "-12,288", "999,000"].every(mayBeThousands)).toBe(true);
  expect(["0,024", "1,02", "1,0245", "1024", "1.024"].some(mayBeThousands)).toBe(false);
});
