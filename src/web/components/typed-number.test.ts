import { describe, expect, test } from "vitest";
import { readTypedNumber } from "./typed-number.ts";

const understood = (text: string, unit = "m") => {
  const read = readTypedNumber(text, unit);
  return read.kind === "number" ? read.value : read.kind;
};

describe("a typed number", () => {
  test.each([
    ["12.5", 12.5],
    ["12,5", 12.5],
    [" 12,5 m ", 12.5],
    ["12.5M", 12.5],
    ["−0,25", -0.25],
    ["– 3", -3],
    ["+4", 4],
    [",5", 0.5],
    ["5.", 5],
    ["1 234,5", 1234.5],
    ["0", 0],
  ])("%j is understood", (text, value) => {
    expect(understood(text)).toBe(value);
  });

  test.each([
    ["1.234,56", "two-marks"],
    ["1,234,567", "two-marks"],
    ["1..2", "two-marks"],
    ["12.5 mm", "other-unit"],
    ["12,5 ft", "other-unit"],
    ["abc", "no-number"],
    ["-", "no-number"],
    ["1e3", "no-number"],
    ["0x10", "no-number"],
    ["Infinity", "no-number"],
    ["", "empty"],
    ["  ", "empty"],
  ])("%j is asked about, never guessed: %s", (text, kind) => {
    expect(understood(text)).toBe(kind);
  });

  test("a unit with signs is its own unit", () => {
    expect(understood("0,5°", "°")).toBe(0.5);
    expect(understood("3 mm/m", "mm/m")).toBe(3);
    expect(understood("3 °/h", "°/h")).toBe(3);
  });

  test("keeps how many decimals were typed, so that the echo shows as many", () => {
    expect(readTypedNumber("12,500", "m")).toEqual({ kind: "number", value: 12.5, decimals: 3 });
  });
});
