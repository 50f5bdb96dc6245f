import { describe, expect, test } from "vitest";
import { tangentFromInclination } from "../frames/attitude.ts";
import { ned } from "../geometry/vector.ts";
import { computePath } from "./compute-path.ts";
import { dogleg, ratioFactor } from "./dogleg.ts";
import type { HolePath } from "./hole-path.ts";
import { depthAtDown, interpolatePath } from "./interpolate-path.ts";

const degree = Math.PI / 180;

function arc(lengthM: number, first: readonly [number, number], second: readonly [number, number]): HolePath {
  const ends = [first, second].map(([i, a]) => tangentFromInclination(i * degree, a * degree));
  const column = (of: "north" | "east" | "down") => Float64Array.from(ends, (t) => t[of]);
  const profile = {
    depthM: Float64Array.of(0, lengthM),
    north: column("north"),
    east: column("east"),
    down: column("down"),
  };
  return computePath(profile, ned(0, 0, 0), "minimum-curvature");
}

// Values by a second computation, by somebody else than the authors: test/published/path-methods, cases A and D.
const published = [
  {
    name: "A",
    path: arc(100, [15, 20], [25, 45]),
    s: 25,
    at: [6.271792407, 2.881639894, 24.024871575],
    angles: [17.146830716, 28.781637668],
  },
  {
    name: "A",
    path: arc(100, [15, 20], [25, 45]),
    s: 50,
    at: [12.913099486, 7.093648276, 47.752191447],
    angles: [19.587942467, 35.550374706],
  },
  {
    name: "A",
    path: arc(100, [15, 20], [25, 45]),
    s: 75,
    at: [19.902716985, 12.622577117, 71.106203431],
    angles: [22.226507683, 40.821069716],
  },
  {
    name: "D",
    path: arc(400, [14, 20], [24, 80]),
    s: 200,
    at: [37.980133557, 32.927207725, 193.300116358],
    angles: [16.77217376, 58.345556389],
  },
];

describe("interpolatePath", () => {
  test.each(published)("[D3] case $name at $s along the arc", ({ path, s, at, angles }) => {
    const { position, tangent } = interpolatePath(path, s);
    for (const [i, value] of [position.north, position.east, position.down].entries())
      expect(Math.abs(value - at[i]!)).toBeLessThan(1e-9);
    const inclination = Math.atan2(Math.hypot(tangent.north, tangent.east), tangent.down) / degree;
    const azimuth = Math.atan2(tangent.east, tangent.north) / degree;
    expect(Math.abs(inclination - angles[0]!)).toBeLessThan(1e-9);
    expect(Math.abs(azimuth - angles[1]!)).toBeLessThan(1e-9);
  });

  test("[D3] at the stations the point is the station", () => {
    const path = arc(40, [1, 10], [3, 70]);
    for (const i of [0, 1])
      expect(interpolatePath(path, path.depthM[i]!).position).toEqual(
        ned(path.northM[i]!, path.eastM[i]!, path.downM[i]!),
      );
  });

  test("[D4] nothing is invented above the first and below the last station, nor for a missing depth", () => {
    const path = arc(40, [1, 10], [3, 70]);
    for (const depth of [-0.001, 40.001, Number.NaN, Number.POSITIVE_INFINITY])
      expect(interpolatePath(path, depth).position.north).toBeNaN();
    expect(depthAtDown(path, -1)).toBeNaN();
    expect(depthAtDown(path, 41)).toBeNaN();
    expect(depthAtDown(path, Number.NaN)).toBeNaN();
  });

  test("[D3] the depth of a level leads back to the level, and a point splits its arc without changing it", () => {
    const path = arc(60, [5, 300], [19, 20]);
    for (const down of [0.3, 17, 42.5, 57]) {
      const depth = depthAtDown(path, down);
      expect(Math.abs(interpolatePath(path, depth).position.down - down)).toBeLessThan(1e-10);
    }
    const middle = interpolatePath(path, 23);
    const ends = [interpolatePath(path, 0), middle, interpolatePath(path, 60)];
    const column = (of: "north" | "east" | "down") => Float64Array.from(ends, (end) => end.tangent[of]);
    const split = computePath(
      {
        depthM: Float64Array.of(0, 23, 60),
        north: column("north"),
        east: column("east"),
        down: column("down"),
      },
      ned(0, 0, 0),
      "minimum-curvature",
    );
    expect(Math.abs(split.northM[1]! - middle.position.north)).toBeLessThan(1e-12);
    expect(Math.abs(split.eastM[2]! - path.eastM[1]!)).toBeLessThan(1e-12);
    expect(Math.abs(split.downM[2]! - path.downM[1]!)).toBeLessThan(1e-12);
  });
});

describe("dogleg and ratio factor", () => {
  const between = (i1: number, a1: number, i2: number, a2: number) =>
    dogleg(
      tangentFromInclination(i1 * degree, a1 * degree),
      tangentFromInclination(i2 * degree, a2 * degree),
    ) / degree;

  // Exact by sin^2(b/2) = sin^2(dI/2) + sin I1 sin I2 sin^2(dA/2); acos gives 8.70682e-6 in the first.
  test.each([
    [0.5, 0, 0.5, 0.001, 8.726535498268e-6],
    [0.2, 350, 0.2, 10, 0.06945913426352],
    [15, 20, 25, 45, 12.951650724128],
    [45, 130, 52, 139, 9.705938786991],
    [4, 10, 8, 35, 4.688042708865],
    [14, 20, 24, 80, 20.673323759548],
  ])("[D1] between %f/%f and %f/%f degrees", (i1, a1, i2, a2, expected) => {
    expect(Math.abs(between(i1, a1, i2, a2) / expected - 1)).toBeLessThan(1e-10);
  });

  // Expansion 1 + b^2/12 + b^4/120 + 17 b^6/20160 and exact values at 90 and 120 degrees.
  test.each([
    [0, 1],
    [0.0001 / degree, 1.00000000083333],
    [0.25, 1.00000158655208],
    [1, 1.00002538555827],
    [5, 1.00063510328775],
    [30, 1.02349052334947],
    [60, 1.10265779084358],
    [90, 4 / Math.PI],
    [120, 1.65398668626538],
  ])("[D1] ratio factor at %f degrees", (angle, expected) => {
    expect(Math.abs(ratioFactor(angle * degree) - expected)).toBeLessThan(2e-14);
  });
});
