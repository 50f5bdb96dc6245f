import { describe, expect, test } from "vitest";
import type { Leg } from "../readings/survey-run.ts";
import { layOutRun } from "./passes.ts";

const NONE = Number.NaN;

/** Passes as words: "down 1: 0 2 4" = direction, face, rows from the top down. */
function laidOut(leg: readonly Leg[], face: readonly number[], depths: readonly number[]) {
  const layout = layOutRun(leg, Uint8Array.from(face), Float64Array.from(depths));
  return {
    ...layout,
    passes: layout.passes.map(
      (pass) =>
        `${pass.direction} ${pass.face}${pass.repeat > 1 ? ` again ${pass.repeat}` : ""}: ${pass.rows.join(" ")}`,
    ),
  };
}
const blank = (count: number): Leg[] => Array.from({ length: count }, () => "");
const noFace = (count: number): number[] => Array.from({ length: count }, () => 0);

describe("rows of a run, sorted into passes", () => {
  test.each([
    ["way down only", [0, 1, 2], ["down 0: 0 1 2"]],
    ["down and up", [0, 1, 2, 1, 0], ["down 0: 0 1 2", "up 0: 4 3"]],
    ["down, up, the deepest read twice", [0, 1, 2, 2, 1], ["down 0: 0 1 2", "up 0: 4 3"]],
    ["down and back to the top for the closing", [0, 1, 2, 0], ["down 0: 0 1 2", "up 0: 3"]],
    ["read on the way up only", [2, 1, 0], ["up 0: 2 1 0"]],
    ["one row", [3], ["down 0: 0"]],
    ["a missing depth belongs nowhere", [0, NONE, 2], ["down 0: 0 2"]],
    ["no depth at all", [NONE, NONE], []],
  ] as const)("no legs, no faces: %s", (_what, depths, passes) => {
    const found = laidOut(blank(depths.length), noFace(depths.length), depths);
    expect(found.passes).toEqual(passes);
    expect([found.openingRow, found.closingRow]).toEqual([0, depths.length - 1]);
    expect(found.tieRows).toEqual([]);
  });

  test.each([
    ["both faces down", [1, 1, 1, 2, 2, 2], [0, 1, 2, 0, 1, 2], ["down 1: 0 1 2", "down 2: 3 4 5"]],
    ["face 2 on the way up", [1, 1, 1, 2, 2, 2], [0, 1, 2, 2, 1, 0], ["down 1: 0 1 2", "up 2: 5 4 3"]],
    ["both faces at each stop", [1, 2, 1, 2], [0, 0, 1, 1], ["down 1: 0 2", "down 2: 1 3"]],
    [
      "both faces down and up",
      [1, 1, 1, 2, 2, 2],
      [0, 1, 0, 0, 1, 0],
      ["down 1: 0 1", "up 1: 2", "down 2: 3 4", "up 2: 5"],
    ],
  ] as const)("no legs: %s", (_what, face, depths, passes) => {
    expect(laidOut(blank(depths.length), face, depths).passes).toEqual(passes);
  });

  test("legs say it all: rows at the top and ties are no stations", () => {
    const leg: readonly Leg[] = ["open", "open", "down", "down", "tie", "up", "up", "close", "close"];
    const found = laidOut(leg, noFace(9), [0, 0, 0, 1, 0, 1, 0, 0, 0]);
    expect(found.passes).toEqual(["down 0: 2 3", "up 0: 6 5"]);
    expect(found).toMatchObject({ openingRow: 1, closingRow: 7, tieRows: [4] });
  });

  test("legs with faces", () => {
    const leg: readonly Leg[] = ["open", "down", "down", "up", "up", "close"];
    expect(laidOut(leg, [1, 1, 1, 2, 2, 2], [0, 1, 2, 2, 1, 0]).passes).toEqual(["down 1: 1 2", "up 2: 4 3"]);
  });

  test("only the way up is named: what has no leg goes by the deepest row", () => {
    const leg: readonly Leg[] = ["", "", "", "up"];
    expect(laidOut(leg, noFace(4), [0, 1, 2, 1]).passes).toEqual(["down 0: 0 1 2", "up 0: 3"]);
  });

  test("a way down that is read again is a pass of its own", () => {
    const leg: readonly Leg[] = ["down", "down", "up", "up", "down", "down"];
    const found = laidOut(leg, noFace(6), [0, 1, 1.002, 0.003, 0.001, 1.001]);
    expect(found.passes).toEqual(["down 0: 0 1", "up 0: 3 2", "down 0 again 2: 4 5"]);
  });

  test("without close the last row closes, without open the first opens", () => {
    expect(laidOut(["down", "down", "close"], noFace(3), [0, 1, 0])).toMatchObject({
      openingRow: 0,
      closingRow: 2,
    });
    expect(laidOut(["open", "down", "down"], noFace(3), [0, 1, 2])).toMatchObject({
      openingRow: 0,
      closingRow: 2,
    });
  });
});
