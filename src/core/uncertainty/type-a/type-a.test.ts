import { describe, expect, test } from "vitest";
import { allanCurve } from "../../num/allan-curve.ts";
import { fillNormals } from "../../num/random-stream.ts";
import { ContractError } from "../../result.ts";
import { fromAllanCurve } from "./from-allan-curve.ts";
import { type Closure, fromClosures, testClosures } from "./from-closures.ts";
import { fromDoubleRuns } from "./from-double-runs.ts";
import { fromFaceSums } from "./from-face-sums.ts";

const TRIALS = 2000;

/** Independent standard normal numbers. */
function normals(seed: number, count: number): Float64Array {
  const values = new Float64Array(count);
  fillNormals({ seed, stream: 11 }, 0, values);
  return values;
}

/** Mean of the squares over many trials, and their variance over the square of it. */
function trialsOf(value: (seed: number) => number): { mean: number; relativeVariance: number } {
  const squares = Array.from({ length: TRIALS }, (_, seed) => value(seed) ** 2);
  const mean = squares.reduce((sum, each) => sum + each, 0) / TRIALS;
  const variance = squares.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (TRIALS - 1);
  return { mean, relativeVariance: variance / mean ** 2 };
}

describe("fromDoubleRuns", () => {
  test("[D5] closed form: differences 1, -2, 3 give sqrt(14 / 6) with 3 degrees of freedom", () => {
    expect(fromDoubleRuns([1, -2, 3])).toEqual({
      value: Math.sqrt(14 / 6),
      degreesOfFreedom: 3,
      from: "double-runs",
    });
  });

  test(`[D5] of simulated double runs the variance comes out right, with n degrees of freedom (seeds 0 to ${TRIALS - 1})`, () => {
    const n = 12;
    const found = trialsOf((seed) => {
      const noise = normals(seed, 2 * n);
      return fromDoubleRuns(Array.from({ length: n }, (_, i) => noise[2 * i]! - noise[2 * i + 1]!))!.value;
    });
    expect(Math.abs(found.mean - 1)).toBeLessThan(4 * Math.sqrt(2 / n / TRIALS));
    expect(Math.abs(found.relativeVariance / (2 / n) - 1)).toBeLessThan(0.2);
  });

  test("missing stations are left out; nothing known gives nothing", () => {
    expect(fromDoubleRuns([3, Number.NaN, 3])?.degreesOfFreedom).toBe(2);
    expect(fromDoubleRuns([Number.NaN])).toBeUndefined();
  });
});

describe("fromFaceSums", () => {
  test("[C2] closed form: sums 1, 3 scatter by sqrt 2, one reading by 1; a common zero plays no part", () => {
    expect(fromFaceSums([1, 3])?.value).toBeCloseTo(1, 14);
    expect(fromFaceSums([101, 103])?.value).toBeCloseTo(1, 12);
    expect(fromFaceSums([1, 3])).toMatchObject({ degreesOfFreedom: 1, from: "face-sums" });
  });

  test(`[C2] of simulated faces the variance of one reading comes out right, n - 1 degrees (seeds 0 to ${TRIALS - 1})`, () => {
    const n = 15;
    const found = trialsOf((seed) => {
      const noise = normals(seed, 2 * n);
      return fromFaceSums(Array.from({ length: n }, (_, i) => 5 + noise[2 * i]! + noise[2 * i + 1]!))!.value;
    });
    expect(Math.abs(found.mean - 1)).toBeLessThan(4 * Math.sqrt(2 / (n - 1) / TRIALS));
    expect(Math.abs(found.relativeVariance / (2 / (n - 1)) - 1)).toBeLessThan(0.2);
  });

  test("fewer than two known sums tell nothing", () => {
    expect(fromFaceSums([1, Number.NaN])).toBeUndefined();
  });
});

