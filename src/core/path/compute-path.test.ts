import { readFileSync } from "node:fs";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { tangentFromInclination } from "../frames/attitude.ts";
import type { TangentProfile } from "../frames/tangent-profile.ts";
import { ned } from "../geometry/vector.ts";
import { computePath } from "./compute-path.ts";
import type { HolePath } from "./hole-path.ts";
import { PATH_METHODS, type PathMethodId } from "./path-method.ts";

const degree = Math.PI / 180;

/** Tangents from depth, inclination and azimuth in degrees. */
function profileOf(stations: readonly (readonly [number, number, number])[]): TangentProfile {
  const tangents = stations.map(([, inclination, azimuth]) =>
    tangentFromInclination(inclination * degree, azimuth * degree),
  );
  return {
    depthM: Float64Array.from(stations, ([depth]) => depth),
    north: Float64Array.from(tangents, (t) => t.north),
    east: Float64Array.from(tangents, (t) => t.east),
    down: Float64Array.from(tangents, (t) => t.down),
  };
}

const endOf = (path: HolePath): number[] => [path.northM, path.eastM, path.downM].map((axis) => axis.at(-1)!);
const origin = ned(0, 0, 0);

interface PublishedCase {
  readonly case: string;
  readonly method: string;
  readonly status: string;
  readonly [column: string]: string;
}
const cases = Papa.parse<PublishedCase>(
  readFileSync(new URL("../../../test/published/path-methods/cases.csv", import.meta.url), "utf8"),
  { header: true, comments: "#", skipEmptyLines: true },
).data;

