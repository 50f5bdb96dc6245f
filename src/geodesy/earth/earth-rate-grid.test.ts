import { describe, expect, test } from "vitest";
import { RADIANS_PER_DEGREE as DEG, EARTH_RATE_RAD_PER_S, norm } from "#core";
import { earthRateGrid } from "./earth-rate-grid.ts";

describe("earth rate in the grid", () => {
  test("points to the grid bearing of true north, which is minus the convergence", () => {
    const rate = earthRateGrid(51.5 * DEG, 2 * DEG);
    expect(Math.atan2(rate.east, rate.north)).toBeCloseTo(-2 * DEG, 14);
    expect(rate.down).toBeLessThan(0);
  });

  test("keeps its size, whatever the convergence", () => {
    for (const convergence of [-3, 0, 1.5, 40])
      expect(norm(earthRateGrid(51.5 * DEG, convergence * DEG)) / EARTH_RATE_RAD_PER_S).toBeCloseTo(1, 14);
  });

  test("NaN stays NaN", () => {
    expect(earthRateGrid(Number.NaN, 0).north).toBeNaN();
    expect(earthRateGrid(0.9, Number.NaN).east).toBeNaN();
  });
});
