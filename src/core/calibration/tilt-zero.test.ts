import { describe, expect, test } from "vitest";
import { ContractError } from "../result.ts";
import type { FaceReading } from "./calibration.ts";
import { tiltZero } from "./tilt-zero.ts";

const reading = (face: 1 | 2, x: number, y: number): FaceReading => ({ face, xRad: x, yRad: y });

describe("[B1] zero of the tilts from two faces", () => {
  test("worked by hand: (12.43, -3.18) and (-9.87, 6.02) mm/m give tilt (11.15, -4.60) and zero (1.28, 1.42)", () => {
    const zero = tiltZero([reading(1, 0.01243, -0.00318), reading(2, -0.00987, 0.00602)]);
    expect(zero.xRad).toBeCloseTo(0.00128, 15);
    expect(zero.yRad).toBeCloseTo(0.00142, 15);
    expect(zero.seatXRad).toBeCloseTo(0.01115, 15);
    expect(zero.seatYRad).toBeCloseTo(-0.0046, 15);
    expect(zero).toMatchObject({ pairs: 1, misfitRad: 0 });
  });

  // Readings of -K sin + b form: half sums 16, 17, 16.5 and 15 units, mean 16.125, largest departure 1.125.
  test("several pairs: the mean, and the largest departure of one pair from it", () => {
    const pairs: readonly (readonly [number, number])[] = [
      [731, -699],
      [702, -668],
      [688, -655],
      [655, -625],
    ];
    const zero = tiltZero(pairs.flatMap(([one, two]) => [reading(1, one, 0), reading(2, two, 0)]));
    expect(zero.pairs).toBe(4);
    expect(zero.xRad).toBeCloseTo(16.125, 12);
    expect(zero.misfitRad).toBeCloseTo(1.125, 12);
    expect(zero.seatXRad).toBeCloseTo((715 + 685 + 671.5 + 640) / 4, 12);
  });

  test("the order of the faces does not matter, and a face left over is not used", () => {
    const first = reading(1, 0.003, 0.001);
    const second = reading(2, 0.001, 0.002);
    expect(tiltZero([second, first])).toEqual(tiltZero([first, second]));
    expect(tiltZero([first, second, reading(1, 9, 9)])).toEqual(tiltZero([first, second]));
  });

  test("one face alone is no zero", () => {
    expect(() => tiltZero([reading(1, 0, 0), reading(1, 0, 0)])).toThrow(ContractError);
  });
});
