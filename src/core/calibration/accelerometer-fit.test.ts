import { describe, expect, test } from "vitest";
import published from "../../../test/published/accelerometer-six-position/case.json" with { type: "json" };
import { correctAccelerations, fitAccelerometer } from "./accelerometer-fit.ts";

type Position = { expected: readonly [number, number, number]; shown: readonly [number, number, number] };
const triple = ([x, y, z]: readonly number[]): [number, number, number] => [x!, y!, z!];
const six: readonly Position[] = published.positions.map(({ expected, shown }) => ({
  expected: triple(expected),
  shown: triple(shown),
}));

describe("[B2] accelerometers from known positions", () => {
  const fit = fitAccelerometer(six)!;

  test("six positions: the 12 numbers of the worked case to half of their last digit", () => {
    expect(published.matrix.flat()).toHaveLength(12);
    for (const [i, value] of published.matrix.flat().entries())
      expect(Math.abs(fit.matrix[i]! - value), `element ${i}`).toBeLessThan(5.1e-9);
    expect(fit.degreesOfFreedom).toBe(published.degreesOfFreedom);
    expect(Math.abs(fit.residualDeviation - published.residualDeviation)).toBeLessThan(5.1e-8);
  });

  test("a reading corrected by them", () => {
    const [x, y, z] = correctAccelerations(fit, ...triple(published.reading.shown));
    for (const [i, value] of [x, y, z].entries())
      expect(Math.abs(value - published.reading.corrected[i]!)).toBeLessThan(5.1e-9);
    expect(Math.hypot(x, y, z)).toBeCloseTo(published.reading.magnitude, 6);
    const inclination = (Math.atan2(Math.hypot(x, y), z) * 180) / Math.PI;
    expect(inclination).toBeCloseTo(published.reading.inclinationDeg, 5);
  });

  test("finds zeros, scales and cross terms that were put in", () => {
    const zero = [0.02, -0.01, 0.03];
    const mix = [
      [1.01, 0.002, 0],
      [-0.001, 0.99, 0.004],
      [0, 0.003, 1.005],
    ];
    const shown = (t: readonly number[]): [number, number, number] =>
      triple(mix.map((row, i) => row[0]! * t[0]! + row[1]! * t[1]! + row[2]! * t[2]! + zero[i]!));
    const exact = six.map(({ expected }) => ({ expected, shown: shown(expected) }));
    const back = correctAccelerations(fitAccelerometer(exact)!, ...shown([0.3, -0.2, -0.9]));
    expect(back[0]).toBeCloseTo(0.3, 12);
    expect(back[1]).toBeCloseTo(-0.2, 12);
    expect(back[2]).toBeCloseTo(-0.9, 12);
  });

  test("five positions, or six that do not span all directions, determine nothing", () => {
    expect(fitAccelerometer(six.slice(0, 5))).toBeUndefined();
    const flat = six.map(({ expected, shown }) => ({
      expected: [expected[0], expected[1], 0],
      shown,
    })) as Position[];
    expect(fitAccelerometer(flat)).toBeUndefined();
    const twice = [...six.slice(0, 3), ...six.slice(0, 3)].map(({ expected, shown }, i) => ({
      expected,
      shown: triple(shown.map((value) => value + 1e-4 * ((i * 7) % 5))),
    }));
    expect(fitAccelerometer(twice)).toBeUndefined();
  });
});
