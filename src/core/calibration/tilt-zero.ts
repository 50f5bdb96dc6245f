import { contract } from "../result.ts";
import type { FaceReading } from "./calibration.ts";

/** Zero of the two tilts, as angles in radians. */
export interface TiltZero {
  readonly xRad: number;
  readonly yRad: number;
  /** tilt of the seat itself in the axes of face 1, from the half differences */
  readonly seatXRad: number;
  readonly seatYRad: number;
  /** pairs of faces used */
  readonly pairs: number;
  /** largest departure of one pair's zero from the mean, radians; 0 for one pair */
  readonly misfitRad: number;
}

/**
 * Zero of the tilts from readings on both faces in one seat: half the sum; the half difference is the seat.
 *
 * Faces are paired in the order in which they stand (first face 1 with first face 2, and so on); a face left over
 * is not used.
 *
 * @throws ContractError if there is no pair.
 *
 * Frame: probe. Source: rule B1; two-face readings, docs/sources.md [P2].
 */
export function tiltZero(faces: readonly FaceReading[]): TiltZero {
  const first = faces.filter((reading) => reading.face === 1);
  const second = faces.filter((reading) => reading.face === 2);
  const pairs = Math.min(first.length, second.length);
  contract(pairs > 0, `tiltZero: ${first.length} readings on face 1, ${second.length} on face 2, no pair`);
  const sums = { x: 0, y: 0, seatX: 0, seatY: 0 };
  const zeros: { x: number; y: number }[] = [];
  for (let i = 0; i < pairs; i++) {
    const one = first[i]!;
    const two = second[i]!;
    const zero = { x: (one.xRad + two.xRad) / 2, y: (one.yRad + two.yRad) / 2 };
    zeros.push(zero);
    sums.x += zero.x;
    sums.y += zero.y;
    sums.seatX += (one.xRad - two.xRad) / 2;
    sums.seatY += (one.yRad - two.yRad) / 2;
  }
  const xRad = sums.x / pairs;
  const yRad = sums.y / pairs;
  return {
    xRad,
    yRad,
    seatXRad: sums.seatX / pairs,
    seatYRad: sums.seatY / pairs,
    pairs,
    misfitRad: Math.max(...zeros.map((zero) => Math.hypot(zero.x - xRad, zero.y - yRad))),
  };
}
