import { describe, expect, test } from "vitest";
import published from "../../../test/published/error-propagation/case.json" with { type: "json" };
import type { HolePath } from "../path/hole-path.ts";
import { RADIANS_PER_DEGREE as DEG, SECONDS_PER_HOUR } from "../units/quantity.ts";
import { effectsAt, type HeadingWalk, type StopErrors } from "./random-effects.ts";

/** A straight hole with stations every so many metres. */
function straight(intervals: number, intervalM: number, rakeRad = 0, bearingRad = 0): HolePath {
  const column = (perM: number) =>
    Float64Array.from({ length: intervals + 1 }, (_, i) => i * intervalM * perM);
  const all = (value: number) => new Float64Array(intervals + 1).fill(value);
  const [north, east] = [Math.sin(rakeRad) * Math.cos(bearingRad), Math.sin(rakeRad) * Math.sin(bearingRad)];
  return {
    count: intervals + 1,
    depthM: column(1),
    northM: column(north),
    eastM: column(east),
    downM: column(Math.cos(rakeRad)),
    tangentNorth: all(north),
    tangentEast: all(east),
    tangentDown: all(Math.cos(rakeRad)),
  };
}

function errorsOf(path: HolePath, changes: Partial<StopErrors>): StopErrors {
  const none = () => new Float64Array(path.count);
  return {
    tangent: [],
    depthM: none(),
    walk: undefined,
    carriedTop: false,
    hidden: { north: none(), east: none(), down: none() },
    ...changes,
  };
}

/** Standard deviations north, east and down of a station. */
function spread(path: HolePath, changes: Partial<StopErrors>, station = path.count - 1) {
  const sums = [0, 0, 0];
  for (const { values } of effectsAt(path, errorsOf(path, changes), station))
    values.forEach((value, i) => {
      sums[i % 3]! += value * value;
    });
  return { north: Math.sqrt(sums[0]!), east: Math.sqrt(sums[1]!), down: Math.sqrt(sums[2]!) };
}

const everywhere = (path: HolePath, standard: number) => new Float64Array(path.count).fill(standard);

describe("[E2] directions", () => {
  const { intervals, intervalM, standardRad } = published.chance;
  const plumb = straight(intervals, intervalM);

  test("noise of every reading: s h sqrt(n - 1/2)", () => {
    const tangent = [
      { source: "tilt-noise" as const, standard: everywhere(plumb, standardRad), acts: "both" as const },
    ];
    const found = spread(plumb, { tangent });
    expect(Math.abs(found.north - published.trapezoidM)).toBeLessThan(5e-9);
    expect(found.east).toBeCloseTo(found.north, 15);
    expect(found.down).toBe(0);
  });

  test("an inclination moves a hole along its lean, an azimuth across it", () => {
    const raked = straight(20, 1, 30 * DEG, 90 * DEG);
    const only = (acts: "lean" | "across") =>
      spread(raked, {
        tangent: [{ source: "inclination-noise", standard: everywhere(raked, standardRad), acts }],
      });
    const size = standardRad * Math.sqrt(19.5);
    expect(only("lean").north).toBeCloseTo(0, 15);
    expect(only("lean").east).toBeCloseTo(size * Math.cos(30 * DEG), 12);
    expect(only("lean").down).toBeCloseTo(size * Math.sin(30 * DEG), 12);
    expect(only("across").north).toBeCloseTo(size, 12);
    expect(only("across").east).toBeCloseTo(0, 15);
    expect(only("across").down).toBe(0);
  });

  test("a plumb hole has no lean: an inclination may move it anywhere", () => {
    const tangent = [
      {
        source: "inclination-noise" as const,
        standard: everywhere(plumb, standardRad),
        acts: "lean" as const,
      },
    ];
    expect(spread(plumb, { tangent }).north).toBeCloseTo(spread(plumb, { tangent }).east, 15);
  });

  test("an unread top moves with the direction of the first stop", () => {
    const path = straight(2, 1);
    const standard = Float64Array.of(0, standardRad, 0);
    const tangent = [{ source: "tilt-noise" as const, standard, acts: "both" as const }];
    // half of each interval beside it, and the other half of the unread one
    expect(spread(path, { tangent, carriedTop: true }).north).toBeCloseTo(1.5 * standardRad, 15);
  });
});

describe("[E2] depths", () => {
  const raked = straight(10, 1, 30 * DEG, 0);

  test("in a straight hole only the depth of the point itself moves it, along the hole", () => {
    const found = spread(raked, { depthM: everywhere(raked, 0.01) });
    expect(found.north).toBeCloseTo(0.01 * Math.sin(30 * DEG), 12);
    expect(found.down).toBeCloseTo(0.01 * Math.cos(30 * DEG), 12);
  });

  test("the first station's own depth moves nothing: the path starts at the top whatever was read there", () => {
    const depthM = new Float64Array(11);
    depthM[0] = 0.01;
    expect(spread(raked, { depthM }).down).toBe(0);
  });
});

describe("[C4] walk of a heading", () => {
  const { downM, rakeDeg, walkDegPerRootH, hours } = published.walk;
  const walk = (walkDegPerRootH * DEG) / Math.sqrt(SECONDS_PER_HOUR);
  const wholeS = hours * SECONDS_PER_HOUR;
  const stops = 600;
  const raked = straight(stops, downM / Math.cos(rakeDeg * DEG) / stops, rakeDeg * DEG);
  const read = (toS: number | undefined): HeadingWalk => ({
    walk,
    fromS: 0,
    toS,
    voices: Array.from({ length: stops + 1 }, (_, station) => ({
      station,
      timeS: (station / stops) * wholeS,
      share: 1,
    })),
  });

  test("free: 7.93 mm across after an hour in 30 m at 5 degrees", () => {
    expect(Math.abs(spread(raked, { walk: read(undefined) }).east / published.freeM - 1)).toBeLessThan(1e-3);
    expect(spread(raked, { walk: read(undefined) }).north).toBeCloseTo(0, 15);
  });

  test("tied at both ends: 3.97 mm", () => {
    expect(Math.abs(spread(raked, { walk: read(wholeS) }).east / published.bridgeM - 1)).toBeLessThan(1e-3);
  });

  /** Heading of a single stop read at a time, degrees: what moves a hole of 2 m, half of which that stop stands for. */
  const headingAt = (timeS: number, fromS: number, toS: number | undefined): number => {
    const path = straight(1, 2, rakeDeg * DEG);
    const voices = [{ station: 1, timeS, share: 1 }];
    return spread(path, { walk: { walk, fromS, toS, voices } }).east / Math.sin(rakeDeg * DEG) / DEG;
  };

  test.each(published.bridge)("tied at both ends, $part of the way: $deg degrees", ({ part, deg }) => {
    expect(Math.abs(headingAt(part * wholeS, 0, wholeS) - deg)).toBeLessThan(5.1e-6);
  });

  test("nothing is off at a known heading; before the first and after the last one it walks on", () => {
    expect(headingAt(0, 0, wholeS)).toBe(0);
    expect(headingAt(wholeS, 0, wholeS)).toBeCloseTo(0, 15);
    // W(t) - t / T W(T) for t = 1.5 T: variance N^2 t (t - T) / T
    expect(headingAt(1.5 * wholeS, 0, wholeS)).toBeCloseTo(walkDegPerRootH * Math.sqrt(0.75), 10);
    // only a heading known at the end: backwards from there
    expect(headingAt(0, wholeS, undefined)).toBeCloseTo(walkDegPerRootH, 10);
  });
});
