import { describe, expect, test } from "vitest";
import published from "../../../test/published/gravity-earth-rate/case.json" with { type: "json" };
import { tangentFromInclination } from "../frames/attitude.ts";
import { type NorthEastDown, ned } from "../geometry/vector.ts";
import { RADIANS_PER_DEGREE as DEG, SECONDS_PER_HOUR } from "../units/quantity.ts";
import type { GyroZeroCalibration } from "./calibration.ts";
import { gyroOwnRate, gyroScale } from "./gyro-zero.ts";

const perHour = DEG / SECONDS_PER_HOUR;
const atRest = (rateDegPerH: number, axis: NorthEastDown, latitudeDeg = 51.5): GyroZeroCalibration => ({
  kind: "gyro-zero",
  id: "gz",
  instrumentId: "probe",
  madeAt: "2026-03-02T07:00:00Z",
  validity: { until: undefined, maxRuns: undefined, endedBy: [] },
  field: "calibrations[0]",
  rateRadPerS: rateDegPerH * perHour,
  standardUncertaintyRadPerS: undefined,
  axisTrueNed: [axis.north, axis.east, axis.down],
  latitudeRad: latitudeDeg * DEG,
});
const ownDegPerH = (calibration: GyroZeroCalibration) => gyroOwnRate(calibration) / perHour;
const vertical = published.earthRate.find((row) => row.latitudeDeg === 51.5)!.verticalDegPerH;

describe("[A5] [B3] the gyro's own rate", () => {
  test("upright: a gyro without fault at 51.5 N shows the vertical rate, negative about an axis pointing down", () => {
    expect(Math.abs(ownDegPerH(atRest(-vertical, ned(0, 0, 1))))).toBeLessThan(5.1e-6);
    expect(Math.abs(ownDegPerH(atRest(3.1, ned(0, 0, 1))) - (3.1 + vertical))).toBeLessThan(5.1e-6);
  });

  test("inverted: the earth counts the other way, so half the sum of both is the gyro's own", () => {
    expect(Math.abs(ownDegPerH(atRest(3.1 + vertical, ned(0, 0, -1))) - 3.1)).toBeLessThan(5.1e-6);
  });

  // Omega (cos lat sin I cos A - sin lat cos I) at 51.5 N, worked out beforehand, degrees an hour to 3 decimals.
  test.each([
    [0, 0, -11.771],
    [2, 0, -11.437],
    [10, 0, -9.967],
    [10, 90, -11.592],
    [10, 180, -13.218],
    [20, 0, -7.859],
    [20, 180, -14.264],
    [30, 45, -6.884],
  ])("inclined %f degrees towards true %f: a gyro without fault shows %f", (inclination, azimuth, shown) => {
    const own = ownDegPerH(atRest(shown, tangentFromInclination(inclination * DEG, azimuth * DEG)));
    expect(Math.abs(own)).toBeLessThan(5.1e-4);
  });

  test("a rate that is not known stays so", () => {
    expect(gyroOwnRate(atRest(Number.NaN, ned(0, 0, 1)))).toBeNaN();
  });
});

describe("[B3] gyro scale", () => {
  test("shown turn for a radian of true turn, mean of the repeats: 719.64 and 719.28 over 720 degrees", () => {
    expect(gyroScale(720 * DEG, [719.64 * DEG, 719.28 * DEG])).toBeCloseTo(0.99925, 12);
  });

  test("the other way round gives the same", () => {
    expect(gyroScale(-720 * DEG, [-719.46 * DEG])).toBeCloseTo(0.99925, 12);
  });
});