describe("computePath", () => {
  test("the published cases are all there", () => {
    expect(cases).toHaveLength(20);
  });

  test.each(cases.map((row) => [`${row.case} ${row.method}`, row] as const))(
    "[D1] [D2] case %s agrees with the printed values and with a second computation",
    (_name, row) => {
      const number = (column: string) => Number.parseFloat(row[column]!);
      const profile = profileOf([
        [0, number("I1"), number("A1")],
        [number("L"), number("I2"), number("A2")],
      ]);
      const end = endOf(computePath(profile, origin, row.method.replaceAll("_", "-") as PathMethodId));
      ["N", "E", "V"].forEach((axis, i) => {
        expect(Math.abs(end[i]! - number(`calc_${axis}`)), `calc ${axis}`).toBeLessThan(1e-6);
        const printed = number(`pub_${axis}`);
        const misprint = row.status.includes(`${axis} MISPRINT`);
        if (Number.isFinite(printed) && !misprint)
          expect(Math.abs(end[i]! - printed), `printed ${axis}`).toBeLessThan(0.0101);
      });
    },
  );

  test.each([
    ["tangential", 348.9335, 93.7395, 5066.7364],
    ["balanced-tangential", 302.2514, 116.709, 5076.4216],
    ["average-angle", 304.666, 122.8575, 5077.4675],
    ["radius-of-curvature", 303.6852, 122.7959, 5077.1188],
    ["minimum-curvature", 302.5058, 116.7138, 5077.5178],
  ] as const)(
    "[D2] case E, four stations through north by %s (inputs: Texas A&M PETE 661 homework 8; values by a second computation)",
    (method, north, east, down) => {
      const stations = [
        [4100, 4, 30],
        [4400, 7, 12],
        [4700, 12, 12],
        [5200, 18, 350],
      ] as const;
      const end = endOf(computePath(profileOf(stations), ned(100, 100, 4000), method));
      for (const [i, value] of [north, east, down].entries())
        expect(Math.abs(end[i]! - value)).toBeLessThan(5.1e-5);
    },
  );

  test("[D1] a quarter circle of radius 100 ends at (100, 0, 100), turned by 30 degrees at (86.60, 50, 100)", () => {
    const straight = computePath(
      profileOf([
        [0, 0, 0],
        [50 * Math.PI, 90, 0],
      ]),
      origin,
      "minimum-curvature",
    );
    const turned = computePath(
      profileOf([
        [0, 0, 30],
        [50 * Math.PI, 90, 30],
      ]),
      origin,
      "minimum-curvature",
    );
    for (const [i, value] of [100, 0, 100].entries()) expect(endOf(straight)[i]!).toBeCloseTo(value, 10);
    for (const [i, value] of [50 * Math.sqrt(3), 50, 100].entries())
      expect(endOf(turned)[i]!).toBeCloseTo(value, 10);
  });

  test("[D1] closed forms of a build, hold and drop-in profile (plumb 1200, to 60/75 at 2100, hold to 5100, to 90/75 at 5400, to 8000)", () => {
    const stations = [
      [0, 0, 0],
      [1200, 0, 0],
      [2100, 60, 75],
      [5100, 60, 75],
      [5400, 90, 75],
      [8000, 90, 75],
    ] as const;
    const path = computePath(profileOf(stations), origin, "minimum-curvature");
    // exact: arcs of radius 900/(pi/3) and 300/(pi/6), lines at 60 and 90 degrees
    const lateral = [0, 0, (2700 / Math.PI) * 0.5];
    lateral.push(lateral[2]! + 3000 * Math.sin(60 * degree));
    lateral.push(lateral[3]! + (1800 / Math.PI) * Math.cos(60 * degree));
    lateral.push(lateral[4]! + 2600);
    lateral.forEach((value, i) => {
      expect(path.northM[i]!).toBeCloseTo(value * Math.cos(75 * degree), 8);
      expect(path.eastM[i]!).toBeCloseTo(value * Math.sin(75 * degree), 8);
    });
    expect(path.downM[2]!).toBeCloseTo(1200 + (2700 / Math.PI) * Math.sin(60 * degree), 8);
  });

  test.each(PATH_METHODS)("[A3] a plumb hole stays plumb by %s whatever the azimuths say", (method) => {
    const path = computePath(
      profileOf([
        [0, 0, 10],
        [7, 0, 200],
        [19, 0, 355],
      ]),
      origin,
      method,
    );
    expect(endOf(path)).toEqual([0, 0, 19]);
  });

  test("[D1] the list read backwards leads back to the start to a nanometre", () => {
    const stations = [
      [0, 2, 10],
      [5, 3, 40],
      [11, 6, 350],
      [20, 4, 300],
      [26, 9, 250],
    ] as const;
    const down = profileOf(stations);
    const forth = computePath(down, origin, "minimum-curvature");
    const reversed: TangentProfile = {
      depthM: down.depthM.map((_, i) => 26 - down.depthM[down.depthM.length - 1 - i]!),
      north: Float64Array.from(down.north, (v) => -v).reverse(),
      east: Float64Array.from(down.east, (v) => -v).reverse(),
      down: Float64Array.from(down.down, (v) => -v).reverse(),
    };
    const [north, east, deep] = endOf(forth);
    const back = endOf(computePath(reversed, ned(north!, east!, deep!), "minimum-curvature"));
    for (const value of back) expect(Math.abs(value)).toBeLessThan(1e-9);
  });

  test("a missing tangent makes everything below it missing, never 0", () => {
    const profile = profileOf([
      [0, 1, 0],
      [1, Number.NaN, 0],
      [2, 1, 0],
      [3, 1, 0],
    ]);
    const { northM, downM } = computePath(profile, origin, "minimum-curvature");
    expect([...northM].map(Number.isNaN)).toEqual([false, true, true, true]);
    expect([...downM].map(Number.isNaN)).toEqual([false, true, true, true]);
  });

  test("depths that do not increase are a mistake of the caller", () => {
    expect(() =>
      computePath(
        profileOf([
          [0, 1, 0],
          [0, 1, 0],
        ]),
        origin,
        "tangential",
      ),
    ).toThrow("computePath: depth 0 follows 0");
  });
});
