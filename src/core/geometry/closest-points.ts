import { contract } from "../result.ts";
import { add, cross, dot, type NorthEastDown, norm, scale, subtract } from "./vector.ts";

/** Closest points of two things: a point on each, how far along each lies, and their distance. */
export interface ClosestPoints {
  readonly onFirst: NorthEastDown;
  readonly onSecond: NorthEastDown;
  /** place on the first: 0 at its first point, 1 at its second; beyond for lines */
  readonly firstShare: number;
  readonly secondShare: number;
  /** metres */
  readonly distance: number;
}

/**
 * Below this sine of the angle between them, two lines count as parallel: rounding of the cross product alone
 * makes up a few units of 1e-16.
 */
const PARALLEL_SINE = 1e-15;

/**
 * Closest points of two endless lines, each given by two of its points.
 *
 * Parallel lines have no one pair: then the first point of the first line and its foot on the second are given.
 *
 * @param a0, a1 two points of the first line, metres.
 * @param b0, b1 two points of the second line, metres.
 * @returns a NaN among the coordinates makes the distance NaN.
 * @throws ContractError if the two points of a line coincide.
 *
 * Frame: site NED; the distance needs none.
 * Source: Gellert et al., VNR Concise Encyclopedia of Mathematics, 1989, p. 538, as cited by MathWorld "Line-Line Distance".
 * Checked against: skew pile pair in closed form (closest-points.test.ts).
 */
export function closestPointsOfLines(
  a0: NorthEastDown,
  a1: NorthEastDown,
  b0: NorthEastDown,
  b1: NorthEastDown,
): ClosestPoints {
  const a = subtract(a1, a0);
  const b = subtract(b1, b0);
  contract(norm(a) !== 0 && norm(b) !== 0, "closestPointsOfLines: the two points of a line coincide");
  const shares = sharesOnLines(a, b, subtract(b0, a0));
  if (shares !== undefined) return pair(a0, a, b0, b, shares[0], shares[1]);
  return pair(a0, a, b0, b, 0, dot(subtract(a0, b0), b) / dot(b, b));
}

/**
 * Closest points of two segments.
 *
 * The pair inside both (where the lines come closest) and the four pairs of an end with the other segment are
 * tried and the shortest is taken: nearly parallel segments, for which the first alone goes wrong, are safe.
 *
 * @param a0, a1 ends of the first segment, metres; they may coincide.
 * @param b0, b1 ends of the second segment, metres; they may coincide.
 * @returns a NaN among the coordinates makes the distance NaN.
 *
 * Frame: site NED; the distance needs none.
 * Source: Eberly, Robust Computation of Distance Between Line Segments, Geometric Tools (idea of trying the edges).
 * Checked against: test/published/segment-distance
 */
export function closestPointsOfSegments(
  a0: NorthEastDown,
  a1: NorthEastDown,
  b0: NorthEastDown,
  b1: NorthEastDown,
): ClosestPoints {
  const a = subtract(a1, a0);
  const b = subtract(b1, b0);
  let best = pair(a0, a, b0, b, 0, shareOnSegment(b0, b, a0));
  const tryPair = (firstShare: number, secondShare: number): void => {
    const candidate = pair(a0, a, b0, b, firstShare, secondShare);
    if (candidate.distance < best.distance) best = candidate;
  };
  tryPair(1, shareOnSegment(b0, b, a1));
  tryPair(shareOnSegment(a0, a, b0), 0);
  tryPair(shareOnSegment(a0, a, b1), 1);
  const shares = sharesOnLines(a, b, subtract(b0, a0));
  if (shares?.every((share) => share > 0 && share < 1)) tryPair(shares[0], shares[1]);
  return best;
}

/** Closest point of a segment to a point, with the share of the way along it and the distance. */
export interface ClosestOnSegment {
  readonly point: NorthEastDown;
  /** 0 at the first end, 1 at the second */
  readonly share: number;
  /** metres */
  readonly distance: number;
}

/**
 * Closest point of a segment to a point.
 *
 * @param from, to ends of the segment, metres; they may coincide.
 * @returns a NaN among the coordinates makes the distance NaN.
 *
 * Frame: site NED; the distance needs none.
 * Source: definition.
 */
export function closestOnSegment(
  point: NorthEastDown,
  from: NorthEastDown,
  to: NorthEastDown,
): ClosestOnSegment {
  const along = subtract(to, from);
  const share = shareOnSegment(from, along, point);
  const found = pointAt(from, along, share);
  return { point: found, share, distance: norm(subtract(point, found)) };
}

/** Where the two lines come closest, in shares of a and b; undefined if they are parallel or one has no length. */
function sharesOnLines(
  a: NorthEastDown,
  b: NorthEastDown,
  between: NorthEastDown,
): [number, number] | undefined {
  // The cross product keeps the small angle that the determinant a.a b.b - (a.b)^2 loses.
  const across = cross(a, b);
  const square = dot(across, across);
  if (!(Math.sqrt(square) > PARALLEL_SINE * norm(a) * norm(b))) return undefined;
  return [dot(cross(between, b), across) / square, dot(cross(between, a), across) / square];
}

/** Share of the way along a segment nearest to a point, within 0 and 1; 0 if the segment has no length. */
function shareOnSegment(from: NorthEastDown, along: NorthEastDown, point: NorthEastDown): number {
  const square = dot(along, along);
  if (square === 0) return 0;
  return Math.min(1, Math.max(0, dot(subtract(point, from), along) / square));
}

/** From the nearer end, so that the second end itself is met exactly. */
function pointAt(from: NorthEastDown, along: NorthEastDown, share: number): NorthEastDown {
  return share <= 0.5 ? add(from, scale(along, share)) : subtract(add(from, along), scale(along, 1 - share));
}

function pair(
  a0: NorthEastDown,
  a: NorthEastDown,
  b0: NorthEastDown,
  b: NorthEastDown,
  firstShare: number,
  secondShare: number,
): ClosestPoints {
  const onFirst = pointAt(a0, a, firstShare);
  const onSecond = pointAt(b0, b, secondShare);
  return { onFirst, onSecond, firstShare, secondShare, distance: norm(subtract(onSecond, onFirst)) };
}
