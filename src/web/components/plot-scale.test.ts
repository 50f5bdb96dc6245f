import { describe, expect, test } from "vitest";
import { plotScale, roundStep } from "./plot-scale.ts";

describe("a scale of a plot", () => {
  test.each([
    [10, 5, 2],
    [9, 5, 2],
    [0.3, 4, 0.1],
    [47, 6, 10],
  ])("counts a span of %f in about %i steps of %f", (span, most, step) => {
    expect(roundStep(span, most)).toBeCloseTo(step, 12);
  });

  test("holds every value, runs from tick to tick, and puts its ends at the ends of the drawing", () => {
    const values = [-0.37, 0.12, 2.9, Number.NaN];
    const scale = plotScale(values, 10, 210, 6);
    expect(scale.from).toBeLessThanOrEqual(-0.37);
    expect(scale.to).toBeGreaterThanOrEqual(2.9);
    expect(scale.ticks[0]).toBeCloseTo(scale.from, 12);
    expect(scale.ticks.at(-1)).toBeCloseTo(scale.to, 12);
    expect(scale.place(scale.from)).toBeCloseTo(10, 9);
    expect(scale.place(scale.to)).toBeCloseTo(210, 9);
  });

  test("has room around a single value, and around none", () => {
    for (const values of [[3], [0], []]) {
      const scale = plotScale(values, 0, 1, 4);
      expect(scale.to).toBeGreaterThan(scale.from);
      for (const value of values) expect(scale.place(value)).toBeGreaterThanOrEqual(0);
    }
  });
});
