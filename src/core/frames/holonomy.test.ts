import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type NorthEastDown, ned, unit } from "../geometry/vector.ts";
import { RADIANS_PER_DEGREE as DEG } from "../units/quantity.ts";
import { tangentFromInclination } from "./attitude.ts";
import { holonomy } from "./holonomy.ts";

const tangents = fc
  .tuple(fc.double({ min: 0, max: 80, noNaN: true }), fc.double({ min: 0, max: 360, noNaN: true }))
  .map(([inclination, azimuth]) => tangentFromInclination(inclination * DEG, azimuth * DEG));
const between = (a: NorthEastDown, b: NorthEastDown, part: number) =>
  unit(
    ned(
      a.north + part * (b.north - a.north),
      a.east + part * (b.east - a.east),
      a.down + part * (b.down - a.down),
    ),
  );

describe("[A4] holonomy of the levelled frame", () => {
  test("octant: down, north, east enclose an eighth of the sphere, pi / 2", () => {
    expect(holonomy(ned(1, 0, 0), ned(0, 1, 0))).toBeCloseTo(Math.PI / 2, 15);
  });

  test("no turn where the axis moves straight through plumb, or not at all", () => {
    expect(holonomy(ned(0, 0, 1), tangentFromInclination(0.4, 1.1))).toBe(0);
    expect(holonomy(tangentFromInclination(0.3, 1), tangentFromInclination(0.3, 1))).toBeCloseTo(0, 16);
    expect(holonomy(tangentFromInclination(0.2, 1), tangentFromInclination(0.3, 1 + Math.PI))).toBeCloseTo(
      0,
      15,
    );
  });

  test("swapping the tangents changes the sign", () => {
    fc.assert(
      fc.property(tangents, tangents, (a, b) => Math.abs(holonomy(a, b) + holonomy(b, a)) < 1e-14),
      { seed: 20261 },
    );
  });

  test("adds up along a great circle: a station between two others changes nothing", () => {
    fc.assert(
      fc.property(tangents, tangents, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, part) => {
        fc.pre(a.north * b.north + a.east * b.east + a.down * b.down > -0.9);
        const middle = between(a, b, part);
        return Math.abs(holonomy(a, middle) + holonomy(middle, b) - holonomy(a, b)) < 1e-11;
      }),
      { seed: 20262 },
    );
  });

  test("turning both tangents about the vertical changes nothing", () => {
    for (const turn of [0.3, 2, -1]) {
      const plain = holonomy(tangentFromInclination(0.2, 0.4), tangentFromInclination(0.3, 0.9));
      const turned = holonomy(
        tangentFromInclination(0.2, 0.4 + turn),
        tangentFromInclination(0.3, 0.9 + turn),
      );
      expect(turned).toBeCloseTo(plain, 14);
    }
  });

  // Closed cone: 2 pi (1 - cos I) a turn, Goodman & Robinson 1958 (from memory); values computed by hand, degrees.
  test.each([
    [1, 0.055],
    [2, 0.219],
    [5, 1.37],
    [10, 5.469],
  ])("once round a cone of %f degrees: %f degrees", (inclination, degrees) => {
    const steps = 3600;
    let sum = 0;
    for (let i = 0; i < steps; i++)
      sum += holonomy(
        tangentFromInclination(inclination * DEG, (2 * Math.PI * i) / steps),
        tangentFromInclination(inclination * DEG, (2 * Math.PI * (i + 1)) / steps),
      );
    expect(Math.abs(sum / DEG - degrees)).toBeLessThan(5.1e-4);
    expect(sum).toBeCloseTo(2 * Math.PI * (1 - Math.cos(inclination * DEG)), 6);
  });

  test("NaN stays NaN", () => {
    expect(holonomy(ned(Number.NaN, 0, 1), ned(0, 0, 1))).toBeNaN();
  });
});
