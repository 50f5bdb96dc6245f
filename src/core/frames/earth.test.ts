import { describe, expect, test } from "vitest";
import published from "../../../test/published/gravity-earth-rate/case.json" with { type: "json" };
import { norm } from "../geometry/vector.ts";
import { RADIANS_PER_DEGREE as DEG, SECONDS_PER_HOUR } from "../units/quantity.ts";
import { EARTH_RATE_RAD_PER_S, earthRateGrid, earthRateNed, normalGravity } from "./earth.ts";

const degreesPerHour = (rate: number): number => (rate / DEG) * SECONDS_PER_HOUR;

describe("[A5] earth rate", () => {
  test("WGS 84: 15.041067 degrees an hour", () => {
    expect(degreesPerHour(EARTH_RATE_RAD_PER_S)).toBeCloseTo(15.041067, 6);
  });

  test.each(published.earthRate.map((row) => [row.latitudeDeg, row] as const))(
    "at %f degrees",
    (latitude, row) => {
      const rate = earthRateNed(latitude * DEG);
      expect(Math.abs(degreesPerHour(rate.north) - row.horizontalDegPerH)).toBeLessThan(5.1e-6);
      expect(Math.abs(-degreesPerHour(rate.down) - row.verticalDegPerH)).toBeLessThan(5.1e-6);
      expect(rate.east).toBe(0);
    },
  );

  test("points up in the south as seen along down: a plumb gyro shows the other sign there", () => {
    expect(earthRateNed(-51.5 * DEG).down).toBeGreaterThan(0);
    expect(earthRateNed(-51.5 * DEG).north).toBeCloseTo(earthRateNed(51.5 * DEG).north, 18);
  });

  test("NaN stays NaN", () => {
    expect(earthRateNed(Number.NaN).north).toBeNaN();
    expect(earthRateNed(Number.NaN).down).toBeNaN();
  });
});

describe("[A5] earth rate in the grid", () => {
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

describe("[A1] normal gravity", () => {
  test.each(published.gravity.map((row) => [row.latitudeDeg, row.heightM, row] as const))(
    "published value at %f degrees, %f m",
    (latitude, height, row) => {
      const tolerance = row.source.startsWith("NIMA") ? 1e-10 : 5.1e-9;
      expect(Math.abs(normalGravity(latitude * DEG, height) - row.gravity)).toBeLessThan(tolerance);
    },
  );

  test.each(published.gravityTable.map((row) => [row.latitudeDeg, row.heightM, row] as const))(
    "second reading of the formula at %f degrees, %f m",
    (latitude, height, row) => {
      expect(Math.abs(normalGravity(latitude * DEG, height) - row.gravity)).toBeLessThan(1e-10);
    },
  );

  test("the same north and south of the equator; NaN stays NaN", () => {
    expect(normalGravity(-40 * DEG, 12)).toBe(normalGravity(40 * DEG, 12));
    expect(normalGravity(Number.NaN, 0)).toBeNaN();
    expect(normalGravity(0.9, Number.NaN)).toBeNaN();
  });
});
