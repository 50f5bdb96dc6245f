import { add, cross, dot, type NorthEastDown, ned, scale, subtract, unit } from "../geometry/vector.ts";
import type { HolePath } from "../path/hole-path.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { type DepthRange, stationDepths } from "./read-range.ts";
import { type PlanePoint, smallestCircleRadius } from "./smallest-circle.ts";

/** Points of the axis looked at under the probe; odd, so that the middle is one of them. */
const POINTS_UNDER_PROBE = 9;

/** How much room a rigid probe needs at one place of the tube. Metres. */
export interface Passage {
  /** width that the axis of the tube takes up across the probe: the rise of its bow, for a plain bow */
  readonly roomM: number;
  /** depth of the middle of the probe */
  readonly atDepthM: number;
}

/**
 * The tightest place of a tube for a rigid probe: where the axis under it bends most out of a straight line.
 *
 * The room is the smallest circle around the axis under the probe, seen along the probe, which lies along the chord or
 * along the best line of the axis, whichever needs less. On a circle of radius R it is l^2/(8 R), to second order.
 *
 * @param probeLengthM length of the probe, metres, > 0.
 * @returns undefined where the range is shorter than the probe.
 *
 * Frame: site NED. Source: chord and sagitta of a circle, docs/method/criteria.md.
 */
export function tightestPlace(path: HolePath, range: DepthRange, probeLengthM: number): Passage | undefined {
  let tightest: Passage | undefined;
  for (const fromM of probePlaces(path, range, probeLengthM)) {
    const roomM = roomFor(path, fromM, probeLengthM);
    const place = { roomM, atDepthM: fromM + probeLengthM / 2 };
    if (!Number.isFinite(roomM)) return place;
    if (tightest === undefined || roomM > tightest.roomM) tightest = place;
  }
  return tightest;
}

/** Depths of the upper end of the probe: with an end or its middle at a station, or its middle half-way between two. */
function probePlaces(path: HolePath, range: DepthRange, lengthM: number): number[] {
  const depths = stationDepths(path, range);
  const middles = depths.slice(1).map((depthM, i) => (depthM + depths[i]!) / 2);
  const starts = [
    ...depths,
    ...depths.map((depthM) => depthM - lengthM),
    ...[...depths, ...middles].map((depthM) => depthM - lengthM / 2),
  ];
  return starts.filter((fromM) => fromM >= range.fromM && fromM + lengthM <= range.toM);
}

function roomFor(path: HolePath, fromM: number, lengthM: number): number {
  const step = lengthM / (POINTS_UNDER_PROBE - 1);
  const top = interpolatePath(path, fromM).position;
  const points = Array.from({ length: POINTS_UNDER_PROBE }, (_, i) =>
    subtract(interpolatePath(path, Math.min(fromM + i * step, fromM + lengthM)).position, top),
  );
  const chord = points.at(-1)!;
  return Math.min(roomAcross(points, unit(chord)), roomAcross(points, unit(bestDirection(points))));
}

/** Direction of the line of least squares through equally spaced points. */
function bestDirection(points: readonly NorthEastDown[]): NorthEastDown {
  const middle = (points.length - 1) / 2;
  return points.reduce((sum, point, i) => add(sum, scale(point, i - middle)), ned(0, 0, 0));
}

function roomAcross(points: readonly NorthEastDown[], direction: NorthEastDown): number {
  const aside = Math.abs(direction.north) < 0.9 ? ned(1, 0, 0) : ned(0, 1, 0);
  const first = unit(cross(direction, aside));
  const second = cross(direction, first);
  const seen = points.map((point): PlanePoint => [dot(point, first), dot(point, second)]);
  return 2 * smallestCircleRadius(seen);
}
