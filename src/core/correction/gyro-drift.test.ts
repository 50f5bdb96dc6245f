import { describe, expect, test } from "vitest";
import published from "../../../test/published/gyro-drift-ties/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { RADIANS_PER_DEGREE as DEG } from "../units/quantity.ts";
import { fitGyroDrift, type HeadingTie } from "./gyro-drift.ts";

const tie = (timeMin: number, turnDeg: number, errorDeg: number, uncertaintyDeg = 0.02): HeadingTie => ({
  timeS: timeMin * 60,
  turnRad: turnDeg * DEG,
  errorRad: errorDeg * DEG,
  standardUncertaintyRad: uncertaintyDeg * DEG,
});

describe("[C4] drift and scale of the gyro", () => {
  test("seven ties: the worked case to half of its last digits", () => {
    const ties = published.timeMin.map((time, i) => tie(time, published.turnDeg[i]!, published.errorDeg[i]!));
    const fit = fitGyroDrift(ties);
    const [start, rate, scale] = fit.standardUncertainties;
    const { startDeg, rateDegPerMin, sigma0Deg } = published;
    const within = (value: number, expected: number, half: number) =>
      expect(Math.abs(value - expected)).toBeLessThanOrEqual(1.01 * half);
    within(fit.startRad / DEG, startDeg.value, startDeg.half);
    within(start / DEG, startDeg.uncertainty, startDeg.half);
    within((fit.rateRadPerS * 60) / DEG, rateDegPerMin.value, rateDegPerMin.half);
    within((rate * 60) / DEG, rateDegPerMin.uncertainty, rateDegPerMin.half);
    within(fit.scale, published.scale.value, published.scale.half);
    within(scale, published.scale.uncertainty, published.scale.half);
    within(fit.sigma0 / DEG, sigma0Deg.value, sigma0Deg.half);
    for (const [i, residual] of published.residualsDeg.entries()) {
      const { timeS, turnRad, errorRad } = ties[i]!;
      const left = errorRad - (fit.startRad + fit.rateRadPerS * timeS + fit.scale * turnRad);
      within(left / DEG, residual, 5e-6);
    }
  });

  test("two ties: the straight line through both, and nothing to judge it by", () => {
    const fit = fitGyroDrift([tie(0, 0, 0.1), tie(10, 400, 0.6)]);
    expect((fit.rateRadPerS * 60) / DEG).toBeCloseTo(0.05, 12);
    expect(fit.startRad / DEG).toBeCloseTo(0.1, 12);
    expect(fit.scale).toBe(0);
    expect(fit.sigma0).toBeNaN();
    expect(fit.standardUncertainties).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });

  test("a tie known ten times better pulls a hundred times harder", () => {
    const fit = fitGyroDrift([tie(0, 0, 0, 0.1), tie(0, 0, 1, 0.01), tie(10, 0, 1, 0.01)]);
    // mean of 0 and 1 with weights 1 and 100 at the start
    expect(fit.startRad / DEG).toBeCloseTo(100 / 101, 9);
  });

  test("ties read at nearly the same turn do not show the scale: it is left at 0", () => {
    const turns = [0, 0.4, -0.3, 0.2, 0.5];
    const errors = [0, 0.21, 0.38, 0.62, 0.79];
    const fit = fitGyroDrift(turns.map((turn, i) => tie(10 * i, turn, errors[i]!, 0.1)));
    expect(fit.scale).toBe(0);
    expect(fit.standardUncertainties[2]).toBeNaN();
    expect((fit.rateRadPerS * 60) / DEG).toBeCloseTo(0.02, 3);
  });

  test("a steady turning cannot be told from a drift: it counts as drift", () => {
    const fit = fitGyroDrift([0, 1, 2, 3, 4].map((i) => tie(10 * i, 90 * i, 0.3 * i)));
    expect(fit.scale).toBe(0);
    expect((fit.rateRadPerS * 60) / DEG).toBeCloseTo(0.03, 12);
  });

  test("an uncertainty given as 0 is a very good tie, not an infinite weight", () => {
    const fit = fitGyroDrift([tie(0, 0, 0.1, 0), tie(10, 0, 0.3, 0), tie(20, 0, 0.5, 0)]);
    expect((fit.rateRadPerS * 60) / DEG).toBeCloseTo(0.02, 12);
    expect(fit.sigma0 / DEG).toBeCloseTo(0, 12);
  });

  test("one tie, or no time between them, is the caller's mistake", () => {
    expect(() => fitGyroDrift([tie(0, 0, 0)])).toThrow(ContractError);
    expect(() => fitGyroDrift([tie(5, 0, 0), tie(5, 90, 1)])).toThrow(ContractError);
  });
});
