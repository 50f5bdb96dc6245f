import { describe, expect, test } from "vitest";
import { mean, sampleStandardDeviation } from "../num/moments.ts";
import { fillUniforms } from "../num/random-stream.ts";
import { studentTCdf } from "../num/student-t.ts";
import { ContractError } from "../result.ts";
import { drawFrom, type InputDistribution, momentsOf } from "./input-distribution.ts";

const COUNT = 200_000;

function draw(distribution: InputDistribution, seed: number): Float64Array {
  const uniforms = new Float64Array(2 * COUNT);
  fillUniforms({ seed, stream: 0 }, 0, uniforms);
  return Float64Array.from({ length: COUNT }, (_, i) =>
    drawFrom(distribution, uniforms[2 * i]!, uniforms[2 * i + 1]!),
  );
}

describe("distributions", () => {
  test.each<[InputDistribution, number, number]>([
    [{ kind: "normal", mean: 3, standardUncertainty: 2 }, 3, 2],
    [{ kind: "rectangular", lower: -1, upper: 5 }, 2, 6 / Math.sqrt(12)],
    [{ kind: "arcsine", lower: -1, upper: 1 }, 0, Math.SQRT1_2],
    [{ kind: "triangular", lower: 0, upper: 2 }, 1, 1 / Math.sqrt(6)],
    [{ kind: "curved-trapezoid", lower: -3, upper: 3, doubt: 1 }, 0, Math.sqrt(3 + 1 / 9)],
    [{ kind: "student-t", mean: 1, scale: 2, degreesOfFreedom: 12 }, 1, 2 * Math.sqrt(1.2)],
  ])("%j has its mean and spread, stated and drawn (seed 11)", (distribution, centre, spread) => {
    const stated = momentsOf(distribution);
    expect(stated.mean).toBe(centre);
    expect(stated.standardUncertainty).toBeCloseTo(spread, 12);
    const sample = draw(distribution, 11);
    expect(Math.abs(mean(sample) - centre)).toBeLessThan((5 * spread) / Math.sqrt(COUNT));
    // Five standard deviations of an estimated spread, for a kurtosis up to 4.
    expect(Math.abs(sampleStandardDeviation(sample) / spread - 1)).toBeLessThan(
      5 * Math.sqrt(3 / (4 * COUNT)),
    );
  });

  test("Student's t with few degrees of freedom has its tails (seed 12)", () => {
    const sample = draw({ kind: "student-t", mean: 0, scale: 1, degreesOfFreedom: 3 }, 12);
    for (const t of [-5, -2, -0.5, 1, 4]) {
      const p = studentTCdf(t, 3);
      const share = sample.filter((value) => value <= t).length / COUNT;
      expect(Math.abs(share - p)).toBeLessThan(5 * Math.sqrt((p * (1 - p)) / COUNT));
    }
  });

  test("widths and degrees of freedom that make no sense are mistakes", () => {
    expect(() => momentsOf({ kind: "rectangular", lower: 1, upper: 0 })).toThrow(ContractError);
    expect(() => momentsOf({ kind: "student-t", mean: 0, scale: 1, degreesOfFreedom: 2 })).toThrow(
      ContractError,
    );
    expect(() => momentsOf({ kind: "normal", mean: 0, standardUncertainty: -1 })).toThrow(ContractError);
  });
});
