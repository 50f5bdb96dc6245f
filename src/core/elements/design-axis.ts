import { add, cross, dot, type NorthEastDown, ned, scale, subtract, unit } from "../geometry/vector.ts";
import { alongRakeOrWall } from "./along-bearing.ts";
import type { DesignElement } from "./element.ts";
import { elementKind } from "./registry.ts";

/** Where a point lies from the design axis. Metres; the vector is square to the axis. */
export interface DesignOffset {
  readonly north: number;
  readonly east: number;
  readonly down: number;
  /** length of the vector, never negative */
  readonly offset: number;
  /** part in the direction called "along" */
  readonly along: number;
  /** part to the right of "along", looking down the hole with "along" ahead */
  readonly across: number;
}

/** Directions of a design axis: down the hole, "along" and "across", each of unit length and square to the others. */
export interface DesignAxes {
  readonly direction: NorthEastDown;
  readonly along: NorthEastDown;
  readonly across: NorthEastDown;
}

/**
 * Direction of the design axis, pointing down the hole, of unit length.
 *
 * NaN where the element is raked and no bearing is given: a lean without a bearing is not a direction.
 *
 * Frame: site NED.
 * Source: geometry, rule F1.
 */
export function designDirection(element: DesignElement): NorthEastDown {
  if (element.rakeRad === 0) return ned(0, 0, 1);
  const bearing = element.rakeBearingRad ?? Number.NaN;
  const lean = Math.sin(element.rakeRad);
  return ned(lean * Math.cos(bearing), lean * Math.sin(bearing), Math.cos(element.rakeRad));
}

/**
 * The three directions in which an element is judged.
 *
 * @param alongBearingRad bearing of "along", radians from grid north; undefined = as the kind of element says.
 * Frame: site NED.
 * Source: geometry, rule F1.
 */
export function designAxes(element: DesignElement, alongBearingRad?: number): DesignAxes {
  const direction = designDirection(element);
  const bearing =
    alongBearingRad ?? elementKind(element.kind)?.alongBearingRad(element) ?? alongRakeOrWall(element);
  const right = ned(-Math.sin(bearing), Math.cos(bearing), 0);
  const along = unit(cross(right, direction));
  return { direction, along, across: cross(direction, along) };
}

/**
 * Vector to a point from the closest point of the line through `origin` in the direction of the axes.
 *
 * NaN in, NaN out.
 *
 * Frame: site NED.
 * Source: geometry, rule F1.
 */
export function offsetFromLine(origin: NorthEastDown, axes: DesignAxes, point: NorthEastDown): DesignOffset {
  const fromOrigin = subtract(point, origin);
  const along = dot(fromOrigin, axes.along);
  const across = dot(fromOrigin, axes.across);
  const vector = add(scale(axes.along, along), scale(axes.across, across));
  return { ...vector, offset: Math.hypot(along, across), along, across };
}

/**
 * Where a point lies from the design axis of an element: the line through its head, leaning as designed.
 *
 * Square to the axis; for a plumb element that is horizontal, at equal level. along^2 + across^2 = offset^2.
 *
 * Frame: site NED.
 * Source: geometry, rule F1.
 */
export function offsetFromDesign(element: DesignElement, point: NorthEastDown): DesignOffset {
  return offsetFromLine(element.head, designAxes(element), point);
}

/**
 * Drift of a point from the as-built top: from a line through that top, parallel to the design axis.
 *
 * Frame: site NED.
 * Source: geometry, rule F1.
 */
export function driftFromTop(
  element: DesignElement,
  asBuiltTop: NorthEastDown,
  point: NorthEastDown,
): DesignOffset {
  return offsetFromLine(asBuiltTop, designAxes(element), point);
}

/** Length of an element along its design axis from head to toe, metres; undefined where no toe level is given. */
export function designLengthM(element: DesignElement): number | undefined {
  if (element.toeDownM === undefined) return undefined;
  return (element.toeDownM - element.head.down) / Math.cos(element.rakeRad);
}
