import { describe, expect, test } from "vitest";
import { RADIANS_PER_DEGREE as DEG } from "../units/quantity.ts";
import { tangentFromInclination, tangentFromTilt, tiltFromAcceleration } from "./attitude.ts";

describe("tilts from accelerations", () => {
  test("[A1] a plumb probe shows the reaction to gravity, (0, 0, -g), and no lean", () => {
    const tilt = tiltFromAcceleration(0, 0, -9.81);
    expect(tilt).toMatchObject({ x: 0, y: 0, magnitude: 9.81, upsideDown: false });
  });

  test("[A1] leaning towards +x by 5 degrees, the reaction to gravity has a part along +x: sx = -g_x = +sin 5", () => {
    // The down-hole axis goes towards +x, so "up" tips towards +x of the probe as well.
    const tilt = tiltFromAcceleration(Math.sin(5 * DEG), 0, -Math.cos(5 * DEG));
    expect(tilt.x).toBeCloseTo(Math.sin(5 * DEG), 15);
    expect(tilt.y).toBe(0);
  });

  test.each([1, 9.80665, 1000, 1e-3])("[A1] the unit does not matter: magnitude %f", (unit) => {
    const tilt = tiltFromAcceleration(0.3 * unit, -0.4 * unit, -Math.sqrt(0.75) * unit);
    expect(tilt.x).toBeCloseTo(0.3, 14);
    expect(tilt.y).toBeCloseTo(-0.4, 14);
    expect(tilt.magnitude / unit).toBeCloseTo(1, 14);
  });

  test("[A1] a sensor that shows gravity itself is told, a missing value is not a lean", () => {
    expect(tiltFromAcceleration(0, 0, 1).upsideDown).toBe(true);
    expect(tiltFromAcceleration(0, 0, 0).x).toBeNaN();
    expect(tiltFromAcceleration(Number.NaN, 0, -1).y).toBeNaN();
  });
});

describe("direction of the hole", () => {
  test.each([
    [0, 0.1, 0, [0.1, 0]],
    [90, 0.1, 0, [0, 0.1]],
    [90, 0, 0.1, [-0.1, 0]],
    [180, 0.1, 0.2, [-0.1, -0.2]],
    [-30, 0, 0.2, [0.2 * Math.sin(30 * DEG), 0.2 * Math.cos(30 * DEG)]],
  ] as const)("[A2] heading %f, tilts %f and %f", (heading, x, y, [north, east]) => {
    const tangent = tangentFromTilt({ x, y }, heading * DEG);
    expect(tangent.north).toBeCloseTo(north, 15);
    expect(tangent.east).toBeCloseTo(east, 15);
    expect(tangent.down).toBeCloseTo(Math.sqrt(1 - x * x - y * y), 15);
  });

  test("[A2] sines too large together, a missing tilt or heading: no direction at all", () => {
    for (const tangent of [
      tangentFromTilt({ x: 0.8, y: 0.7 }, 0.3),
      tangentFromTilt({ x: Number.NaN, y: 0 }, 0.3),
      tangentFromTilt({ x: 0, y: 0 }, Number.NaN),
    ])
      expect([tangent.north, tangent.east, tangent.down]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });

  test("[A2] a horizontal probe still has a direction", () => {
    expect(tangentFromTilt({ x: 1, y: 0 }, 0)).toEqual({ north: 1, east: 0, down: 0 });
  });

  test.each([0, 1, -7, Number.NaN])("[A3] plumb is plumb, whatever azimuth is written: %f", (azimuth) => {
    expect(tangentFromInclination(0, azimuth)).toEqual({ north: 0, east: 0, down: 1 });
  });

  test("[A3] t = (sin I cos A, sin I sin A, cos I); a lean without an azimuth is no direction", () => {
    const tangent = tangentFromInclination(30 * DEG, 300 * DEG);
    expect(tangent.north).toBeCloseTo(0.25, 15);
    expect(tangent.east).toBeCloseTo(-Math.sqrt(3) / 4, 15);
    expect(tangent.down).toBeCloseTo(Math.sqrt(3) / 2, 15);
    expect(tangentFromInclination(1e-9, Number.NaN).north).toBeNaN();
  });

  test("[A3] near plumb the lean keeps its digits: 1e-9 rad", () => {
    expect(tangentFromInclination(1e-9, 0).north).toBe(1e-9);
  });
});
