/** A point or direction of the site: north-east-down, right-handed. Points in metres, directions of unit length. */
export interface NorthEastDown {
  readonly north: number;
  readonly east: number;
  readonly down: number;
}

export const ned = (north: number, east: number, down: number): NorthEastDown => ({ north, east, down });

export const add = (a: NorthEastDown, b: NorthEastDown): NorthEastDown =>
  ned(a.north + b.north, a.east + b.east, a.down + b.down);
export const subtract = (a: NorthEastDown, b: NorthEastDown): NorthEastDown =>
  ned(a.north - b.north, a.east - b.east, a.down - b.down);
export const scale = (a: NorthEastDown, factor: number): NorthEastDown =>
  ned(a.north * factor, a.east * factor, a.down * factor);
export const dot = (a: NorthEastDown, b: NorthEastDown): number =>
  a.north * b.north + a.east * b.east + a.down * b.down;
export const cross = (a: NorthEastDown, b: NorthEastDown): NorthEastDown =>
  ned(
    a.east * b.down - a.down * b.east,
    a.down * b.north - a.north * b.down,
    a.north * b.east - a.east * b.north,
  );
export const norm = (a: NorthEastDown): number => Math.hypot(a.north, a.east, a.down);

/** Same direction, unit length. A zero vector gives NaN, never a direction. */
export const unit = (a: NorthEastDown): NorthEastDown => scale(a, 1 / norm(a));

/** Angle between two directions, stable near 0 and pi. Radians, [0, pi]. */
export const angleBetween = (a: NorthEastDown, b: NorthEastDown): number =>
  Math.atan2(norm(cross(a, b)), dot(a, b));
