import { describe, expect, test } from "vitest";
import { azimuthInCell, degreesInCell } from "./angles.ts";

describe("an azimuth in a cell", () => {
  test.each([
    ["N 45 30 E", 45.5],
    ["N45.5E", 45.5],
    ["n 45 30 e", 45.5],
    ["S 83 W", 263],
    ["S 83 0 W", 263],
    ["S 20 15 E", 159.75],
    ["N 10 30 36 W", 349.49],
    ["N 45° 30' E", 45.5],
    ["N", 0],
    ["e", 90],
    ["S", 180],
    ["W", 270],
    ["N 0 W", 0],
    ["N 90 W", 270],
    ["S 0 E", 180],
    ["45.5", 45.5],
    ["-45.5", -45.5],
    ["12 30", 12.5],
    ["359 59 60", undefined],
    ["N 95 E", undefined],
    ["N 45 60 E", undefined],
    ["N 45.5 30 E", undefined],
    ["E 45 N", undefined],
    ["N E", undefined],
    ["N -5 E", undefined],
    ["N 1 2 3 4 E", undefined],
    ["NE", undefined],
    ["north", undefined],
    ["", undefined],
  ])("%s is %s degrees", (text, degrees) => {
    const read = azimuthInCell(text, ".");
    if (degrees === undefined) expect(read).toBeUndefined();
    else expect(read).toBeCloseTo(degrees, 10);
  });

  test("a decimal comma, where the file has one", () => {
    expect(azimuthInCell("N 45,5 E", ",")).toBe(45.5);
    expect(azimuthInCell("N 45,5 E", ".")).toBeUndefined();
    expect(azimuthInCell("N 45.5 E", ",")).toBeUndefined();
  });

  test("a typed cell of a spreadsheet", () => {
    expect(azimuthInCell(45.5, ".")).toBe(45.5);
    expect(azimuthInCell(true, ".")).toBeUndefined();
  });
});

test.each([
  ["12 30", 12.5],
  ["-0 15", -0.25],
  ["+1 30 36", 1.51],
  ["4° 30′", 4.5],
  ["4 30 minutes", undefined],
  ["4 -30", undefined],
])("degrees and minutes: %s is %s", (text, degrees) => {
  const read = degreesInCell(text, ".");
  if (degrees === undefined) expect(read).toBeUndefined();
  else expect(read).toBeCloseTo(degrees, 10);
});
