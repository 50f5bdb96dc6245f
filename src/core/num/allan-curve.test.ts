import { describe, expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { allanCurve, averagingFactors } from "./allan-curve.ts";
import { allanDeviation } from "./allan-deviation.ts";
import { readAllanTerms } from "./allan-terms.ts";
import { fillNormals } from "./random-stream.ts";

/** White rate noise of one unit a sample; optionally a random walk of the rate on top. */
function noise(seed: number, count: number, walkStep = 0): Float64Array {
  const white = new Float64Array(count);
  const steps = new Float64Array(count);
  fillNormals({ seed, stream: 0 }, 0, white);
  fillNormals({ seed, stream: 1 }, 0, steps);
  let walk = 0;
  return white.map((value, i) => {
    walk += walkStep * steps[i]!;
    return value + walk;
  });
}

describe("allanCurve", () => {
  test("averaging factors are whole, spread evenly and none twice", () => {
    expect([...averagingFactors(100, 4)]).toEqual([1, 2, 3, 6, 10, 18, 32, 56, 100]);
    expect([...averagingFactors(1, 8)]).toEqual([1]);
  });

  test("each point is the Allan deviation at its averaging time", () => {
    const rates = noise(3, 500);
    const curve = allanCurve(rates, 0.5, { estimator: "modified", perDecade: 3 });
    expect(curve.count).toBeGreaterThan(5);
    for (let i = 0; i < curve.count; i++) {
      const m = curve.averagingTimeS[i]! / 0.5;
      expect(curve.deviation[i]).toBe(allanDeviation(rates, m, "modified").deviation);
      expect(m).toBeLessThanOrEqual(500 / 3);
    }
  });

  test("[B3] the true deviation of white noise lies inside the 95 % interval about as often as stated", () => {
    let inside = 0;
    let all = 0;
    for (let seed = 0; seed < 60; seed++) {
      const curve = allanCurve(noise(seed, 1000), 1, { confidence: 0.95, perDecade: 3 });
      for (let i = 0; i < curve.count; i++) {
        const truth = 1 / Math.sqrt(curve.averagingTimeS[i]!);
        all++;
        if (curve.lower[i]! <= truth && truth <= curve.upper[i]!) inside++;
      }
    }
    expect(inside / all).toBeGreaterThan(0.93);
  });

  test("throws ContractError for a record that is too short or makes no sense", () => {
    expect(() => allanCurve(new Float64Array(5), 1)).toThrow(ContractError);
    expect(() => allanCurve(Float64Array.of(1, 2, 3, 4, 5, Number.NaN), 1)).toThrow(ContractError);
    expect(() => allanCurve(new Float64Array(10), 0)).toThrow(ContractError);
    expect(() => allanCurve(new Float64Array(10), 1, { confidence: 1 })).toThrow(ContractError);
  });
});

describe("readAllanTerms", () => {
  test("[B3] white noise: N is sigma times root spacing, the floor is not reached", () => {
    for (let seed = 0; seed < 5; seed++) {
      const terms = readAllanTerms(allanCurve(noise(seed, 20_000), 0.25));
      expect(Math.abs(terms.randomWalk / 0.5 - 1), `seed ${seed}`).toBeLessThan(0.05);
      expect(Math.abs(terms.randomWalkSlope + 0.5), `seed ${seed}`).toBeLessThan(0.1);
      expect(terms.floor).toBeLessThan(0.05);
    }
    const short = readAllanTerms(allanCurve(noise(1, 200), 1));
    expect(short.floorReached).toBe(false);
    expect(short.rateRandomWalk).toBeNaN();
    expect(short.firstRising).toBeUndefined();
  });

  test("[B3] with a random walk K of the rate the floor lies near sqrt(2 N K / sqrt 3), at sqrt(3) N / K", () => {
    const step = 0.01; // K in rate per root second at one sample a second; N is 1
    for (let seed = 0; seed < 5; seed++) {
      const terms = readAllanTerms(allanCurve(noise(seed, 40_000, step), 1));
      expect(Math.abs(terms.randomWalk - 1), `seed ${seed}`).toBeLessThan(0.1);
      expect(Math.abs(terms.floor / Math.sqrt((2 * step) / Math.sqrt(3)) - 1), `seed ${seed}`).toBeLessThan(
        0.2,
      );
      expect(terms.floorReached).toBe(true);
      expect(terms.floorTimeS).toBeGreaterThan(40);
      expect(terms.floorTimeS).toBeLessThan(700);
      expect(Math.abs(terms.rateRandomWalk / step - 1), `seed ${seed}`).toBeLessThan(0.35);
      expect(terms.biasInstability / terms.floor).toBeCloseTo(1 / 0.664, 2);
    }
  });
});
