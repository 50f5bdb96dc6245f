import { describe, expect, test } from "vitest";
import published from "../../../test/published/jcgm-100/case.json" with { type: "json" };
import { fitLine } from "../num/fit-line.ts";
import { matrixElement, matrixFromRows } from "../num/matrix.ts";
import { studentTQuantile } from "../num/student-t.ts";
import { ContractError } from "../result.ts";
import { effectiveDegreesOfFreedom, propagateFirstOrder } from "./propagate-first-order.ts";

const diagonal = (sigmas: readonly number[]) =>
  matrixFromRows(sigmas.map((sigma, i) => sigmas.map((_, j) => (i === j ? sigma * sigma : 0))));

describe("examples of the GUM", () => {
  test("H.1 end gauge: length, budget, effective degrees of freedom and 99 % interval", () => {
    const { endGauge } = published;
    // nm and degrees: standard, difference, difference of expansion, of temperature, expansion, deviation.
    const inputs = Float64Array.from(Object.values(endGauge.inputs));
    const { differenceParts } = endGauge;
    const sigmas = [
      25,
      Math.hypot(...differenceParts),
      1e-6 / Math.sqrt(3),
      0.05 / Math.sqrt(3),
      2e-6 / Math.sqrt(3),
      Math.hypot(0.2, 0.5 / Math.SQRT2),
    ];
    const model = ([standard, difference, da, dt, expansion, deviation]: Float64Array) => [
      standard! + difference! - standard! * (da! * deviation! + expansion! * dt!),
    ];
    const result = propagateFirstOrder(model, inputs, diagonal(sigmas));
    expect(result.values[0]).toBe(endGauge.length);
    const contributions = sigmas.map(
      (sigma, j) => Math.abs(matrixElement(result.sensitivities, 0, j)) * sigma,
    );
    const [standard, , expansion, temperature] = contributions;
    for (const [found, expected] of [
      [standard, endGauge.budget.standard],
      [expansion, endGauge.budget.expansion],
      [temperature, endGauge.budget.temperature],
    ] as const)
      expect(Math.abs(found! - expected)).toBeLessThan(1e-3);
    const u = Math.sqrt(matrixElement(result.covariance, 0, 0));
    expect(u).toBeCloseTo(endGauge.standardUncertainty, 3);
    expect(Math.round(u)).toBe(endGauge.printed.standardUncertainty);
    const effective = effectiveDegreesOfFreedom(
      [standard!, ...differenceParts, expansion!, temperature!],
      [18, 24, 5, 8, 50, 2],
    );
    expect(effective).toBeCloseTo(endGauge.effectiveDegrees, 1);
    const factor = studentTQuantile(0.995, Math.floor(effective));
    expect(factor).toBeCloseTo(endGauge.factor99, 3);
    expect(Math.round(factor * Math.round(u))).toBe(endGauge.printed.expanded99);
    expect(factor * u).toBeCloseTo(endGauge.expanded99, 1);
  });

  test("H.2 resistance, reactance and impedance from correlated inputs", () => {
    const { impedance } = published;
    const covariance = matrixFromRows(
      impedance.correlation.map((row, i) =>
        row.map((r, j) => r * impedance.sigmas[i]! * impedance.sigmas[j]!),
      ),
    );
    const model = ([voltage, current, phase]: Float64Array) => {
      const ratio = voltage! / current!;
      return [ratio * Math.cos(phase!), ratio * Math.sin(phase!), ratio];
    };
    const result = propagateFirstOrder(model, Float64Array.from(impedance.means), covariance);
    const u = [0, 1, 2].map((i) => Math.sqrt(matrixElement(result.covariance, i, i)));
    const correlation = (i: number, j: number) => matrixElement(result.covariance, i, j) / (u[i]! * u[j]!);
    for (const i of [0, 1, 2]) {
      expect(result.values[i]).toBeCloseTo(impedance.values[i]!, 4);
      expect(u[i]).toBeCloseTo(impedance.uncertainties[i]!, 5);
    }
    const { correlations, printedCorrelations } = impedance;
    for (const [name, i, j] of [
      ["RX", 0, 1],
      ["RZ", 0, 2],
      ["XZ", 1, 2],
    ] as const) {
      expect(correlation(i, j)).toBeCloseTo(correlations[name], 4);
      expect(Math.abs(correlation(i, j) - printedCorrelations[name])).toBeLessThan(0.007);
    }
  });

  test("H.3 thermometer: line, correlation of its coefficients and the correction at 30 C", () => {
    const { thermometer } = published;
    const x = Float64Array.from(thermometer.reading, (reading) => reading - thermometer.reference);
    const fit = fitLine(x, Float64Array.from(thermometer.correction));
    expect(fit.intercept).toBeCloseTo(thermometer.intercept[0]!, 6);
    expect(Math.sqrt(fit.interceptVariance)).toBeCloseTo(thermometer.intercept[1]!, 6);
    expect(fit.slope).toBeCloseTo(thermometer.slope[0]!, 8);
    expect(Math.sqrt(fit.slopeVariance)).toBeCloseTo(thermometer.slope[1]!, 8);
    const correlation = fit.covariance / Math.sqrt(fit.interceptVariance * fit.slopeVariance);
    expect(correlation).toBeCloseTo(thermometer.correlation, 6);
    expect(Math.sqrt(fit.residualSumOfSquares / fit.degreesOfFreedom)).toBeCloseTo(
      thermometer.residualDeviation,
      7,
    );
    const at30 = propagateFirstOrder(
      ([intercept, slope]) => [intercept! + 10 * slope!],
      Float64Array.of(fit.intercept, fit.slope),
      matrixFromRows([
        [fit.interceptVariance, fit.covariance],
        [fit.covariance, fit.slopeVariance],
      ]),
    );
    expect(at30.values[0]).toBeCloseTo(thermometer.at30[0]!, 6);
    expect(Math.sqrt(matrixElement(at30.covariance, 0, 0))).toBeCloseTo(thermometer.at30[1]!, 6);
  });
});

describe("propagateFirstOrder", () => {
  test("an input without spread is not varied: a model that breaks beside it does no harm", () => {
    const model = ([x, y]: Float64Array) => [x! + Math.sqrt(y!)];
    const result = propagateFirstOrder(model, Float64Array.of(1, 0), diagonal([0.5, 0]));
    expect(result.values[0]).toBe(1);
    expect(matrixElement(result.covariance, 0, 0)).toBeCloseTo(0.25, 12);
  });

  test("NaN from the model comes out; shapes and negative variances are mistakes", () => {
    const model = () => [Number.NaN];
    expect(propagateFirstOrder(model, Float64Array.of(1), diagonal([1])).covariance.values[0]).toBeNaN();
    expect(() => propagateFirstOrder(model, Float64Array.of(1, 2), diagonal([1]))).toThrow(ContractError);
    expect(() => propagateFirstOrder(model, Float64Array.of(1), matrixFromRows([[-1]]))).toThrow(
      ContractError,
    );
  });

  test("degrees of freedom: one source keeps its own, exact sources add none", () => {
    expect(effectiveDegreesOfFreedom([2], [7])).toBe(7);
    expect(effectiveDegreesOfFreedom([1, 1], [5, 5])).toBe(10);
    expect(effectiveDegreesOfFreedom([3, 4], [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY])).toBe(
      Number.POSITIVE_INFINITY,
    );
    expect(() => effectiveDegreesOfFreedom([1], [0])).toThrow(ContractError);
  });
});
