import { type NorthEastDown, ned } from "#core";
import { compose, type Rotation, rotate, rotationBy, shortestArc } from "./rotation.ts";

const DOWN = ned(0, 0, 1);

/**
 * Heading of probe +x after the probe has been brought upright by the shortest arc.
 *
 * @returns radians clockwise from grid north, (-pi, pi].
 * Frame: site north-east-down.
 * Source: docs/method, rule A2 (this is the definition of the heading, not a way to compute it from readings).
 */
export function levelledHeading(attitude: Rotation, tangent: NorthEastDown): number {
  const x = rotate(compose(shortestArc(tangent, DOWN), attitude), ned(1, 0, 0));
  return Math.atan2(x.east, x.north);
}

/** Attitude of a probe along a tangent with a given levelled heading: the reverse of `levelledHeading`. */
export function attitudeFromHeading(headingRad: number, tangent: NorthEastDown): Rotation {
  return compose(shortestArc(DOWN, tangent), rotationBy(ned(0, 0, headingRad)));
}
