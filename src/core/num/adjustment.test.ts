import { describe, expect, test } from "vitest";
import loop from "../../../test/published/adjustment-closed-loop/case.json" with { type: "json" };
import ghilani from "../../../test/published/adjustment-ghilani/case.json" with { type: "json" };
import levelled from "../../../test/published/adjustment-levelled-differences/case.json" with {
  type: "json",
};
import { ContractError } from "../result.ts";
import { adjust, USUAL_ADJUSTMENT_TEST } from "./adjustment.ts";
import { matrixElement, matrixFromRows } from "./matrix.ts";

interface Difference {
  readonly from: string;
  readonly to: string;
  readonly differenceM: number;
}

/** Rows of the design and reduced observations of a network of height differences. */
function network(
  fixed: Readonly<Record<string, number>>,
  unknown: readonly string[],
  differences: readonly Difference[],
) {
  const sign = (point: string, { from, to }: Difference) => (point === to ? 1 : point === from ? -1 : 0);
  return {
    design: matrixFromRows(differences.map((d) => unknown.map((point) => sign(point, d)))),
    observations: Float64Array.from(
      differences,
      (d) => d.differenceM - Object.entries(fixed).reduce((sum, [point, h]) => sum + sign(point, d) * h, 0),
    ),
  };
}

describe("adjust, height differences of Ghilani's example", () => {
  const { design, observations } = network(ghilani.fixed, ghilani.unknown, ghilani.observations);
  const result = adjust(
    design,
    observations,
    Float64Array.from(ghilani.observations, (o) => o.sigmaMm / 1000),
  )!;
  const { published } = ghilani;

  test("gives the published heights and covariances", () => {
    for (const [i, height] of published.heightsM.entries()) {
      expect(result.parameters[i]).toBeCloseTo(height, 10);
      for (const [j, covariance] of published.covariancesMm2[i]!.entries()) {
        const found = matrixElement(result.covariance, i, j) * 1e6 * result.unitStandardDeviation ** 2;
        expect(found).toBeCloseTo(covariance, 6);
      }
    }
    expect(result.degreesOfFreedom).toBe(published.degreesOfFreedom);
    expect(result.unitStandardDeviation).toBeCloseTo(published.unitStandardDeviation, 7);
  });

  test("[D5] passes the published ratio test", () => {
    const found = result.globalTest!;
    expect(found.statistic).toBeCloseTo(published.sumOfSquares, 7);
    expect(found.ratioLower).toBeCloseTo(published.ratioInterval[0]!, 3);
    expect(found.ratioUpper).toBeCloseTo(published.ratioInterval[1]!, 3);
    expect(found.outcome).toBe("as-stated");
  });

  test("gives residuals, redundancy numbers and normalised residuals of every observation", () => {
    expect(result.observations.length).toBe(ghilani.observations.length);
    for (const [i, expected] of ghilani.observations.entries()) {
      const found = result.observations[i]!;
      expect(found.residual * 1000).toBeCloseTo(expected.residualMm, 5);
      expect(found.redundancy).toBeCloseTo(expected.redundancy, 6);
      expect(found.normalisedResidual).toBeCloseTo(expected.normalised, 5);
      const studentised = Math.abs(found.normalisedResidual / result.unitStandardDeviation);
      expect(studentised).toBeCloseTo(expected.printed!, 3);
    }
    expect(result.suspect).toBeUndefined();
  });
});

