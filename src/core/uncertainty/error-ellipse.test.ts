import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../../test/published/confidence-regions/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { coverageFactor, errorEllipse } from "./error-ellipse.ts";

describe("errorEllipse", () => {
  test("undoes an ellipse made from its axes and azimuth", () => {
    const length = fc.double({ min: 0.001, max: 10, noNaN: true });
    fc.assert(
      fc.property(length, length, fc.double({ min: 0, max: 3.14, noNaN: true }), (first, second, azimuth) => {
        const [a, b] = [Math.max(first, second) * 1.01, Math.min(first, second)];
        const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
        const found = errorEllipse({
          nn: (a * c) ** 2 + (b * s) ** 2,
          ne: (a * a - b * b) * c * s,
          ee: (a * s) ** 2 + (b * c) ** 2,
        });
        expect(found.semiMajor).toBeCloseTo(a, 10);
        expect(found.semiMinor).toBeCloseTo(b, 6);
        // Directions, so a turn by pi is the same one.
        const apart = Math.sin(found.majorAzimuth - azimuth);
        expect(Math.abs(apart) * (1 - (b / a) ** 2)).toBeLessThan(1e-9);
      }),
    );
  });

  test.each([
    ["north", { nn: 4, ne: 0, ee: 1 }, 0],
    ["east", { nn: 1, ne: 0, ee: 4 }, Math.PI / 2],
    ["north-east", { nn: 2, ne: 1, ee: 2 }, Math.PI / 4],
    ["north-west", { nn: 2, ne: -1, ee: 2 }, (3 * Math.PI) / 4],
    ["nowhere, a circle", { nn: 1, ne: 0, ee: 1 }, 0],
  ])("the major axis points %s", (_where, covariance, azimuth) => {
    expect(errorEllipse(covariance).majorAzimuth).toBeCloseTo(azimuth, 12);
  });

  test("a line and a point are ellipses too; a missing value has none; a negative variance is a mistake", () => {
    expect(errorEllipse({ nn: 1, ne: 1, ee: 1 })).toMatchObject({ semiMajor: Math.SQRT2, semiMinor: 0 });
    expect(errorEllipse({ nn: 0, ne: 0, ee: 0 })).toEqual({ semiMajor: 0, semiMinor: 0, majorAzimuth: 0 });
    expect(errorEllipse({ nn: Number.NaN, ne: 0, ee: 1 }).semiMinor).toBeNaN();
    expect(() => errorEllipse({ nn: 1, ne: 2, ee: 1 })).toThrow(ContractError);
    expect(() => errorEllipse({ nn: -1, ne: 0, ee: -1 })).toThrow(ContractError);
  });
});

describe("coverageFactor", () => {
  test.each(published.factors)("probability $probability", ({ probability, k }) => {
    for (const dimensions of [1, 2, 3] as const)
      expect(Math.abs(coverageFactor(probability, dimensions) - k[dimensions - 1]!)).toBeLessThanOrEqual(
        1e-4,
      );
  });

  test.each(published.ellipse95)("95 %% ellipse, variance from $degreesOfFreedom degrees", (row) => {
    expect(Math.abs(coverageFactor(0.95, 2, row.degreesOfFreedom) - row.k)).toBeLessThanOrEqual(5.001e-5);
  });

  test("throws ContractError without a probability", () => {
    expect(() => coverageFactor(1, 2)).toThrow(ContractError);
    expect(() => coverageFactor(Number.NaN, 2)).toThrow(ContractError);
  });
});
