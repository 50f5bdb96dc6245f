import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../../test/published/segment-distance/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { closestOnSegment, closestPointsOfLines, closestPointsOfSegments } from "./closest-points.ts";
import { dot, type NorthEastDown, ned, norm, subtract } from "./vector.ts";

const point = (values: readonly number[]): NorthEastDown => ned(values[0]!, values[1]!, values[2]!);
const anyPoint = fc
  .tuple(...[0, 1, 2].map(() => fc.double({ min: -100, max: 100, noNaN: true })))
  .map((values) => point(values as number[]));

describe("closestPointsOfSegments", () => {
  test.each(published.cases)("nearly parallel segments, published case $case", (one) => {
    const [p0, p1, q0, q1] = [one.p0, one.p1, one.q0, one.q1].map(point) as [
      NorthEastDown,
      NorthEastDown,
      NorthEastDown,
      NorthEastDown,
    ];
    const { distance } = closestPointsOfSegments(p0, p1, q0, q1);
    if (one.exact === 0) expect(distance).toBeLessThanOrEqual(one.published);
    else expect(Math.abs(distance / one.exact - 1)).toBeLessThan(1e-14);
  });

  test("two raking piles cut off above where their lines meet come closest at their lower ends", () => {
    // (0, 0, z) and (1.2 - 0.01 z, 0.01 z, z), both 30 m deep: sqrt(0.9^2 + 0.3^2) = sqrt(0.9).
    const found = closestPointsOfSegments(ned(0, 0, 0), ned(0, 0, 30), ned(1.2, 0, 0), ned(0.9, 0.3, 30));
    expect(found.distance).toBeCloseTo(Math.sqrt(0.9), 12);
    expect(found.secondShare).toBe(1);
  });

  test("no sampled pair of points is closer, and the order of ends and segments does not matter", () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, anyPoint, (a0, a1, b0, b1) => {
        const found = closestPointsOfSegments(a0, a1, b0, b1);
        for (let i = 0; i <= 4; i++) {
          const share = i / 4;
          const onA = ned(
            a0.north + share * (a1.north - a0.north),
            a0.east + share * (a1.east - a0.east),
            a0.down + share * (a1.down - a0.down),
          );
          expect(closestOnSegment(onA, b0, b1).distance).toBeGreaterThanOrEqual(found.distance - 1e-9);
        }
        expect(closestPointsOfSegments(b1, b0, a0, a1).distance).toBeCloseTo(found.distance, 9);
      }),
    );
  });

  test("segments without length are points; a missing coordinate gives no distance", () => {
    const here = ned(1, 2, 3);
    expect(closestPointsOfSegments(here, here, ned(1, 2, 7), ned(1, 2, 7)).distance).toBe(4);
    expect(closestPointsOfSegments(here, here, ned(0, 0, 0), ned(0, 0, Number.NaN)).distance).toBeNaN();
    expect(
      closestPointsOfSegments(here, ned(0, Number.NaN, 0), ned(0, 0, 0), ned(1, 1, 1)).distance,
    ).toBeNaN();
  });
});

describe("closestPointsOfLines", () => {
  test("the skew pile pair of the worked example: 0.6 sqrt 2 at 60 m", () => {
    const found = closestPointsOfLines(ned(0, 0, 0), ned(0, 0, 1), ned(1.2, 0, 0), ned(1.19, 0.01, 1));
    expect(found.distance).toBeCloseTo(0.6 * Math.SQRT2, 12);
    expect(found.onFirst.down).toBeCloseTo(60, 9);
    expect(found.onSecond.down).toBeCloseTo(60, 9);
  });

  test("the connection is square to both lines", () => {
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, anyPoint, (a0, a1, b0, b1) => {
        const a = subtract(a1, a0);
        const b = subtract(b1, b0);
        fc.pre(norm(a) > 1 && norm(b) > 1);
        const cosine = dot(a, b) / (norm(a) * norm(b));
        fc.pre(Math.abs(cosine) < 0.999);
        const { onFirst, onSecond } = closestPointsOfLines(a0, a1, b0, b1);
        const across = subtract(onSecond, onFirst);
        expect(Math.abs(dot(across, a)) / norm(a)).toBeLessThan(1e-7);
        expect(Math.abs(dot(across, b)) / norm(b)).toBeLessThan(1e-7);
      }),
    );
  });

  test("parallel lines: distance from the first point", () => {
    const found = closestPointsOfLines(ned(0, 0, 0), ned(0, 0, 10), ned(3, 4, 5), ned(3, 4, 6));
    expect(found.distance).toBe(5);
    expect(found.secondShare).toBe(-5);
  });

  test("throws ContractError when a line has no direction; a missing coordinate gives no distance", () => {
    const here = ned(0, 0, 0);
    expect(() => closestPointsOfLines(here, here, ned(1, 0, 0), ned(2, 0, 0))).toThrow(ContractError);
    expect(closestPointsOfLines(here, ned(Number.NaN, 0, 1), ned(1, 0, 0), ned(2, 0, 0)).distance).toBeNaN();
  });
});

describe("closestOnSegment", () => {
  test.each([
    ["beside it", ned(3, 4, 5), 0.5, 5],
    ["above it", ned(0, 3, -4), 0, 5],
    ["below it", ned(3, 0, 14), 1, 5],
  ])("a point %s", (_where, here, share, distance) => {
    const found = closestOnSegment(here, ned(0, 0, 0), ned(0, 0, 10));
    expect(found.share).toBe(share);
    expect(found.distance).toBe(distance);
  });
});
