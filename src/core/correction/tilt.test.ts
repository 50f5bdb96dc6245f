import { describe, expect, test } from "vitest";
import { readingsOf } from "../../../test/support/readings.ts";
import { tiltsFromAccelerations, tiltsFromAngles, withoutZero } from "./tilt.ts";

const asShown = (x: number, y: number, z: number) => [x, y, z] as const;

describe("[C1] tilts", () => {
  test("reading less zero as angles, then the sine", () => {
    const readings = readingsOf([
      { tiltXRad: 0.31, tiltYRad: -0.19 },
      { tiltXRad: Number.NaN, tiltYRad: 0 },
    ]);
    const tilts = tiltsFromAngles(readings, { xRad: 0.01, yRad: 0.01 });
    expect(tilts.x[0]).toBeCloseTo(Math.sin(0.3), 15);
    expect(tilts.y[0]).toBeCloseTo(Math.sin(-0.2), 15);
    expect(tilts.x[1]).toBeNaN();
  });

  test("a zero taken off sines is the same as one taken off the angles", () => {
    const readings = readingsOf([{ tiltXRad: 0.31, tiltYRad: -0.19 }]);
    const later = withoutZero(tiltsFromAngles(readings, { xRad: 0, yRad: 0 }), { xRad: 0.01, yRad: -0.02 });
    const atOnce = tiltsFromAngles(readings, { xRad: 0.01, yRad: -0.02 });
    expect(later.x[0]).toBeCloseTo(atOnce.x[0]!, 15);
    expect(later.y[0]).toBeCloseTo(atOnce.y[0]!, 15);
  });

  test("[A1] accelerations: leans, spread of the magnitude, rows that point the wrong way", () => {
    const tilts = tiltsFromAccelerations(
      readingsOf([
        { accX: 0.3, accY: 0, accZ: -Math.sqrt(0.91) },
        { accX: 0, accY: 0.4, accZ: -Math.sqrt(0.84) },
        { accX: 0, accY: 0, accZ: 1.02 },
        { accX: Number.NaN, accY: 0, accZ: -1 },
      ]),
      asShown,
    );
    expect(tilts.x[0]).toBeCloseTo(0.3, 14);
    expect(tilts.y[1]).toBeCloseTo(0.4, 14);
    expect(tilts.upsideDownRows).toEqual([2]);
    expect(tilts.magnitudeSpread).toBeCloseTo(0.02, 14);
    expect(tilts.x[3]).toBeNaN();
  });

  test("[B2] the calibration is asked for each row", () => {
    const tilts = tiltsFromAccelerations(readingsOf([{ accX: 0.5, accY: 0, accZ: -1 }]), (x, y, z) => [
      x - 0.5,
      y,
      z,
    ]);
    expect(tilts.x[0]).toBe(0);
  });

  test("nothing read: no spread, no rows", () => {
    expect(tiltsFromAccelerations(readingsOf([{}]), asShown)).toMatchObject({
      magnitudeSpread: 0,
      upsideDownRows: [],
    });
  });
});
