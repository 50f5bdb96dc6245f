import { describe, expect, test } from "vitest";
import { gridAzimuth, magneticAzimuth, radiansFromDegrees as rad, radians, trueAzimuth } from "#core";
import {
  gridFromMagnetic,
  gridFromTrue,
  magneticFromTrue,
  trueFromGrid,
  trueFromMagnetic,
} from "./turn-azimuth.ts";

describe("[C6] turning azimuths", () => {
  test("grid = true - convergence, true = magnetic + declination", () => {
    expect(gridFromTrue(trueAzimuth(rad(90)), rad(2))).toBeCloseTo(rad(88), 12);
    expect(trueFromMagnetic(magneticAzimuth(rad(90)), rad(3))).toBeCloseTo(rad(93), 12);
    expect(gridFromMagnetic(magneticAzimuth(rad(90)), rad(3), rad(2))).toBeCloseTo(rad(91), 12);
  });

  test("across north they stay within one turn", () => {
    expect(gridFromTrue(trueAzimuth(rad(1)), rad(2))).toBeCloseTo(rad(359), 12);
    expect(trueFromMagnetic(magneticAzimuth(rad(359)), rad(3))).toBeCloseTo(rad(2), 12);
  });

  test("there and back again", () => {
    for (const degrees of [0, 12, 89.5, 180, 271, 359.9]) {
      const start = trueAzimuth(rad(degrees));
      expect(Math.cos(trueFromGrid(gridFromTrue(start, rad(-1.7)), rad(-1.7)) - start)).toBeCloseTo(1, 14);
      expect(Math.cos(trueFromMagnetic(magneticFromTrue(start, rad(4)), rad(4)) - start)).toBeCloseTo(1, 14);
    }
  });

  test("NaN stays NaN", () => {
    expect(gridFromTrue(trueAzimuth(Number.NaN), rad(1))).toBeNaN();
    expect(trueFromMagnetic(magneticAzimuth(1), radians(Number.NaN))).toBeNaN();
  });

  test("the compiler refuses a mixture", () => {
    // @ts-expect-error a grid azimuth is not a true one
    expect(gridFromTrue(gridAzimuth(1), rad(1))).not.toBeNaN();
    // @ts-expect-error a true azimuth is not a magnetic one
    expect(trueFromMagnetic(trueAzimuth(1), rad(1))).not.toBeNaN();
    // @ts-expect-error a bare number is no azimuth
    expect(trueFromGrid(1, rad(1))).not.toBeNaN();
  });
});