describe("fromClosures", () => {
  const closuresOf = (
    seed: number,
    walk: number,
    reference: number,
    seconds: readonly number[],
  ): Closure[] => {
    const noise = normals(seed, seconds.length);
    return seconds.map((each, i) => ({
      misclosureRad: Math.sqrt(walk ** 2 * each + 2 * reference ** 2) * noise[i]!,
      seconds: each,
    }));
  };

  test("[C4] closed form: equal times give N^2 = (mean square - 2 sigma^2) / T", () => {
    const closures = [3, -4, 5].map((misclosureRad) => ({ misclosureRad, seconds: 100 }));
    expect(fromClosures(closures, 1)?.value).toBeCloseTo(Math.sqrt((50 / 3 - 2) / 100), 12);
    const exact = fromClosures(closures, 0)!;
    expect(exact.value).toBeCloseTo(Math.sqrt(50 / 3 / 100), 12);
    expect(exact.degreesOfFreedom).toBeCloseTo(3, 10);
  });

  test("[C4] misclosures that the references explain leave nothing to the gyro", () => {
    const closures = [1, -1, 0.5].map((misclosureRad) => ({ misclosureRad, seconds: 100 }));
    expect(fromClosures(closures, 1)).toEqual({ value: 0, degreesOfFreedom: 0, from: "closures" });
    expect(
      fromClosures(
        [
          { misclosureRad: 0, seconds: 1 },
          { misclosureRad: 0, seconds: 2 },
        ],
        0,
      )?.value,
    ).toBe(0);
    expect(fromClosures(closures.slice(1, 2), 0)).toBeUndefined();
  });

  test(`[C4] of simulated runs of unequal length N^2 comes out right (seeds 0 to ${TRIALS - 1})`, () => {
    const seconds = [600, 900, 1200, 1800, 2400, 3600, 3600, 5400, 1500, 2700, 1000, 3000];
    const [walk, reference] = [0.01, 0.1];
    const found = trialsOf(
      (seed) => fromClosures(closuresOf(seed, walk, reference, seconds), reference)!.value,
    );
    const degrees = fromClosures(
      seconds.map((each) => ({
        misclosureRad: Math.sqrt(walk ** 2 * each + 2 * reference ** 2),
        seconds: each,
      })),
      reference,
    )!;
    expect(degrees.value).toBeCloseTo(walk, 12);
    expect(Math.abs(found.mean / walk ** 2 - 1)).toBeLessThan(
      4 * Math.sqrt(2 / degrees.degreesOfFreedom / TRIALS),
    );
    expect(Math.abs(found.relativeVariance / (2 / degrees.degreesOfFreedom) - 1)).toBeLessThan(0.25);
  });

  test(`[C4] the test of closures refuses true statements as often as stated (seeds 0 to ${TRIALS - 1})`, () => {
    const seconds = [600, 1200, 2400, 3600, 1800];
    let refused = 0;
    for (let seed = 0; seed < TRIALS; seed++)
      if (testClosures(closuresOf(seed, 0.01, 0.1, seconds), 0.1, 0.01)!.probability < 0.05) refused++;
    expect(Math.abs(refused / TRIALS - 0.05)).toBeLessThan(4 * Math.sqrt((0.05 * 0.95) / TRIALS));
    expect(testClosures(closuresOf(1, 0.05, 0.1, seconds), 0.1, 0.001)!.probability).toBeLessThan(0.01);
    expect(testClosures([], 0.1, 0.01)).toBeUndefined();
  });

  test("throws ContractError for a time or an uncertainty that makes no sense", () => {
    expect(() => fromClosures([{ misclosureRad: 1, seconds: 0 }], 0)).toThrow(ContractError);
    expect(() => fromClosures([], -1)).toThrow(ContractError);
    expect(() => testClosures([], 0, 0)).toThrow(ContractError);
  });
});

describe("fromAllanCurve", () => {
  test("[B3] of white noise N is the spread times the root of the spacing, inside what its degrees of freedom allow (seeds 0 to 39)", () => {
    let outside = 0;
    for (let seed = 0; seed < 40; seed++) {
      const found = fromAllanCurve(allanCurve(normals(seed, 4000), 0.25));
      expect(found.degreesOfFreedom).toBeGreaterThanOrEqual(19);
      if (Math.abs(found.value / 0.5 - 1) > 2 / Math.sqrt(2 * found.degreesOfFreedom)) outside++;
    }
    expect(outside).toBeLessThanOrEqual(5);
  });
});
