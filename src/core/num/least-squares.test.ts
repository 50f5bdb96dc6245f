import fc from "fast-check";
import { describe, expect, test } from "vitest";
import filip from "../../../test/published/nist-strd-filip/case.json" with { type: "json" };
import longley from "../../../test/published/nist-strd-longley/case.json" with { type: "json" };
import wampler from "../../../test/published/nist-strd-wampler/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import {
  type LeastSquaresSolution,
  solveCorrelatedLeastSquares,
  solveLeastSquares,
} from "./least-squares.ts";
import { type Matrix, matrixElement, matrixFromRows } from "./matrix.ts";

function powers(x: number, degree: number): number[] {
  const row = [1];
  for (let k = 1; k <= degree; k++) row.push(row[k - 1]! * x);
  return row;
}

const standardDeviations = (solution: LeastSquaresSolution) =>
  Array.from(solution.parameters, (_, i) =>
    Math.sqrt(matrixElement(solution.cofactors, i, i) * solution.unitVariance),
  );

function expectRelative(actual: ArrayLike<number>, certified: readonly number[], relative: number): void {
  expect(actual.length).toBe(certified.length);
  for (const [i, value] of certified.entries()) {
    const error = Math.abs(actual[i]! - value) / Math.abs(value || 1);
    expect(error, `value ${i}: relative error ${error}`).toBeLessThanOrEqual(relative);
  }
}

function solved(design: Matrix, observations: ArrayLike<number>): LeastSquaresSolution {
  const solution = solveLeastSquares(design, Float64Array.from(observations));
  expect(solution).toBeDefined();
  return solution!;
}

describe("solveLeastSquares, NIST StRD", () => {
  test("Longley: 13 digits of the parameters, 10 of their standard deviations", () => {
    const solution = solved(matrixFromRows(longley.x.map((row) => [1, ...row])), longley.y);
    const { certified } = longley;
    expectRelative(solution.parameters, certified.parameters, certified.relativeParameters);
    expectRelative(
      standardDeviations(solution),
      certified.standardDeviations,
      certified.relativeStandardDeviations,
    );
    expectRelative([solution.weightedSumOfSquares], [certified.residualSumOfSquares], 1e-13);
  });

  test.each(wampler.datasets)(
    "$name: 13 digits of the parameters, 12 of their standard deviations",
    (data) => {
      // Wampler2 is stated as the sum of (x/10)^k, so that its parameters are powers of a tenth.
      const term = (x: number, k: number) => (data.name === "Wampler2" ? x ** k / 10 ** k : x ** k);
      const y = wampler.noise.map(
        (noise, x) => data.parameters.reduce((sum, _, k) => sum + term(x, k), 0) + data.noiseFactor * noise,
      );
      const solution = solved(matrixFromRows(wampler.noise.map((_, x) => powers(x, 5))), y);
      expectRelative(solution.parameters, data.parameters, 1e-13);
      expectRelative(standardDeviations(solution), data.standardDeviations, 1e-12);
      expectRelative([Math.sqrt(solution.unitVariance)], [data.residualStandardDeviation], 1e-12);
    },
  );

  test("Filip: 7 digits of parameters and standard deviations", () => {
    const solution = solved(matrixFromRows(filip.x.map((x) => powers(x, 10))), filip.y);
    expectRelative(solution.parameters, filip.certified.parameters, 1e-7);
    expectRelative(standardDeviations(solution), filip.certified.standardDeviations, 1e-7);
    expectRelative([solution.weightedSumOfSquares], [filip.certified.residualSumOfSquares], 5e-8);
  });
});

