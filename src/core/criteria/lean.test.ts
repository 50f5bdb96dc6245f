import fc from "fast-check";
import { expect, test } from "vitest";
import { circularPath, pathOf, straightPath } from "../../../test/fixtures/judged-axis.ts";
import { ned } from "../geometry/vector.ts";
import { leanOfChord, segments, worstChord, worstLean, worstSegment } from "./lean.ts";

const DOWN = ned(0, 0, 1);
const TOP = ned(0, 0, 0);

/** Stations a metre apart in level, each moved aside from the one above. */
const wandering = (moves: readonly (readonly [number, number])[]) => {
  const points = [TOP];
  for (const [dn, de] of moves) {
    const above = points.at(-1)!;
    points.push(ned(above.north + dn, above.east + de, above.down + 1));
  }
  return pathOf(
    points,
    points.map((_, i) => i),
  );
};
const move = fc.double({ min: -0.05, max: 0.05, noNaN: true });
const anyPath = fc.array(fc.tuple(move, move), { minLength: 2, maxLength: 25 }).map(wandering);
const whole = (path: { count: number; depthM: Float64Array }) => ({
  fromM: path.depthM[0]!,
  toM: path.depthM[path.count - 1]!,
});

test("[F2] the worst chord leans no less than the chord to the end, and no more than the worst piece", () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      const chord = leanOfChord(path, DOWN, whole(path)).ratio;
      const every = worstChord(path, DOWN, whole(path), 1)?.ratio ?? Number.NaN;
      const piece = worstSegment(path, DOWN, whole(path))?.ratio ?? Number.NaN;
      expect(every).toBeGreaterThanOrEqual(chord);
      expect(piece).toBeGreaterThanOrEqual(every - 1e-12);
    }),
    { seed: 20261125 },
  );
});

test("[F2] along and across make up the lean", () => {
  fc.assert(
    fc.property(anyPath, (path) => {
      const range = whole(path);
      const along = leanOfChord(path, DOWN, range, ned(1, 0, 0)).ratio;
      const across = leanOfChord(path, DOWN, range, ned(0, 1, 0)).ratio;
      expect(Math.hypot(along, across)).toBeCloseTo(leanOfChord(path, DOWN, range).ratio, 12);
    }),
    { seed: 20261125 },
  );
});

test("[F2] more stations on a straight hole change nothing", () => {
  const lean = (everyM: number) => {
    const path = straightPath(TOP, ned(0.01, 0.02, 1), 12, everyM);
    return [
      leanOfChord(path, DOWN, whole(path)).ratio,
      worstChord(path, DOWN, whole(path), 1)?.ratio ?? Number.NaN,
      worstSegment(path, DOWN, whole(path), 2.5)?.ratio ?? Number.NaN,
    ];
  };
  for (const everyM of [0.5, 1, 3, 4])
    for (const ratio of lean(everyM)) expect(ratio).toBeCloseTo(Math.hypot(0.01, 0.02), 12);
});

test("[F2] a piece of a circle that starts plumb leans most at its lower end", () => {
  const path = circularPath(TOP, 200, 0.3, 20);
  const found = worstSegment(path, DOWN, whole(path), 5);
  expect(found?.ratio).toBeCloseTo(Math.tan(17.5 / 200), 9); // direction of the chord = tangent in its middle
  expect(found?.atDepthM).toBe(20);
});

test("pieces of a stated length stay inside the range", () => {
  const path = straightPath(TOP, DOWN, 10, 3); // stations 0, 3, 6, 9
  const pieces = segments(path, { fromM: 0, toM: 9 }, 4);
  expect(pieces).toEqual([
    { fromM: 0, toM: 4 },
    { fromM: 3, toM: 7 },
    { fromM: 2, toM: 6 },
    { fromM: 5, toM: 9 },
  ]);
  expect(segments(path, { fromM: 0, toM: 9 }, 10)).toEqual([]);
  expect(worstSegment(path, DOWN, { fromM: 0, toM: 9 }, 10)).toBeUndefined();
});

test("a lean that is not a number is never passed over", () => {
  const lean = (ratio: number) => ({ ratio, atDepthM: 0, atDownM: 0 });
  for (const leans of [
    [lean(Number.NaN), lean(1)],
    [lean(1), lean(Number.NaN)],
  ])
    expect(worstLean(leans)?.ratio).toBeNaN();
  expect(worstLean([])).toBeUndefined();
});
