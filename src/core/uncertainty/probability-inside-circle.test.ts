import fc from "fast-check";
import { describe, expect, test } from "vitest";
import published from "../../../test/published/offset-circle/case.json" with { type: "json" };
import { marcumQ } from "../num/marcum-q.ts";
import { normalBetween } from "../num/normal.ts";
import { ContractError } from "../result.ts";
import { probabilityInsideCircle } from "./probability-inside-circle.ts";
import { probabilityBelow } from "./probability-of-value.ts";

const diagonal = (sigmaN: number, sigmaE: number) => ({ nn: sigmaN ** 2, ne: 0, ee: sigmaE ** 2 });
const offset = (north: number, east: number) => ({ north, east });

describe("probabilityInsideCircle", () => {
  test("[E5] the published table of equal spreads", () => {
    for (const { radius, distance, probability } of published.equalSigma)
      expect(
        Math.abs(probabilityInsideCircle(offset(0, distance), diagonal(1, 1), radius) - probability),
        `${radius} ${distance}`,
      ).toBeLessThan(5.1e-7);
    expect(published.equalSigma.length).toBe(63);
  });

  test.each(published.general)("[E5] radius $radius, offset $mean, spreads $sigma", (one) => {
    const [north, east] = one.mean as [number, number];
    const [sigmaN, sigmaE] = one.sigma as [number, number];
    const found = probabilityInsideCircle(offset(north, east), diagonal(sigmaN, sigmaE), one.radius);
    expect(Math.abs(found - one.probability)).toBeLessThan(5.1e-10);
  });

  test("[E5] the published tables of unequal spreads about the centre, down to no spread at all across", () => {
    for (const { radius, ratio, probability } of published.probabilityByRatio) {
      const found = probabilityInsideCircle(offset(0, 0), diagonal(ratio, 1), radius);
      expect(Math.abs(found - probability), `${radius} ${ratio}`).toBeLessThan(5.1e-7);
    }
    for (const { radius, ratio, probability } of published.radiusByRatio) {
      const found = probabilityInsideCircle(offset(0, 0), diagonal(1, ratio), radius);
      expect(Math.abs(found - probability), `${probability} ${ratio}`).toBeLessThan(5e-6);
    }
    for (const [i, radius] of published.harter.entries()) {
      const found = probabilityInsideCircle(offset(0, 0), diagonal(1, i / 10), radius);
      expect(Math.abs(found - 0.5)).toBeLessThan(1e-5);
    }
  });

  test("[E5] plan allowance of 75 mm: the circle gives less than the straight line", () => {
    for (const { distance, sigma, probability, straight } of published.plan) {
      const found = probabilityInsideCircle(offset(distance, 0), diagonal(sigma, sigma), 75);
      expect(Math.abs(found - probability)).toBeLessThan(5.1e-6);
      if (straight !== null) {
        expect(Math.abs(probabilityBelow(distance, sigma, 75) - straight)).toBeLessThan(5.1e-6);
        expect(found).toBeLessThan(straight);
      }
    }
    for (const { sigma, distance } of published.acceptanceRadius)
      expect(probabilityInsideCircle(offset(distance, 0), diagonal(sigma, sigma), 75)).toBeCloseTo(0.95, 4);
    const { anisotropic, toe } = published;
    const across = probabilityInsideCircle(offset(48, 36), diagonal(15, 5), anisotropic.radius);
    expect(across).toBeCloseTo(anisotropic.probability, 6);
    const found = probabilityInsideCircle(
      offset(toe.distance, 0),
      diagonal(toe.sigma, toe.sigma),
      toe.radius,
    );
    expect(found).toBeCloseTo(toe.probability, 5);
    expect(probabilityBelow(toe.distance, toe.sigma, toe.radius)).toBeCloseTo(toe.straight, 5);
  });

  const length = fc.double({ min: 0, max: 3, noNaN: true });
  const spread = fc.double({ min: 0.01, max: 3, noNaN: true });

  test("[E5] equal spreads agree with Marcum's Q", () => {
    fc.assert(
      fc.property(length, spread, length, (distance, sigma, radius) => {
        const found = probabilityInsideCircle(offset(distance, 0), diagonal(sigma, sigma), radius);
        expect(Math.abs(found - marcumQ(1, distance / sigma, radius / sigma).lower)).toBeLessThan(1e-10);
      }),
    );
  });

  test("[E5] turning offset and covariance together changes nothing", () => {
    const angle = fc.double({ min: -4, max: 4, noNaN: true });
    fc.assert(
      fc.property(length, length, spread, spread, angle, (north, east, a, b, turn) => {
        const [c, s] = [Math.cos(turn), Math.sin(turn)];
        const turned = {
          nn: (a * c) ** 2 + (b * s) ** 2,
          ne: (a * a - b * b) * c * s,
          ee: (a * s) ** 2 + (b * c) ** 2,
        };
        const still = probabilityInsideCircle(offset(north, east), diagonal(a, b), 1.5);
        const moved = probabilityInsideCircle(
          offset(north * c - east * s, north * s + east * c),
          turned,
          1.5,
        );
        expect(Math.abs(moved - still)).toBeLessThan(1e-9);
      }),
    );
  });

  test("[E5] a vanishing spread goes over into the line and the point without a step", () => {
    const straight = normalBetween((-0.8 - 0.3) / 2, (0.8 - 0.3) / 2); // chord of the unit circle at 0.6
    for (const sigma of [0, 1e-12, 1e-9, 1e-7, 1e-5])
      expect(
        Math.abs(probabilityInsideCircle(offset(0.3, 0.6), diagonal(2, sigma), 1) - straight),
      ).toBeLessThan(1e-9);
    expect(probabilityInsideCircle(offset(0.3, 0.6), diagonal(0, 0), 1)).toBe(1);
    expect(probabilityInsideCircle(offset(0.9, 0.6), diagonal(0, 0), 1)).toBe(0);
    expect(probabilityInsideCircle(offset(0, 1.1), diagonal(2, 0), 1)).toBe(0);
    expect(probabilityInsideCircle(offset(0.3, 0.6), diagonal(1e-6, 1e-6), 1)).toBeCloseTo(1, 12);
  });

  test("[E5] a narrow spread is never missed (seeded loop over places and widths)", () => {
    for (let i = 0; i < 200; i++) {
      const sigma = 10 ** (-1 - (i % 7));
      const distance = 0.999 * ((i * 0.618034) % 1);
      const found = probabilityInsideCircle(offset(distance, 0), diagonal(sigma, sigma), 1);
      expect(Math.abs(found - marcumQ(1, distance / sigma, 1 / sigma).lower), `${i}`).toBeLessThan(1e-10);
    }
  });

  test("a missing number is never a probability; a negative radius is a mistake", () => {
    expect(probabilityInsideCircle(offset(Number.NaN, 0), diagonal(1, 1), 1)).toBeNaN();
    expect(probabilityInsideCircle(offset(0, 0), diagonal(Number.NaN, 1), 1)).toBeNaN();
    expect(probabilityInsideCircle(offset(0, 0), diagonal(1, 1), Number.NaN)).toBeNaN();
    expect(probabilityInsideCircle(offset(0, 0), diagonal(1, 1), 0)).toBe(0);
    expect(() => probabilityInsideCircle(offset(0, 0), diagonal(1, 1), -1)).toThrow(ContractError);
  });
});