describe("solveLeastSquares", () => {
  const line = matrixFromRows([
    [1, 0],
    [1, 1],
    [1, 2],
  ]);

  test("a weight of 2 counts like the observation given twice", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 3, maxLength: 3 }), (y) => {
        const weighted = solveLeastSquares(line, Float64Array.from(y), Float64Array.of(1, 2, 1))!;
        const doubled = solved(
          matrixFromRows([
            [1, 0],
            [1, 1],
            [1, 1],
            [1, 2],
          ]),
          [y[0]!, y[1]!, y[1]!, y[2]!],
        );
        for (const k of [0, 1]) expect(weighted.parameters[k]).toBeCloseTo(doubled.parameters[k]!, 10);
        expect(weighted.weightedSumOfSquares).toBeCloseTo(doubled.weightedSumOfSquares, 8);
        expect(matrixElement(weighted.cofactors, 0, 1)).toBeCloseTo(
          matrixElement(doubled.cofactors, 0, 1),
          12,
        );
      }),
    );
  });

  test("residuals are computed minus observed", () => {
    const solution = solved(matrixFromRows([[1], [1]]), [1, 3]);
    expect([...solution.residuals]).toEqual([1, -1]);
    expect(solution.unitVariance).toBe(2);
  });

  test("as many observations as parameters leave no spread to estimate", () => {
    const solution = solved(matrixFromRows([[2]]), [4]);
    expect(solution.parameters[0]).toBe(2);
    expect(solution.unitVariance).toBeNaN();
  });

  test.each([
    [
      "repeat each other",
      [
        [1, 2],
        [1, 2],
        [1, 2],
      ],
    ],
    [
      "are zero",
      [
        [1, 0],
        [1, 0],
        [1, 0],
      ],
    ],
    [
      "differ by a factor only",
      [
        [0.1, 0.3],
        [0.2, 0.6],
        [0.7, 2.1],
      ],
    ],
  ])("is undefined when columns %s", (_why, rows) => {
    expect(solveLeastSquares(matrixFromRows(rows), Float64Array.of(1, 2, 3))).toBeUndefined();
  });

  test.each([
    ["observations are missing", [1, 2], undefined],
    ["an observation is not finite", [1, Number.NaN, 3], undefined],
    ["a weight is zero", [1, 2, 3], [1, 0, 1]],
    ["a weight is missing", [1, 2, 3], [1, 1]],
  ])("throws ContractError when %s", (_why, y, weights) => {
    const given = weights && Float64Array.from(weights);
    expect(() => solveLeastSquares(line, Float64Array.from(y), given)).toThrow(ContractError);
  });
});

describe("solveCorrelatedLeastSquares", () => {
  // Drift of a heading against known directions: minutes, accumulated turn and misreading in degrees.
  // Invented readings; both results computed by two independent methods outside this program.
  const minutes = [0, 10, 20, 30, 40, 50, 60];
  const turn = [0, 0, 360, 360, 720, 0, 0];
  const design = matrixFromRows(minutes.map((t, i) => [1, t, turn[i]!]));
  const misreading = Float64Array.of(0.1, 0.31, 0.67, 0.9, 1.26, 1.08, 1.31);

  test("independent errors give the ordinary result", () => {
    const identity = matrixFromRows(minutes.map((_, i) => minutes.map((__, j) => (i === j ? 1 : 0))));
    const solution = solveCorrelatedLeastSquares(design, misreading, identity)!;
    const [c, b, s] = solution.parameters;
    expect(c).toBeCloseTo(0.10294, 6);
    expect(b).toBeCloseTo(0.01992372, 8);
    expect(s).toBeCloseTo(5.0378e-4, 8);
    expect(Math.sqrt(solution.unitVariance)).toBeCloseTo(0.016314, 6);
  });

  test("[C4] a random walk in the heading widens the uncertainty of the drift sixteen times", () => {
    const walk = 0.3; // degrees per root hour
    const covariance = matrixFromRows(
      minutes.map((ti, i) =>
        minutes.map((tj, j) => (walk ** 2 * Math.min(ti, tj)) / 60 + (i === j ? 0.02 ** 2 : 0)),
      ),
    );
    const solution = solveCorrelatedLeastSquares(design, misreading, covariance)!;
    const expected = [
      [0.100202, 0.019788],
      [0.02015151, 0.0050218],
      [5.0034e-4, 1.4366e-4],
    ];
    for (const [i, [value, sigma]] of expected.entries()) {
      expect(Math.abs(solution.parameters[i]! / value! - 1)).toBeLessThan(1e-5);
      expect(Math.abs(Math.sqrt(matrixElement(solution.cofactors, i, i)) / sigma! - 1)).toBeLessThan(3e-5);
    }
  });

  test("is undefined when an observation has no spread", () => {
    const flat = matrixFromRows(minutes.map(() => minutes.map(() => 0)));
    expect(solveCorrelatedLeastSquares(design, misreading, flat)).toBeUndefined();
  });
});
