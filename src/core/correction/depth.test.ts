import { describe, expect, test } from "vitest";
import type { Leg } from "../readings/survey-run.ts";
import { correctDepths, hangingStretch } from "./depth.ts";

const GRAVITY = 9.80665;
const cable = {
  axialStiffnessN: 100_000,
  probeWeightN: 8.5 * GRAVITY,
  cableWeightNPerM: 0.035 * GRAVITY,
};
const raw = (depths: readonly number[], leg: readonly Leg[] = depths.map(() => ""), counts = false) => ({
  depthM: Float64Array.from(depths, (depth) => (counts ? Number.NaN : depth)),
  depthCounts: Float64Array.from(depths, (depth) => (counts ? depth : Number.NaN)),
  leg,
});
const out: readonly Leg[] = ["open", "down", "down", "up", "close"];

describe("[C5] depth", () => {
  // 60 m, 8.5 kg probe, 0.035 kg/m cable in the fluid, EA = 100 kN: 56.19 mm, worked by hand beforehand.
  test("stretch of a hanging cable: the worked case, 56.19 mm", () => {
    expect(Math.abs(hangingStretch(60, cable) - 0.05619)).toBeLessThan(5e-6);
    expect(hangingStretch(0, cable)).toBe(0);
  });

  test("the stretch is added to every row, and the largest told", () => {
    const { depthM, largestStretchM } = correctDepths(raw([0, 60]), Number.NaN, 0, cable);
    expect(depthM[1]).toBeCloseTo(60.05619, 5);
    expect(largestStretchM).toBeCloseTo(0.05619, 5);
  });

  test("counts are turned to metres, metres are left, the zero is added to both", () => {
    const mixed = { ...raw([2, 3]), depthCounts: Float64Array.from([9999, 9999]) };
    expect([...correctDepths(mixed, 0.01, 0.5, undefined).depthM]).toEqual([2.5, 3.5]);
    expect([...correctDepths(raw([100, 250], undefined, true), 0.01, 0.5, undefined).depthM]).toEqual([
      1.5, 3,
    ]);
  });

  test("the misclosure of the return is spread in proportion to the travel: 0.2 m over 20 m", () => {
    const { depthM, returnMisclosureM } = correctDepths(
      raw([0, 5, 10, 5.1, 0.2], out),
      Number.NaN,
      0,
      undefined,
    );
    // travel 0, 5, 10, 14.9, 19.8 of 19.8
    expect(returnMisclosureM).toBeCloseTo(0.2, 15);
    expect(depthM[0]).toBe(0);
    expect(depthM[1]).toBeCloseTo(5 - (0.2 * 5) / 19.8, 12);
    expect(depthM[2]).toBeCloseTo(10 - (0.2 * 10) / 19.8, 12);
    expect(depthM[3]).toBeCloseTo(5.1 - (0.2 * 14.9) / 19.8, 12);
    expect(depthM[4]).toBeCloseTo(0, 15);
  });

  test("a missing depth stays missing and keeps nothing from the others", () => {
    const whole = correctDepths(raw([0, 5, 10, 5.1, 0.2], out), Number.NaN, 0, cable);
    const legs: readonly Leg[] = ["open", "down", "down", "down", "up", "close"];
    const torn = correctDepths(raw([0, 5, Number.NaN, 10, 5.1, 0.2], legs), Number.NaN, 0, cable);
    expect(torn.depthM[2]).toBeNaN();
    expect([...torn.depthM].filter((_, i) => i !== 2)).toEqual([...whole.depthM]);
    expect(torn.largestStretchM).toBe(whole.largestStretchM);
    expect(torn.returnMisclosureM).toBe(whole.returnMisclosureM);
  });

  test("counts without a scale are missing, not 0", () => {
    expect([...correctDepths(raw([100], undefined, true), Number.NaN, 0, undefined).depthM]).toEqual([
      Number.NaN,
    ]);
  });

  test("without rows that say they stand at the top there is no misclosure, nor with one whose depth is missing", () => {
    for (const [depths, leg] of [
      [
        [0, 5, 0.2],
        ["", "", ""],
      ],
      [
        [0, 5, 0.2],
        ["open", "down", "up"],
      ],
      [
        [0, 5, Number.NaN],
        ["open", "down", "close"],
      ],
    ] as const) {
      const { depthM, returnMisclosureM } = correctDepths(raw(depths, leg), Number.NaN, 0, undefined);
      expect(returnMisclosureM).toBeNaN();
      expect([...depthM]).toEqual([...depths]);
    }
  });
});
