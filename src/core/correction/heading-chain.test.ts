import { describe, expect, test } from "vitest";
import { tangentFromInclination } from "../frames/attitude.ts";
import { earthRateGrid } from "../frames/earth.ts";
import { type NorthEastDown, ned } from "../geometry/vector.ts";
import { RADIANS_PER_DEGREE as DEG, SECONDS_PER_HOUR } from "../units/quantity.ts";
import { type ChainConstants, type ChainRows, chainHeadings } from "./heading-chain.ts";

interface Row {
  readonly timeS?: number;
  readonly turnRad?: number;
  readonly depthM: number;
  readonly tangent: NorthEastDown;
  /** heading that the tilts are read at, radians */
  readonly headingRad: number;
}

/** Rows of a probe that stands at known headings in a hole of known directions. */
function rowsOf(rows: readonly Row[], stations = rows.length): ChainRows {
  const column = (of: (row: Row) => number) => Float64Array.from(rows, of);
  const ladder = Array.from({ length: stations }, (_, i) => i);
  return {
    timeS: column((row) => row.timeS ?? 0),
    turnRad: column((row) => row.turnRad ?? 0),
    depthM: column((row) => row.depthM),
    tiltX: column(
      ({ tangent, headingRad }) => tangent.north * Math.cos(headingRad) + tangent.east * Math.sin(headingRad),
    ),
    tiltY: column(
      ({ tangent, headingRad }) => tangent.east * Math.cos(headingRad) - tangent.north * Math.sin(headingRad),
    ),
    ladder: ladder.sort((a, b) => rows[a]!.depthM - rows[b]!.depthM),
  };
}
const still: ChainConstants = {
  openingRow: 0,
  openingHeadingRad: 0.5,
  ownRateRadPerS: 0,
  earthRate: ned(0, 0, 0),
};
const noDrift = (rows: ChainRows) => new Float64Array(rows.turnRad.length);
const plumb = ned(0, 0, 1);

/**
 * Stations round a cone of half angle I. A probe that does not turn about itself gains (1 - cos I) of the azimuth that its
 * axis sweeps (Goodman & Robinson 1958, from memory).
 */
const cone = (inclinationDeg: number, sweptDeg: number, count: number, headingRad = 0.5): Row[] =>
  Array.from({ length: count + 1 }, (_, i) => {
    const swept = (sweptDeg * DEG * i) / count;
    return {
      depthM: i / 100,
      tangent: tangentFromInclination(inclinationDeg * DEG, swept),
      headingRad: headingRad + (1 - Math.cos(inclinationDeg * DEG)) * swept,
    };
  });

