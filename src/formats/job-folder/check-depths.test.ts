import { expect, test } from "vitest";
import type { Leg, Readings } from "#core";
import { Finder } from "../finding/finder.ts";
import { checkDepths } from "./check-depths.ts";

/** Findings on rows of depth, and leg or face where given; lines count from 2. */
function findingsOn(depths: readonly number[], legs: readonly Leg[] = [], faces: readonly number[] = []) {
  const count = depths.length;
  const found = new Finder("r.csv");
  const readings = {
    count,
    depthM: Float64Array.from(depths),
    depthCounts: new Float64Array(count).fill(Number.NaN),
    leg: depths.map((_, i) => legs[i] ?? ""),
    face: Uint8Array.from(depths, (_, i) => faces[i] ?? 0),
    line: Int32Array.from(depths, (_, i) => i + 2),
  } as unknown as Readings;
  checkDepths(readings, (name) => name, found);
  return found.issues.map((issue) => [issue.code.replace("formats.", ""), issue.place.line]);
}

test.each<[string, readonly number[]]>([
  ["down", [0, 1, 2, 3, 4]],
  ["down, and closed at the top", [0, 1, 2, 3, 4, 0]],
  ["down and up", [0, 1, 2, 3, 2, 1, 0]],
  ["down and up, with the deepest read twice", [0, 1, 2, 3, 3, 2, 1, 0]],
  ["up only", [4, 3, 2, 1, 0]],
  ["uneven steps", [0, 0.5, 2, 3, 4.5, 6]],
])("rows without legs that go %s are in order", (_way, depths) => {
  expect(findingsOn(depths)).toEqual([]);
});

test("a station read again is told at the second row, with or without legs", () => {
  expect(findingsOn([0, 1, 2, 2, 3, 4])).toEqual([["station-repeated", 5]]);
  expect(findingsOn([0, 1, 2, 3, 4, 4])).toEqual([["station-repeated", 7]]);
  const down = Array.from({ length: 5 }, (): Leg => "down");
  expect(findingsOn([0, 1, 1, 2, 3], down)).toEqual([["station-repeated", 4]]);
  expect(findingsOn([0, 1, 2, 1, 3], down)).toEqual([["station-repeated", 5]]);
});

test("the same depth on the other leg or the other face is another station", () => {
  expect(findingsOn([0, 1, 2, 2, 1, 0], ["down", "down", "down", "up", "up", "up"])).toEqual([]);
  expect(findingsOn([0, 0, 1, 1, 2, 2], [], [1, 2, 1, 2, 1, 2])).toEqual([]);
  expect(findingsOn([0, 1, 2, 0, 1, 2], [], [1, 1, 1, 2, 2, 2])).toEqual([]);
  expect(findingsOn([0, 0, 1, 2, 0], ["open", "down", "down", "down", "close"])).toEqual([]);
});

test("turning back within a leg is told", () => {
  expect(findingsOn([0, 1, 3, 2, 4], ["down", "down", "down", "down", "down"])).toEqual([
    ["depth-reversal", 5],
  ]);
  expect(findingsOn([4, 3, 1, 2, 0], ["up", "up", "up", "up", "up"])).toEqual([["depth-reversal", 5]]);
  expect(findingsOn([0, 1, 3, 2, 4])).toEqual([["depth-reversal", 5]]);
});

test("a step of more than three times the usual one is told, the way back to the top is not", () => {
  expect(findingsOn([0, 1, 2, 3, 4, 8, 9])).toEqual([["depth-step", 7]]);
  expect(findingsOn([0, 1, 2, 3, 4, 7, 8])).toEqual([]);
  expect(findingsOn([0, 1, 2, 3, 4, 5, 6, 7, 8, 0])).toEqual([]);
});
