import { describe, expect, test } from "vitest";
import type { AxesView, ElementRow } from "../../../worker/desk.ts";
import { designAtLevel, foundAtLevel } from "./place-at-level.ts";

const raker = {
  eastM: 100,
  northM: 200,
  headLevelM: 4,
  toeLevelM: -16,
  // 1 in 10 towards the east
  rakeRad: Math.atan(0.1),
  rakeBearingRad: Math.PI / 2,
} as ElementRow;

describe("the design at a level", () => {
  test("a raker of 1 in 10 towards the east is a metre east ten metres down", () => {
    const place = designAtLevel(raker, -6)!;
    expect(place.eastM).toBeCloseTo(101, 9);
    expect(place.northM).toBeCloseTo(200, 9);
  });

  test("is nowhere above the head and below the toe", () => {
    expect(designAtLevel(raker, 4.1)).toBeUndefined();
    expect(designAtLevel(raker, -16.1)).toBeUndefined();
  });
});

describe("the axis as found at a level", () => {
  const axes: AxesView = {
    revision: 1,
    ids: ["none", "A"],
    start: Int32Array.of(0, 0, 3),
    origin: { eastM: 1000, northM: 2000 },
    eastM: Float32Array.of(0, 1, 3),
    northM: Float32Array.of(0, 0, -2),
    levelM: Float32Array.of(4, 0, -8),
  };

  test("lies on the line between the rows around the level", () => {
    expect(foundAtLevel(axes, 1, 4)).toEqual({ eastM: 1000, northM: 2000 });
    expect(foundAtLevel(axes, 1, 2)).toEqual({ eastM: 1000.5, northM: 2000 });
    expect(foundAtLevel(axes, 1, -4)).toEqual({ eastM: 1002, northM: 1999 });
    expect(foundAtLevel(axes, 1, -8)).toEqual({ eastM: 1003, northM: 1998 });
  });

  test("is unknown above and below what was read, and for an element that was not", () => {
    expect(foundAtLevel(axes, 1, 4.1)).toBeUndefined();
    expect(foundAtLevel(axes, 1, -8.1)).toBeUndefined();
    expect(foundAtLevel(axes, 0, 0)).toBeUndefined();
  });
});
