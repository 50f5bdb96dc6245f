import { describe, expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { lag1Autocorrelation, mean, sampleVariance } from "./moments.ts";
import { normalUpper } from "./normal.ts";
import { fillNormals, fillUniforms, normalAt, uniformAt } from "./random-stream.ts";

const COUNT = 1_000_000;

describe("random streams", () => {
  test("[H4] filled in one piece or in several, the numbers are the same", () => {
    const random = { seed: 12345678901234, stream: 7 };
    const whole = new Float64Array(101);
    fillNormals(random, 0, whole);
    const pieces = [0, 3, 4, 50, 101].flatMap((from, i, ends) => {
      const piece = new Float64Array((ends[i + 1] ?? from) - from);
      fillNormals(random, from, piece);
      return [...piece];
    });
    expect(pieces).toEqual([...whole]);
    expect(normalAt(random, 77)).toBe(whole[77]);
  });

  test("normals have the moments and tails of the normal distribution (seed 1)", () => {
    const sample = new Float64Array(COUNT);
    fillNormals({ seed: 1, stream: 0 }, 0, sample);
    const moment = (power: number) => mean(sample.map((z) => z ** power));
    // Five standard deviations of each estimate from a million numbers.
    expect(Math.abs(moment(1))).toBeLessThan(5 / Math.sqrt(COUNT));
    expect(Math.abs(sampleVariance(sample) - 1)).toBeLessThan(5 * Math.sqrt(2 / COUNT));
    expect(Math.abs(moment(3))).toBeLessThan(5 * Math.sqrt(15 / COUNT));
    expect(Math.abs(moment(4) - 3)).toBeLessThan(5 * Math.sqrt(96 / COUNT));
    expect(Math.abs(lag1Autocorrelation(sample))).toBeLessThan(5 / Math.sqrt(COUNT));
    for (const z of [1, 2, 3]) {
      const share = sample.filter((value) => value > z).length / COUNT;
      const p = normalUpper(z);
      expect(Math.abs(share - p)).toBeLessThan(5 * Math.sqrt((p * (1 - p)) / COUNT));
    }
  });

  test("uniform numbers fill the interval evenly and never touch its ends (seed 2)", () => {
    const sample = new Float64Array(COUNT);
    fillUniforms({ seed: 2, stream: 0 }, 0, sample);
    const cells = new Float64Array(100);
    for (const value of sample) {
      cells[Math.floor(value * 100)]! += 1;
    }
    expect(sample.every((value) => value > 0 && value < 1)).toBe(true);
    const chiSquare = cells.reduce((sum, n) => sum + (n - COUNT / 100) ** 2 / (COUNT / 100), 0);
    expect(chiSquare).toBeGreaterThan(50); // 99 degrees of freedom: 1e-5 limits are 50 and 167
    expect(chiSquare).toBeLessThan(167);
  });

  test("streams and seeds are unrelated", () => {
    const series = (seed: number, stream: number) => {
      const sample = new Float64Array(10_000);
      fillNormals({ seed, stream }, 0, sample);
      return sample;
    };
    const first = series(1, 0);
    for (const other of [series(1, 1), series(2, 0), series(2 ** 32 + 1, 0)])
      expect(Math.abs(mean(first.map((value, i) => value * other[i]!)))).toBeLessThan(0.05);
  });

  test("throws ContractError outside the ranges", () => {
    expect(() => uniformAt({ seed: -1, stream: 0 }, 0)).toThrow(ContractError);
    expect(() => uniformAt({ seed: 0, stream: 2 ** 32 }, 0)).toThrow(ContractError);
    expect(() => uniformAt({ seed: 0, stream: 0 }, 0.5)).toThrow(ContractError);
  });
});
