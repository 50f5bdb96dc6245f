import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { RADIANS_PER_DEGREE as DEG } from "../units/quantity.ts";
import { zeroFromFaces } from "./face-zero.ts";
import type { Pass } from "./passes.ts";

interface Row {
  readonly face: 1 | 2;
  readonly depthM: number;
  readonly headingRad: number;
  /** readings as angles, radians */
  readonly x: number;
  readonly y: number;
  readonly direction?: "down" | "up";
}

function zeroOf(rows: readonly Row[], sameDepthM = 0.05) {
  const passes: Pass[] = [];
  for (const [i, { face, direction = "down" }] of rows.entries()) {
    const known = passes.find((pass) => pass.face === face && pass.direction === direction);
    if (known === undefined) passes.push({ direction, face, repeat: 1, rows: [i] });
    else (known.rows as number[]).push(i);
  }
  const depthM = Float64Array.from(rows, (row) => row.depthM);
  for (const pass of passes) (pass.rows as number[]).sort((a, b) => depthM[a]! - depthM[b]!);
  return zeroFromFaces(
    {
      x: Float64Array.from(rows, (row) => Math.sin(row.x)),
      y: Float64Array.from(rows, (row) => Math.sin(row.y)),
    },
    Float64Array.from(rows, (row) => row.headingRad),
    depthM,
    passes,
    sameDepthM,
  );
}

/** What a probe with a zero reads at a heading in a hole whose direction has the given north and east parts. */
function readingAt(north: number, east: number, headingRad: number, zeroX: number, zeroY: number) {
  const x = north * Math.cos(headingRad) + east * Math.sin(headingRad);
  const y = -north * Math.sin(headingRad) + east * Math.cos(headingRad);
  return { x: Math.asin(x) + zeroX, y: Math.asin(y) + zeroY };
}

describe("[B1] [C2] zero found by turning the probe", () => {
  // Two-face readings of 0.5 m gauge: 731/-699 and so on with K = 25 000; half sums 16, 17, 16.5, 15 (worked by hand).
  test("opposite faces: half the sum of the readings, whatever the lean", () => {
    const pairs: readonly (readonly [number, number])[] = [
      [731, -699],
      [702, -668],
      [688, -655],
      [655, -625],
    ];
    const rows = pairs.flatMap(([one, two], i): Row[] => [
      { face: 1, depthM: i / 2, headingRad: 0.4, x: one / 25000, y: 0.001 },
      { face: 2, depthM: i / 2, headingRad: 0.4 + Math.PI, x: two / 25000, y: 0.003 },
    ]);
    const zero = zeroOf(rows)!;
    expect(zero.stops).toBe(4);
    expect(zero.xRad).toBeCloseTo(16.125 / 25000, 8);
    expect(zero.yRad).toBeCloseTo(0.002, 8);
    expect(zero.largestRad).toBeCloseTo(1.125 / 25000, 7);
    expect(zero.largestRow).toBe(6);
  });

  test("in a 20 degree raker too the half sum of the angles comes out, not that of the sines", () => {
    const zero = zeroOf([
      { face: 1, depthM: 0, headingRad: 0, x: 20 * DEG + 0.01, y: -0.004 },
      { face: 2, depthM: 0, headingRad: Math.PI, x: -20 * DEG + 0.01, y: -0.004 },
    ])!;
    expect(zero.xRad).toBeCloseTo(0.01, 9);
    expect(zero.yRad).toBeCloseTo(-0.004, 9);
  });

  test("any turn of more than 60 degrees shows the zero that was put in (seed 31)", () => {
    const lean = fc.double({ min: -0.2, max: 0.2, noNaN: true });
    const zero = fc.double({ min: -0.01, max: 0.01, noNaN: true });
    const angle = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });
    const turn = fc.double({ min: 61 * DEG, max: 299 * DEG, noNaN: true });
    fc.assert(
      fc.property(lean, lean, zero, zero, angle, turn, (north, east, zeroX, zeroY, heading, turned) => {
        const first = readingAt(north, east, heading, zeroX, zeroY);
        const second = readingAt(north, east, heading + turned, zeroX, zeroY);
        const found = zeroOf([
          { face: 1, depthM: 3, headingRad: heading, ...first },
          { face: 2, depthM: 3, headingRad: heading + turned, ...second },
        ])!;
        expect(found.xRad).toBeCloseTo(zeroX, 7);
        expect(found.yRad).toBeCloseTo(zeroY, 7);
      }),
      { seed: 31 },
    );
  });

  test("face 2 read on the way up pairs with face 1 of the way down", () => {
    const rows: readonly Row[] = [0, 1, 2].flatMap((depthM): Row[] => [
      { face: 1, depthM, headingRad: 0, x: 0.011, y: 0.001 },
      { face: 2, depthM: depthM + 0.02, headingRad: Math.PI, x: -0.009, y: 0.001, direction: "up" },
    ]);
    const zero = zeroOf(rows)!;
    expect(zero.stops).toBe(3);
    expect(zero.xRad).toBeCloseTo(0.001, 9);
  });

  test("a stop with a missing reading says nothing; the others do", () => {
    const stop = (depthM: number, x: number): Row[] => [
      { face: 1, depthM, headingRad: 0, x, y: 0.001 },
      { face: 2, depthM, headingRad: Math.PI, x: -0.009, y: 0.001 },
    ];
    const zero = zeroOf([...stop(0, 0.011), ...stop(1, Number.NaN)])!;
    expect(zero.stops).toBe(1);
    expect(zero.xRad).toBeCloseTo(0.001, 9);
    expect(zero.scatterRad).toBeNaN();
  });

  test.each([
    ["one face only", 1, Math.PI, 0],
    ["faces that were not turned against each other", 2, 20 * DEG, 0],
    ["a heading that is missing", 2, Number.NaN, 0],
    ["faces read at other depths", 2, Math.PI, 0.2],
  ] as const)("%s: no zero", (_what, face, turned, shift) => {
    const rows: readonly Row[] = [
      { face: 1, depthM: 0, headingRad: 0, x: 0.01, y: 0 },
      { face, depthM: shift, headingRad: turned, x: -0.01, y: 0 },
    ];
    expect(zeroOf(rows)).toBeUndefined();
  });
});