describe("adjust, closed loop measured forward and back", () => {
  const sigmas = Float64Array.from(loop.observations, (o) => o.sigmaMm / 1000);
  const { design, observations } = network(loop.fixed, loop.unknown, loop.observations);

  test("gives the published heights, spread and largest normalised residual", () => {
    const result = adjust(design, observations, sigmas, {
      ...USUAL_ADJUSTMENT_TEST,
      outlierSignificance: 0.05,
    })!;
    for (const [i, height] of loop.published.heightsM.entries()) {
      expect(Math.abs(result.parameters[i]! - height)).toBeLessThan(1e-5);
      expect(result.parameters[i]).toBeCloseTo(loop.computed.heightsM[i]!, 9);
      const sigmaMm = Math.sqrt(matrixElement(result.covariance, i, i)) * 1000;
      expect(Math.abs(sigmaMm - loop.published.sigmasMm[i]!)).toBeLessThanOrEqual(0.051);
    }
    expect(result.unitStandardDeviation * 5).toBeCloseTo(loop.computed.unitStandardDeviationMm, 8);
    expect(result.unitStandardDeviation * 5).toBeCloseTo(loop.published.unitStandardDeviationMm, 2);
    expect(result.globalTest!.statistic).toBeCloseTo(loop.computed.statistic, 3);
    for (const [i, expected] of loop.observations.entries()) {
      expect(result.observations[i]!.normalisedResidual).toBeCloseTo(expected.normalised, 5);
      expect(result.observations[i]!.redundancy).toBeCloseTo(expected.redundancy, 9);
    }
    expect(result.outlierLimit).toBeCloseTo(loop.published.critical, 3);
    expect(result.suspect).toBeUndefined();
  });

  test("[D5] 50 mm added to one observation is found there and nowhere else", () => {
    const { grossError } = loop;
    const at = grossError.observation - 1;
    const spoilt = observations.slice();
    spoilt[at]! += grossError.addedMm / 1000;
    const result = adjust(design, spoilt, sigmas)!;
    expect(result.globalTest!.statistic).toBeCloseTo(grossError.statistic, 3);
    expect(result.globalTest!.outcome).toBe("too-large");
    for (const [i, w] of grossError.normalised.entries())
      expect(result.observations[i]!.normalisedResidual).toBeCloseTo(w, 3);
    expect(result.suspect).toBe(at);
    expect(result.observations[at]!.estimatedError * 1000).toBeCloseTo(grossError.estimatedErrorMm, 1);
    expect(result.unitStandardDeviation * 5).toBeCloseTo(grossError.unitStandardDeviationMm, 3);
    expect(result.unitStandardDeviationWithoutWorst * 5).toBeCloseTo(grossError.withoutWorstMm, 7);
    expect(result.observations[at]!.minimalDetectableError * 1000).toBeCloseTo(
      grossError.minimalDetectableMm,
      1,
    );
  });
});

test("adjust gives the published sum of squares and ratio of five differences weighted by length", () => {
  const { design, observations } = network(levelled.fixed, levelled.unknown, levelled.observations);
  const sigmas = Float64Array.from(
    levelled.observations,
    (o) => (levelled.sigmaMmPerRootKm / 1000) * Math.sqrt(o.lengthM / 1000),
  );
  const result = adjust(design, observations, sigmas)!;
  for (const [i, height] of levelled.computed.heightsM.entries())
    expect(result.parameters[i]).toBeCloseTo(height, 8);
  const found = result.globalTest!;
  expect(found.statistic).toBeCloseTo(levelled.published.sumOfSquares, 3);
  expect(found.statistic).toBeCloseTo(levelled.computed.sumOfSquares, 6);
  expect(found.ratio).toBeCloseTo(levelled.computed.ratio, 6);
  expect([found.ratioLower, found.ratioUpper].map((limit) => Number(limit.toFixed(3)))).toEqual(
    levelled.published.ratioInterval,
  );
  expect(found.outcome).toBe("as-stated");
});

describe("adjust", () => {
  test("redundancy numbers add up to the degrees of freedom", () => {
    const design = matrixFromRows([
      [1, 0],
      [1, 1],
      [1, 2],
      [1, 5],
      [0, 1],
    ]);
    const result = adjust(design, Float64Array.of(1, 2, 2, 6, 1), Float64Array.of(1, 2, 3, 1, 0.5))!;
    const sum = result.observations.reduce((total, o) => total + o.redundancy, 0);
    expect(sum).toBeCloseTo(3, 12);
  });

  test("an observation that nothing checks can hide any error, and says so", () => {
    const design = matrixFromRows([
      [1, 0],
      [1, 0],
      [0, 1],
    ]);
    const result = adjust(design, Float64Array.of(1, 1.1, 7), Float64Array.of(1, 1, 1))!;
    const lone = result.observations[2]!;
    expect(lone.redundancy).toBe(0);
    expect(lone.normalisedResidual).toBeNaN();
    expect(lone.minimalDetectableError).toBe(Number.POSITIVE_INFINITY);
    expect(result.suspect).toBeUndefined();
  });

  test("without redundancy nothing is tested", () => {
    const result = adjust(matrixFromRows([[2]]), Float64Array.of(4), Float64Array.of(1))!;
    expect(result.globalTest).toBeUndefined();
    expect(result.unitStandardDeviation).toBeNaN();
  });

  test("observations that do not determine the parameters give no adjustment", () => {
    const design = matrixFromRows([
      [1, 1],
      [1, 1],
    ]);
    expect(adjust(design, Float64Array.of(1, 2), Float64Array.of(1, 1))).toBeUndefined();
  });

  test("throws ContractError for a standard deviation of zero or a probability of 1", () => {
    const design = matrixFromRows([[1], [1]]);
    const two = Float64Array.of(1, 2);
    expect(() => adjust(design, two, Float64Array.of(1, 0))).toThrow(ContractError);
    expect(() => adjust(design, two, two, { ...USUAL_ADJUSTMENT_TEST, power: 1 })).toThrow(ContractError);
  });
});
