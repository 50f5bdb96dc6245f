import { describe, expect, test } from "vitest";
import univariate from "../../../test/published/nist-strd-univariate/case.json" with { type: "json" };
import { fillNormals } from "../num/random-stream.ts";
import { ContractError } from "../result.ts";
import { assessWindow } from "./assess-window.ts";

const GENEROUS = { standardError: 1, drift: 10 };
const places = (count: number, step = 0.01): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => step * i);

/** Independent normal values of unit spread. */
function white(seed: number, count: number): Float64Array {
  const values = new Float64Array(count);
  fillNormals({ seed, stream: 3 }, 0, values);
  return values;
}

/** Autoregressive values of unit spread. */
function smoothed(seed: number, count: number, r: number): Float64Array {
  const shocks = white(seed, count);
  let value = shocks[0]!;
  return shocks.map((shock) => {
    value = r * value + Math.sqrt(1 - r * r) * shock;
    return value;
  });
}

describe("assessWindow", () => {
  test("[C3] the drifting record Mavro of NIST is refused even under limits it keeps", () => {
    const mavro = Float64Array.from(univariate.mavro);
    const found = assessWindow(mavro, places(50, 1), GENEROUS);
    expect(found.steady).toBe(false);
    expect(found.why).toContain("order");
    expect(found.mean).toBeCloseTo(2.001856, 12); // certified by NIST
  });

  test("[C3] white noise: steady, mean within its standard error, spread / sqrt n (seeds 0 to 299)", () => {
    const n = 1000;
    let refused = 0;
    let squares = 0;
    let stated = 0;
    for (let seed = 0; seed < 300; seed++) {
      const found = assessWindow(white(seed, n), places(n), GENEROUS);
      if (!found.steady) refused++;
      squares += found.mean ** 2 / 300;
      stated += found.standardError ** 2 / 300;
    }
    expect(refused).toBeLessThanOrEqual(4); // two tests at 0.1 %: five or more of 300 is a chance below 1e-3
    expect(Math.abs(squares * n - 1)).toBeLessThan(3 * Math.sqrt(2 / 300));
    expect(Math.abs(stated * n - 1)).toBeLessThan(0.15);
  });

  test.each([0.3, 0.6, 0.8])(
    "[C3] values smoothed by the sensor, autocorrelation %d: standard error as theory has it, and not called moving (seeds 0 to 199)",
    (r) => {
      const n = 2000;
      let stated = 0;
      let refused = 0;
      for (let seed = 0; seed < 200; seed++) {
        const found = assessWindow(smoothed(seed, n, r), places(n), GENEROUS);
        stated += found.standardError ** 2 / 200;
        if (!found.steady) refused++;
      }
      const theory = (1 + r) / (1 - r) / n;
      expect(Math.abs(Math.sqrt(stated / theory) - 1)).toBeLessThan(0.1);
      expect(refused).toBeLessThanOrEqual(8);
    },
  );

  test("[C3] a drift is seen, and its slope per second given (seeds 0 to 49)", () => {
    const n = 1000;
    for (let seed = 0; seed < 50; seed++) {
      const times = places(n);
      const drifting = white(seed, n).map((value, i) => value + 0.08 * times[i]!);
      const found = assessWindow(drifting, times, GENEROUS);
      expect(found.steady, `seed ${seed}`).toBe(false);
      expect(Math.abs(found.slope - 0.08), `seed ${seed}`).toBeLessThan((4 * Math.sqrt(12 / n)) / 10);
    }
  });

  test("[C3] a step in the middle is seen (seeds 0 to 49)", () => {
    for (let seed = 0; seed < 50; seed++) {
      const stepped = white(seed, 1000).map((value, i) => value + (i < 500 ? 0 : 0.8));
      expect(assessWindow(stepped, places(1000), GENEROUS).steady, `seed ${seed}`).toBe(false);
    }
  });

  test("[C3] limits are kept to: standard error and change over the window", () => {
    const values = white(5, 1000);
    expect(assessWindow(values, places(1000), { standardError: 0.01, drift: 10 }).why).toEqual([
      "standard-error",
    ]);
    expect(assessWindow(values, places(1000), { standardError: 1, drift: 1e-6 }).why).toEqual(["drift"]);
  });

  test("[C3] a sensor that shows one value all the time is steady; too few or missing values never are", () => {
    expect(assessWindow(new Float64Array(500).fill(2), places(500), GENEROUS)).toMatchObject({
      mean: 2,
      standardError: 0,
      steady: true,
    });
    expect(assessWindow(new Float64Array(7), places(7), GENEROUS).why).toEqual(["too-few"]);
    expect(assessWindow(white(1, 500).fill(Number.NaN, 3, 4), places(500), GENEROUS).steady).toBe(false);
    expect(assessWindow(new Float64Array(0), places(0), GENEROUS).mean).toBeNaN();
  });

  test("without time between the values there is no slope", () => {
    expect(assessWindow(white(1, 20), new Float64Array(20), GENEROUS).slope).toBeNaN();
  });

  test("throws ContractError for lengths that differ", () => {
    expect(() => assessWindow(white(1, 20), places(19), GENEROUS)).toThrow(ContractError);
  });
});
