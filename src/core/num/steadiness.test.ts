import { describe, expect, test } from "vitest";
import univariate from "../../../test/published/nist-strd-univariate/case.json" with { type: "json" };
import published from "../../../test/published/series-tests/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { fillNormals } from "./random-stream.ts";
import { seriesMean } from "./series-mean.ts";
import { judgeSteadiness } from "./steadiness.ts";

const mavro = Float64Array.from(univariate.mavro);
const GENEROUS = { standardError: 1, drift: 10 };

/** Independent normal readings about 5 with unit spread. */
function still(seed: number, count: number): Float64Array {
  const readings = new Float64Array(count);
  fillNormals({ seed, stream: 0 }, 0, readings);
  return readings.map((value) => 5 + value);
}

describe("seriesMean", () => {
  test("[C3] of the drifting record Mavro: 1.6 independent values in 50", () => {
    const found = seriesMean(mavro);
    expect(found.autocorrelation).toBeCloseTo(published.mavro.lag1Autocorrelation, 12);
    expect(found.effectiveCount).toBeCloseTo(published.mavro.effectiveCount, 2);
    expect(found.standardError).toBeCloseTo(published.mavro.standardError, 6);
    expect(found.standardDeviation / Math.sqrt(50)).toBeCloseTo(published.mavro.naiveStandardError, 8);
  });

  test("[C3] the standard error of autoregressive readings is right on average (seeds 0 to 199)", () => {
    const [n, r] = [400, 0.6];
    let meanSquare = 0;
    let stated = 0;
    for (let seed = 0; seed < 200; seed++) {
      const shocks = still(seed, n + 50).map((value) => value - 5);
      let value = 0;
      const series = shocks.map((shock) => {
        value = r * value + shock;
        return value;
      });
      const found = seriesMean(series.subarray(50));
      meanSquare += found.mean ** 2 / 200;
      stated += found.standardError / 200;
    }
    expect(Math.abs(stated / Math.sqrt(meanSquare) - 1)).toBeLessThan(0.15);
  });

  test("equal readings have no error; a missing one is not passed over", () => {
    expect(seriesMean([3, 3, 3])).toMatchObject({ mean: 3, standardError: 0, autocorrelation: 0 });
    expect(seriesMean([3, Number.NaN, 3]).standardError).toBeNaN();
    expect(() => seriesMean([1, 2])).toThrow(ContractError);
  });
});

describe("judgeSteadiness", () => {
  test("[C3] the drifting record Mavro is refused even under limits it keeps", () => {
    const found = judgeSteadiness(mavro, GENEROUS);
    expect(found.state).toBe("moving");
    expect(found.reasons).toContain("order");
    expect(found.drift / 49).toBeCloseTo(published.mavro.slope, 10);
    expect(found.slopeRatio).toBeCloseTo(published.mavro.slopeRatio, 2);
    expect(found.vonNeumann).toBeCloseTo(published.mavro.vonNeumann, 7);
  });

  test("[C3] readings at rest are refused hardly ever (seeds 0 to 499)", () => {
    let refused = 0;
    for (let seed = 0; seed < 500; seed++)
      if (judgeSteadiness(still(seed, 80), GENEROUS).state !== "steady") refused++;
    expect(refused).toBeLessThanOrEqual(5); // two tests at 0.1 %: one expected, six or more is a chance below 1e-3
  });

  test("[C3] a steady climb within the drift limit is still seen", () => {
    for (let seed = 0; seed < 20; seed++) {
      const climbing = still(seed, 100).map((value, i) => value + 0.05 * i);
      const { state, reasons } = judgeSteadiness(climbing, GENEROUS);
      expect(state, `seed ${seed}`).toBe("moving");
      expect(reasons, `seed ${seed}`).toContain("slope");
    }
  });

  test("[C3] each limit refuses on its own", () => {
    const readings = still(7, 100);
    expect(judgeSteadiness(readings, { standardError: 0.01, drift: 10 }).reasons).toEqual(["standard-error"]);
    expect(judgeSteadiness(readings, { standardError: 1, drift: 1e-6 }).reasons).toEqual(["drift"]);
  });

  test("[C3] a quantised sensor at rest is steady; too few or missing readings never are", () => {
    expect(judgeSteadiness(new Float64Array(20).fill(4), GENEROUS).state).toBe("steady");
    expect(judgeSteadiness(new Float64Array(7), GENEROUS).reasons).toEqual(["too-few"]);
    expect(judgeSteadiness(still(1, 20).fill(Number.NaN, 3, 4), GENEROUS).reasons).toEqual(["missing"]);
    expect(judgeSteadiness(new Float64Array(0), GENEROUS).state).toBe("moving");
  });

  test("throws ContractError for a limit that is not positive", () => {
    expect(() => judgeSteadiness(mavro, { standardError: 0, drift: 1 })).toThrow(ContractError);
  });
});
