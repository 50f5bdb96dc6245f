import { cross, dot, type NorthEastDown, ned, scale, subtract } from "#core";

/** A turn in space as a unit quaternion: scalar part and vector part. */
export interface Rotation {
  readonly w: number;
  readonly v: NorthEastDown;
}

export const NO_ROTATION: Rotation = { w: 1, v: ned(0, 0, 0) };

/** Turn about the direction of a vector by its length, radians, right-handed. */
export function rotationBy(turn: NorthEastDown): Rotation {
  const angle = Math.hypot(turn.north, turn.east, turn.down);
  // sin(angle / 2) / angle, by its series where the quotient loses digits
  const factor = angle < 1e-4 ? 0.5 - (angle * angle) / 48 : Math.sin(angle / 2) / angle;
  return { w: Math.cos(angle / 2), v: scale(turn, factor) };
}

/** The turn `second` after the turn `first`, scaled back to unit length. */
export function compose(second: Rotation, first: Rotation): Rotation {
  const c = cross(second.v, first.v);
  const w = second.w * first.w - dot(second.v, first.v);
  const v = ned(
    second.w * first.v.north + first.w * second.v.north + c.north,
    second.w * first.v.east + first.w * second.v.east + c.east,
    second.w * first.v.down + first.w * second.v.down + c.down,
  );
  const size = Math.sqrt(w * w + dot(v, v));
  return { w: w / size, v: scale(v, 1 / size) };
}

/** A direction after the turn. */
export function rotate(by: Rotation, direction: NorthEastDown): NorthEastDown {
  const c = cross(by.v, direction);
  const d = cross(by.v, c);
  return ned(
    direction.north + 2 * (by.w * c.north + d.north),
    direction.east + 2 * (by.w * c.east + d.east),
    direction.down + 2 * (by.w * c.down + d.down),
  );
}

/** The same turn backwards. */
export const inverse = (rotation: Rotation): Rotation => ({ w: rotation.w, v: scale(rotation.v, -1) });

/** Shortest turn that takes one unit direction to another; not for opposite directions. */
export function shortestArc(from: NorthEastDown, to: NorthEastDown): Rotation {
  const w = 1 + dot(from, to);
  const v = cross(from, to);
  const size = Math.sqrt(w * w + dot(v, v));
  return { w: w / size, v: scale(v, 1 / size) };
}

/** A direction with its part along another one taken out; for the axis square to a tangent. */
export const squareTo = (direction: NorthEastDown, axis: NorthEastDown): NorthEastDown =>
  subtract(direction, scale(axis, dot(direction, axis)));
