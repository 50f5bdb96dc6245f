import fc from "fast-check";
import { expect, test } from "vitest";
import { type PlanePoint, smallestCircleRadius } from "./smallest-circle.ts";

test.each<[string, PlanePoint[], number]>([
  ["one point", [[3, 4]], 0],
  [
    "two points",
    [
      [0, 0],
      [6, 8],
    ],
    5,
  ],
  [
    "the same point again and again",
    [
      [1, 1],
      [1, 1],
      [1, 1],
    ],
    0,
  ],
  [
    "points of a line",
    [
      [0, 0],
      [1, 0],
      [3, 0],
      [2, 0],
      [-1, 0],
    ],
    2,
  ],
  [
    "a right triangle: its long side is the diameter",
    [
      [0, 0],
      [3, 0],
      [0, 4],
    ],
    2.5,
  ],
  [
    "a flat triangle: its long side is the diameter",
    [
      [0, 0],
      [10, 0],
      [5, 1],
    ],
    5,
  ],
  [
    "an equilateral triangle: its outer circle",
    [
      [0, 0],
      [1, 0],
      [0.5, Math.sqrt(3) / 2],
    ],
    1 / Math.sqrt(3),
  ],
  [
    "a square with a point inside",
    [
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
      [1.2, 0.7],
    ],
    Math.SQRT2,
  ],
])("%s", (_what, points, radius) => {
  expect(smallestCircleRadius(points)).toBeCloseTo(radius, 7);
});

test("a point that is no point gives NaN", () => {
  expect(
    smallestCircleRadius([
      [0, 0],
      [Number.NaN, 1],
      [2, 2],
    ]),
  ).toBeNaN();
});

test("it is the smallest of all circles over two or three of the points that hold them all", () => {
  const coordinate = fc.double({ min: -1, max: 1, noNaN: true });
  fc.assert(
    fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 2, maxLength: 8 }), (points) => {
      expect(smallestCircleRadius(points)).toBeCloseTo(slowRadius(points), 5);
    }),
    { seed: 20261125, numRuns: 500 },
  );
});

/** The slow obvious way: a centre from every pair and every three, with the radius that holds everything; the least of all. */
function slowRadius(points: readonly PlanePoint[]): number {
  const centres: PlanePoint[] = [];
  for (const a of points)
    for (const b of points) {
      centres.push([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      for (const c of points) {
        const d = 2 * (a[0] * (b[1] - c[1]) + b[0] * (c[1] - a[1]) + c[0] * (a[1] - b[1]));
        const [aa, bb, cc] = [a, b, c].map(([x, y]) => x * x + y * y) as [number, number, number];
        const x = (aa * (b[1] - c[1]) + bb * (c[1] - a[1]) + cc * (a[1] - b[1])) / d;
        const y = (aa * (c[0] - b[0]) + bb * (a[0] - c[0]) + cc * (b[0] - a[0])) / d;
        if (Number.isFinite(x) && Number.isFinite(y)) centres.push([x, y]);
      }
    }
  return Math.min(...centres.map(([x, y]) => Math.max(...points.map((p) => Math.hypot(p[0] - x, p[1] - y)))));
}
