import { cross, type NorthEastDown, ned, radiansFromDegrees } from "#core";
import type { ProbeErrors } from "./probe-errors.ts";
import type { RandomSource } from "./random.ts";
import { compose, inverse, type Rotation, rotate, rotationBy } from "./rotation.ts";

const DOWN = ned(0, 0, 1);

/** What the tilt sensors of a probe show at one stop. */
export interface SensedTilt {
  /** angles, radians */
  readonly tiltXRad: number;
  readonly tiltYRad: number;
  /** reaction to gravity in units of local gravity, z along the hole downwards */
  readonly acceleration: readonly [number, number, number];
}

/**
 * Attitude of a probe that does not fill its tube: each end of the gauge length lies by chance within the play.
 *
 * Each end may be anywhere, evenly, in a circle of half the play; the lean of the probe against the tube has then a
 * standard deviation of clearance / (sqrt(8) gauge length) in each of two directions.
 *
 * @param clearanceM inner diameter of the tube less the diameter of the probe's guides, metres.
 */
export function seatProbe(
  attitude: Rotation,
  tangent: NorthEastDown,
  clearanceM: number,
  gaugeLengthM: number,
  random: RandomSource,
): Rotation {
  if (clearanceM === 0) return attitude;
  const [top, toe] = [pointInCircle(clearanceM / 2, random), pointInCircle(clearanceM / 2, random)];
  const side = rotate(attitude, ned((toe.x - top.x) / gaugeLengthM, (toe.y - top.y) / gaugeLengthM, 0));
  return compose(rotationBy(cross(tangent, side)), attitude);
}

function pointInCircle(radius: number, random: RandomSource): { x: number; y: number } {
  const [r, angle] = [radius * Math.sqrt(random.uniform()), 2 * Math.PI * random.uniform()];
  return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
}

/**
 * What the tilt sensors show: the direction of gravity in sensor axes with the faults of the probe.
 *
 * As angles: zero + drift + (1 + scale) * lean + cross * other lean + noise. As accelerations: the same with the
 * sines in place of the angles, in units of gravity.
 *
 * @param temperatureC NaN where the temperature plays no part.
 * Frame: probe.
 */
export function senseTilt(
  attitude: Rotation,
  errors: ProbeErrors,
  temperatureC: number,
  random: RandomSource,
): SensedTilt {
  // a sensor that leans towards +x by a small angle shows a lean more: turn about -y of the housing, seen from gravity
  const misalignment = rotationBy(
    ned(
      radiansFromDegrees(errors.misalignmentYDeg),
      -radiansFromDegrees(errors.misalignmentXDeg),
      -radiansFromDegrees(errors.misalignmentTurnDeg),
    ),
  );
  const gravity = rotate(misalignment, rotate(inverse(attitude), DOWN));
  const [leanX, leanY] = [-gravity.north, -gravity.east];
  const warmth = Number.isNaN(temperatureC) ? 0 : temperatureC - errors.referenceTemperatureC;
  const zeroX = radiansFromDegrees(errors.tiltZeroXDeg + errors.tiltDriftXDegPerK * warmth);
  const zeroY = radiansFromDegrees(errors.tiltZeroYDeg + errors.tiltDriftYDegPerK * warmth);
  const noise = radiansFromDegrees(errors.tiltNoiseDeg);
  const [noiseX, noiseY, noiseZ] = [
    noise * random.normal(),
    noise * random.normal(),
    noise * random.normal(),
  ];
  const shown = (x: number, y: number): readonly [number, number] => [
    (1 + errors.tiltScaleX) * x + errors.crossXY * y + zeroX + noiseX,
    (1 + errors.tiltScaleY) * y + errors.crossYX * x + zeroY + noiseY,
  ];
  const [tiltXRad, tiltYRad] = shown(Math.asin(leanX), Math.asin(leanY));
  const along = -(1 + errors.accelerationScaleZ) * gravity.down + errors.accelerationZeroZ + noiseZ;
  return { tiltXRad, tiltYRad, acceleration: [...shown(leanX, leanY), along] };
}

/** Direction of the axis as inclination and azimuth, radians; the azimuth of a plumb axis is given as 0. */
export function inclinationAndAzimuth(attitude: Rotation): { inclination: number; azimuth: number } {
  const t = rotate(attitude, ned(0, 0, 1));
  return {
    inclination: Math.atan2(Math.hypot(t.north, t.east), t.down),
    azimuth: t.north === 0 && t.east === 0 ? 0 : Math.atan2(t.east, t.north),
  };
}