describe("[A4] [A5] heading carried from row to row", () => {
  test("plumb: the change of heading is the turn shown less the earth's turn and the gyro's own", () => {
    const rows = rowsOf(
      [0, 1, 2].map((i) => ({
        timeS: i * 1800,
        turnRad: [0, 0.3, -0.2][i]!,
        depthM: i,
        tangent: plumb,
        headingRad: 0,
      })),
    );
    const earthRate = earthRateGrid(51.5 * DEG, 0);
    const own = (3 * DEG) / SECONDS_PER_HOUR;
    const { headingRad, holonomyRad, earthTurnRad } = chainHeadings(
      rows,
      { ...still, earthRate, ownRateRadPerS: own },
      noDrift(rows),
    );
    // vertical rate at 51.5 N: -11.77126 degrees an hour about an axis that points down (published table)
    expect(headingRad[1]! / DEG).toBeCloseTo((0.5 + 0.3) / DEG + 11.77126 / 2 - 1.5, 5);
    expect(headingRad[2]! / DEG).toBeCloseTo((0.5 - 0.2) / DEG + 11.77126 - 3, 5);
    expect(earthTurnRad / DEG).toBeCloseTo(-11.77126, 5);
    expect(holonomyRad).toBe(0);
  });

  // Omega (cos lat sin I cos A - sin lat cos I) at 51.5 N, degrees in an hour, worked out beforehand.
  test.each([
    [2, 0, -11.437],
    [10, 0, -9.967],
    [10, 90, -11.592],
    [10, 180, -13.218],
    [20, 180, -14.264],
    [30, 45, -6.884],
  ])(
    "held for an hour at %f degrees towards %f, the earth turns the gyro by %f degrees",
    (inclination, azimuth, earth) => {
      const tangent = tangentFromInclination(inclination * DEG, azimuth * DEG);
      const rows = rowsOf(
        [0, 3600].map((timeS) => ({
          timeS,
          turnRad: (timeS / 3600) * earth * DEG,
          depthM: 4,
          tangent,
          headingRad: 0.5,
        })),
      );
      const { headingRad } = chainHeadings(
        rows,
        { ...still, earthRate: earthRateGrid(51.5 * DEG, 0) },
        noDrift(rows),
      );
      expect(Math.abs(headingRad[1]! - 0.5) / DEG).toBeLessThan(5.1e-4);
    },
  );

  test.each([
    [1, 0.055],
    [2, 0.219],
    [5, 1.37],
    [10, 5.469],
  ])(
    "once round a cone of %f degrees without turning about itself: the heading gains %f degrees",
    (inclination, gain) => {
      const rows = rowsOf(cone(inclination, 360, 2000));
      const { headingRad, north, east, holonomyRad } = chainHeadings(rows, still, noDrift(rows));
      expect(Math.abs((headingRad[2000]! - 0.5) / DEG - gain)).toBeLessThan(5.2e-4);
      expect(holonomyRad).toBeCloseTo(headingRad[2000]! - 0.5, 12);
      // half way round the axis leans south again
      expect(north[1000]).toBeCloseTo(-Math.sin(inclination * DEG), 7);
      expect(east[1000]).toBeCloseTo(0, 6);
    },
  );

  test("the way back to the top leads through the hole: there the heading is again what it was", () => {
    const down = cone(10, 200, 500);
    const back = { ...down[0]!, timeS: 0, headingRad: 0.5 };
    const rows = rowsOf([...down, back], down.length);
    const { headingRad, holonomyRad } = chainHeadings(rows, still, noDrift(rows));
    expect((headingRad[500]! - 0.5) / DEG).toBeCloseTo(200 * (1 - Math.cos(10 * DEG)), 3);
    expect(headingRad[501]).toBeCloseTo(0.5, 9);
    expect(holonomyRad).toBeCloseTo(0, 9);
  });

  test("the earth's turn of the way back is taken along the hole, not at its ends", () => {
    // plumb for 10 m, then 20 degrees south for 10 m: half the way at -11.77126, half at -14.264 degrees an hour (but for
    // the step between, 0.006 degrees)
    const leaning = tangentFromInclination(20 * DEG, Math.PI);
    const stations = Array.from({ length: 201 }, (_, i) => ({
      depthM: i / 10,
      tangent: i <= 100 ? plumb : leaning,
      headingRad: 0.5,
    }));
    const rows = rowsOf(
      [...stations, { depthM: 0, timeS: 3600, tangent: plumb, headingRad: 0.5 }],
      stations.length,
    );
    const { earthTurnRad } = chainHeadings(
      rows,
      { ...still, earthRate: earthRateGrid(51.5 * DEG, 0) },
      noDrift(rows),
    );
    expect(Math.abs(earthTurnRad / DEG + (11.77126 + 14.264) / 2)).toBeLessThan(0.01);
  });

  test("carried backwards from a heading known at the last row, every row comes out the same", () => {
    const rows = rowsOf(cone(8, 150, 60).map((row, i) => ({ ...row, timeS: i * 30, turnRad: 0 })));
    const earthRate = earthRateGrid(51.5 * DEG, 0.03);
    const forward = chainHeadings(rows, { ...still, earthRate }, noDrift(rows));
    const last = rows.turnRad.length - 1;
    const backward = chainHeadings(
      rows,
      { ...still, earthRate, openingRow: last, openingHeadingRad: forward.headingRad[last]! },
      noDrift(rows),
    );
    for (let i = 0; i <= last; i++) expect(backward.headingRad[i]).toBeCloseTo(forward.headingRad[i]!, 9);
  });

  test("a run read on the way up only gives the same directions as the hole has", () => {
    const up = [...cone(6, 120, 80)].reverse();
    const rows = rowsOf(up);
    const { north, east } = chainHeadings(
      rows,
      { ...still, openingHeadingRad: up[0]!.headingRad },
      noDrift(rows),
    );
    for (const [i, row] of up.entries()) {
      expect(north[i]).toBeCloseTo(row.tangent.north, 6);
      expect(east[i]).toBeCloseTo(row.tangent.east, 6);
    }
  });

  test("a drift that is given is taken out, at the opening row too", () => {
    const rows = rowsOf([0, 1, 2].map((i) => ({ depthM: i, tangent: plumb, headingRad: 0 })));
    const { headingRad } = chainHeadings(rows, still, Float64Array.from([0.1, 0.3, 0.4]));
    expect([...headingRad].map((value) => Math.round(value * 1e12) / 1e12)).toEqual([0.4, 0.2, 0.1]);
  });

  test("close to horizontal the chain still settles", () => {
    const rows = rowsOf(cone(85, 40, 400));
    const { north, down } = chainHeadings(rows, still, noDrift(rows));
    expect(north[400]).toBeCloseTo(Math.sin(85 * DEG) * Math.cos(40 * DEG), 4);
    expect(down[400]).toBeCloseTo(Math.cos(85 * DEG), 9);
  });

  test("from the first row whose turn is missing on nothing is known", () => {
    const rows = rowsOf(
      [0, 1, 2, 3].map((i) => ({
        depthM: i,
        turnRad: i === 2 ? Number.NaN : 0,
        tangent: plumb,
        headingRad: 0,
      })),
    );
    const { headingRad, north } = chainHeadings(rows, still, noDrift(rows));
    expect([...headingRad.subarray(0, 2)]).toEqual([0.5, 0.5]);
    expect([...headingRad.subarray(2)]).toEqual([Number.NaN, Number.NaN]);
    expect(north[3]).toBeNaN();
  });
});
