import { describe, expect, test } from "vitest";
import published from "../../../test/published/jcgm-101/case.json" with { type: "json" };
import { matrixElement, matrixFromRows } from "../num/matrix.ts";
import { mean, sampleStandardDeviation } from "../num/moments.ts";
import { ContractError } from "../result.ts";
import { type InputDistribution, momentsOf } from "./input-distribution.ts";
import { numericalTolerance, propagateAdaptively } from "./propagate-adaptively.ts";
import { propagateFirstOrder } from "./propagate-first-order.ts";
import { propagateMonteCarlo, summariseSample } from "./propagate-monte-carlo.ts";

const TRIALS = 200_000;
const normal = (centre: number, standardUncertainty: number): InputDistribution => ({
  kind: "normal",
  mean: centre,
  standardUncertainty,
});
const rectangular = (lower: number, upper: number): InputDistribution => ({
  kind: "rectangular",
  lower,
  upper,
});

describe("examples of JCGM 101", () => {
  test.each(published.additive)("9.2 $name (seed 1)", (one) => {
    const inputs = one.sigmas.map((sigma) =>
      one.kind === "normal" ? normal(0, sigma) : rectangular(-sigma * Math.sqrt(3), sigma * Math.sqrt(3)),
    );
    const [sample] = propagateMonteCarlo((x) => [x[0]! + x[1]! + x[2]! + x[3]!], inputs, 500_000, 1);
    const { mean: centre, standardUncertainty, symmetric } = summariseSample(sample!, 0.95);
    expect(Math.abs(centre)).toBeLessThan((5 * one.standardUncertainty) / Math.sqrt(500_000));
    expect(Math.abs(standardUncertainty - one.standardUncertainty)).toBeLessThan(2 * one.uTolerance);
    expect(Math.abs(symmetric.lower - one.lower)).toBeLessThan(one.intervalTolerance);
    expect(Math.abs(symmetric.upper - one.upper)).toBeLessThan(one.intervalTolerance);
  });

  test("9.3 mass calibration: first order is far too small (seed 2)", () => {
    const inputs = [
      normal(100_000, 0.05),
      normal(1.234, 0.02),
      rectangular(1.1, 1.3),
      rectangular(7000, 9000),
      rectangular(7950, 8050),
    ];
    const model = ([weight, added, air, density, reference]: Float64Array) => [
      (weight! + added!) * (1 + (air! - 1.2) * (1 / density! - 1 / reference!)) - 100_000,
    ];
    const [sample] = propagateMonteCarlo(model, inputs, 500_000, 2);
    const { mean: centre, standardUncertainty, shortest } = summariseSample(sample!, 0.95);
    expect(Math.abs(centre - published.mass.mean)).toBeLessThan(6e-4);
    expect(Math.abs(standardUncertainty - published.mass.standardUncertainty)).toBeLessThan(3e-4);
    // The length is well determined, the place of the shortest interval is not.
    const [lower, upper] = published.mass.shortest as [number, number];
    expect(Math.abs(shortest.upper - shortest.lower - (upper - lower))).toBeLessThan(1.5e-3);
    expect(Math.abs(shortest.lower - lower)).toBeLessThan(6e-3);
    const moments = inputs.map(momentsOf);
    const firstOrder = propagateFirstOrder(
      model,
      Float64Array.from(moments, (m) => m.mean),
      matrixFromRows(
        moments.map((m, i) => moments.map((_, j) => (i === j ? m.standardUncertainty ** 2 : 0))),
      ),
    );
    expect(Math.sqrt(matrixElement(firstOrder.covariance, 0, 0))).toBeCloseTo(published.mass.firstOrder, 3);
  });

  test.each(published.squares)(
    "[E4] 9.4 sum of two squares, x1 $x1, correlation $correlation (seed 3)",
    (one) => {
      const u = 0.005;
      const correlation = matrixFromRows([
        [1, one.correlation],
        [one.correlation, 1],
      ]);
      const model = ([x, y]: Float64Array) => [1e6 * (x! * x! + y! * y!)];
      const inputs = [normal(one.x1, u), normal(0, u)];
      const [sample] = propagateMonteCarlo(model, inputs, TRIALS, 3, { correlation });
      const found = summariseSample(sample!, 0.95);
      expect(Math.abs(found.mean - one.mean)).toBeLessThan(
        (5 * one.standardUncertainty) / Math.sqrt(TRIALS) + 0.05,
      );
      expect(Math.abs(found.standardUncertainty / one.standardUncertainty - 1)).toBeLessThan(0.015);
      if (one.shortestUpper !== null) {
        expect(Math.abs(found.shortest.upper - one.shortestUpper)).toBeLessThan(3);
        expect(found.shortest.lower).toBeLessThan(0.5);
      }
    },
  );

  test("9.5 gauge block (seed 4)", () => {
    const student = (centre: number, scale: number, degreesOfFreedom: number): InputDistribution => ({
      kind: "student-t",
      mean: centre,
      scale,
      degreesOfFreedom,
    });
    const inputs: InputDistribution[] = [
      student(50_000_623, 25, 18),
      student(215, 6, 24),
      student(0, 4, 5),
      student(0, 7, 8),
      rectangular(9.5e-6, 13.5e-6),
      normal(-0.1, 0.2),
      { kind: "arcsine", lower: -0.5, upper: 0.5 },
      { kind: "curved-trapezoid", lower: -1e-6, upper: 1e-6, doubt: 0.1e-6 },
      { kind: "curved-trapezoid", lower: -0.05, upper: 0.05, doubt: 0.025 },
    ];
    const model = ([standard, d0, d1, d2, expansion, t0, swing, da, dt]: Float64Array) => {
      const difference = d0! + d1! + d2!;
      const temperature = t0! + swing!;
      return [
        (standard! * (1 + expansion! * (temperature - dt!)) + difference) /
          (1 + (expansion! + da!) * temperature) -
          50_000_000,
      ];
    };
    const [sample] = propagateMonteCarlo(model, inputs, TRIALS, 4);
    const found = summariseSample(sample!, 0.99);
    expect(Math.abs(found.mean - published.gaugeBlock.mean)).toBeLessThan(0.9);
    expect(Math.abs(found.standardUncertainty - published.gaugeBlock.standardUncertainty)).toBeLessThan(0.8);
    expect(Math.abs(found.symmetric.lower - published.gaugeBlock.interval99[0]!)).toBeLessThan(2);
    expect(Math.abs(found.symmetric.upper - published.gaugeBlock.interval99[1]!)).toBeLessThan(2);
  });
});

