import { describe, expect, test } from "vitest";
import type { HolePath } from "../path/hole-path.ts";
import { hiddenCourse } from "./hidden-course.ts";

/** Directions whose north component is given by depth; positions do not matter here. */
function directions(depths: readonly number[], northOf: (depthM: number) => number): HolePath {
  const column = (of: (depthM: number) => number) => Float64Array.from(depths, of);
  const zero = () => new Float64Array(depths.length);
  return {
    count: depths.length,
    depthM: column((depthM) => depthM),
    northM: zero(),
    eastM: zero(),
    downM: column((depthM) => depthM),
    tangentNorth: column(northOf),
    tangentEast: zero(),
    tangentDown: column((depthM) => Math.sqrt(1 - northOf(depthM) ** 2)),
  };
}

const stations = (count: number, stepM: number) => Array.from({ length: count }, (_, i) => i * stepM);
const noNoise = (path: HolePath) => new Float64Array(path.count);

describe("[E1] what the course hides between two stops", () => {
  test("a direction c s^2 has the second derivative 2 c: h^3 / 12 times that in every interval", () => {
    const path = directions(stations(8, 2), (depthM) => 1e-4 * depthM * depthM);
    const { north, east } = hiddenCourse(path, noNoise(path), false);
    for (let i = 1; i < 8; i++) {
      expect(north[i]).toBeCloseTo((8 / 12) * 2e-4, 14);
      expect(east[i]).toBe(0);
    }
    expect(north[0]).toBe(0);
  });

  test("a bend of constant rate is the arc itself: nothing is hidden", () => {
    const path = directions([0, 1, 3, 4, 8], (depthM) => 0.002 * depthM);
    for (const value of hiddenCourse(path, noNoise(path), false).north) expect(value).toBeCloseTo(0, 15);
  });

  test("what the noise of the readings explains is taken off; two stations tell nothing", () => {
    const path = directions(stations(8, 2), (depthM) => 1e-4 * depthM * depthM);
    const noisy = hiddenCourse(path, new Float64Array(8).fill(0.01), false).north;
    expect(Array.from(noisy)).toEqual(Array.from({ length: 8 }, () => 0));
    const two = directions([0, 5], (depthM) => 0.01 * depthM);
    expect(Array.from(hiddenCourse(two, noNoise(two), false).north)).toEqual([0, 0]);
  });

  test("a direction carried up to an unread top misses half its bend times the square of the way", () => {
    const path = directions([0, 2, 3, 4], (depthM) => (depthM === 0 ? 0.004 : 0.002 * depthM));
    const read = hiddenCourse(path, noNoise(path), false).north[1]!;
    expect(hiddenCourse(path, noNoise(path), true).north[1]! - read).toBeCloseTo(((2 * 2) / 2) * 0.002, 14);
  });
});
