import { describe, expect, test } from "vitest";
import { ned, norm, radiansFromDegrees } from "#core";
import { type HoleShape, tangentOf } from "./hole-shape.ts";
import { truePath } from "./true-path.ts";

const HOLES: readonly HoleShape[] = [
  { shape: "straight", rakeDeg: 12, bearingDeg: 213 },
  { shape: "arc", rakeDeg: 5, bearingDeg: 40, bendDegPerM: 0.3, towardsDeg: 130 },
  {
    shape: "wandering-bearing",
    rakeDeg: 15,
    bearingDeg: 300,
    amplitudeDeg: 25,
    wavelengthM: 14,
    phaseDeg: 33,
    turnDegPerM: 0.5,
  },
  {
    shape: "waves",
    rakeDeg: 1,
    bearingDeg: 77,
    waves: [
      { amplitudeDeg: 0.6, wavelengthM: 30, phaseDeg: 10, towardsDeg: 0 },
      { amplitudeDeg: 0.3, wavelengthM: 7, phaseDeg: 200, towardsDeg: 90 },
      { amplitudeDeg: 0.2, wavelengthM: 2.5, phaseDeg: 90, towardsDeg: 45 },
    ],
  },
];

describe("truePath", () => {
  test("follows a straight raker exactly", () => {
    const path = truePath({ shape: "straight", rakeDeg: 30, bearingDeg: 90 }, ned(1, 2, 3), [0, 10, 40]);
    expect(path.northM[2]).toBeCloseTo(1, 11);
    expect(path.eastM[2]).toBeCloseTo(2 + 20, 11);
    expect(path.downM[2]).toBeCloseTo(3 + 40 * Math.cos(Math.PI / 6), 11);
  });

  test("follows a quarter circle from plumb to level: radius 100 m ends at (100, 0, 100)", () => {
    const hole: HoleShape = {
      shape: "arc",
      rakeDeg: 0,
      bearingDeg: 0,
      bendDegPerM: 90 / (50 * Math.PI),
      towardsDeg: 0,
    };
    const path = truePath(hole, ned(0, 0, 0), [0, 50 * Math.PI]);
    expect(path.northM[1]).toBeCloseTo(100, 10);
    expect(path.eastM[1]).toBeCloseTo(0, 10);
    expect(path.downM[1]).toBeCloseTo(100, 10);
  });

  test("follows a helix: constant rake, bearing turning at a steady rate", () => {
    const hole: HoleShape = {
      shape: "wandering-bearing",
      rakeDeg: 10,
      bearingDeg: 0,
      amplitudeDeg: 0,
      wavelengthM: 10,
      phaseDeg: 0,
      turnDegPerM: 9,
    };
    const path = truePath(hole, ned(0, 0, 0), [0, 13, 40]);
    const [rake, rate] = [radiansFromDegrees(10), radiansFromDegrees(9)];
    expect(path.northM[1]).toBeCloseTo((Math.sin(rake) / rate) * Math.sin(13 * rate), 10);
    expect(path.eastM[1]).toBeCloseTo((Math.sin(rake) / rate) * (1 - Math.cos(13 * rate)), 10);
    expect(path.northM[2]).toBeCloseTo(0, 10);
    expect(path.downM[2]).toBeCloseTo(40 * Math.cos(rake), 10);
  });

  test.each(HOLES)("does not depend on which depths are asked: $shape", (hole) => {
    const coarse = truePath(hole, ned(0, 0, 0), [0, 60]);
    const fine = truePath(
      hole,
      ned(0, 0, 0),
      Array.from({ length: 6001 }, (_, i) => i / 100),
    );
    expect(Math.abs(coarse.northM[1]! - fine.northM[6000]!)).toBeLessThan(1e-9);
    expect(Math.abs(coarse.eastM[1]! - fine.eastM[6000]!)).toBeLessThan(1e-9);
    expect(Math.abs(coarse.downM[1]! - fine.downM[6000]!)).toBeLessThan(1e-9);
  });
});

describe("tangentOf", () => {
  test.each(HOLES)("is of unit length and bends as its differences do: $shape", (hole) => {
    const at = tangentOf(hole);
    const h = 1e-5;
    for (const depth of [0, 3.3, 17.1, 55]) {
      const { tangent, bend } = at(depth);
      const [before, after] = [at(depth - h).tangent, at(depth + h).tangent];
      expect(norm(tangent)).toBeCloseTo(1, 14);
      expect((after.north - before.north) / (2 * h)).toBeCloseTo(bend.north, 8);
      expect((after.east - before.east) / (2 * h)).toBeCloseTo(bend.east, 8);
      expect((after.down - before.down) / (2 * h)).toBeCloseTo(bend.down, 8);
    }
  });
});