describe("propagateMonteCarlo", () => {
  const model = (x: Float64Array) => [x[0]! * x[1]!, x[2]!];
  const inputs = [normal(1, 1), normal(2, 1), rectangular(0, 1)];

  test("[H4] split into pieces, the trials are the same", () => {
    const whole = propagateMonteCarlo(model, inputs, 101, 9);
    const first = propagateMonteCarlo(model, inputs, 40, 9);
    const rest = propagateMonteCarlo(model, inputs, 61, 9, { firstTrial: 40 });
    for (const [i, output] of whole.entries()) expect([...first[i]!, ...rest[i]!]).toEqual([...output]);
  });

  test("an input added at the end leaves the draws of the others as they were", () => {
    const [before] = propagateMonteCarlo((x) => [x[0]!], inputs.slice(0, 1), 50, 9);
    const [after] = propagateMonteCarlo((x) => [x[0]!], inputs, 50, 9);
    expect([...after!]).toEqual([...before!]);
  });

  test("correlated inputs have their correlation, an uncorrelated one beside them its own distribution", () => {
    const correlation = matrixFromRows([
      [1, -0.7, 0],
      [-0.7, 1, 0],
      [0, 0, 1],
    ]);
    const [x, y, z] = propagateMonteCarlo((values) => Array.from(values), inputs, TRIALS, 5, { correlation });
    const product = mean(x!.map((value, i) => (value - 1) * (y![i]! - 2)));
    expect(Math.abs(product + 0.7)).toBeLessThan(5 * Math.sqrt(1.49 / TRIALS));
    expect(mean(y!)).toBeCloseTo(2, 1);
    expect(Math.abs(sampleStandardDeviation(z!) - 1 / Math.sqrt(12))).toBeLessThan(0.002);
    expect(z!.every((value) => value > 0 && value < 1)).toBe(true);
  });

  test("throws ContractError for correlations that cannot be or that bind what is not normal", () => {
    const two = [normal(0, 1), rectangular(0, 1)];
    const bound = matrixFromRows([
      [1, 0.5],
      [0.5, 1],
    ]);
    expect(() => propagateMonteCarlo(model, two, 10, 1, { correlation: bound })).toThrow(ContractError);
    const impossible = matrixFromRows([
      [1, 2],
      [2, 1],
    ]);
    const normals = [normal(0, 1), normal(0, 1)];
    expect(() => propagateMonteCarlo(model, normals, 10, 1, { correlation: impossible })).toThrow(
      ContractError,
    );
    expect(() => propagateMonteCarlo(model, normals, 0, 1)).toThrow(ContractError);
  });
});

describe("propagateAdaptively", () => {
  test("stops when two digits stand, and they are right (seed 6)", () => {
    const result = propagateAdaptively((x) => [x[0]! + x[1]!], [normal(10, 3), normal(0, 4)], 6);
    expect(result.stabilised).toBe(true);
    expect(result.tolerance).toBe(0.05);
    expect(Math.abs(result.summary.mean - 10)).toBeLessThan(0.1);
    expect(Math.abs(result.summary.standardUncertainty - 5)).toBeLessThan(0.1);
    expect(Math.abs(result.summary.symmetric.upper - (10 + 5 * 1.96))).toBeLessThan(0.1);
  });

  test("says so when the largest number of trials comes first", () => {
    const result = propagateAdaptively((x) => [x[0]!], [normal(0, 1)], 6, {
      significantDigits: 4,
      maxTrials: 30_000,
    });
    expect(result.stabilised).toBe(false);
    expect(result.trials).toBe(30_000);
  });

  test.each([
    [0.035, 2, 0.0005],
    [35, 1, 5],
    [0.0996, 2, 0.005],
    [1, 3, 0.005],
    [0, 2, 0],
  ])("half a unit of the last digit of %d to %d digits", (u, digits, tolerance) => {
    expect(numericalTolerance(u, digits)).toBeCloseTo(tolerance, 12);
  });

  test("throws ContractError for a model with two outputs", () => {
    expect(() => propagateAdaptively((x) => [x[0]!, 1], [normal(0, 1)], 1)).toThrow(ContractError);
  });
});
