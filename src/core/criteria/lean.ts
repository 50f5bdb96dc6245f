import { cross, dot, type NorthEastDown, norm, subtract } from "../geometry/vector.ts";
import type { HolePath } from "../path/hole-path.ts";
import { interpolatePath } from "../path/interpolate-path.ts";
import { type DepthRange, stationDepths } from "./read-range.ts";

/** Depths closer than this are the same depth; keeps a window that ends on a station from being lost to rounding. */
const SAME_DEPTH_M = 1e-9;

/** A straight piece of the axis with its lean from the design direction. */
export interface Lean {
  /** tangent of the angle between the piece and the design direction, m/m */
  readonly ratio: number;
  /** depth and level of the lower end of the piece, metres */
  readonly atDepthM: number;
  readonly atDownM: number;
}

/**
 * Lean of the straight line between two depths of the axis from the design direction.
 *
 * @param side only the part of the lean towards or away from this direction, square to the design; undefined = all of it.
 * @returns tangent of the angle between the two; NaN where the line does not go the way of the design at all.
 * Frame: site NED.
 * Source: geometry, rule F2.
 */
export function leanOfChord(
  path: HolePath,
  direction: NorthEastDown,
  range: DepthRange,
  side?: NorthEastDown,
): Lean {
  const lower = interpolatePath(path, range.toM).position;
  const chord = subtract(lower, interpolatePath(path, range.fromM).position);
  const forward = dot(chord, direction);
  const sideways = side === undefined ? norm(cross(direction, chord)) : Math.abs(dot(chord, side));
  const ratio = forward > 0 ? sideways / forward : Number.NaN;
  return { ratio, atDepthM: range.toM, atDownM: lower.down };
}

/**
 * The worst chord from the top of a range to any station at least `minChordM` below it, or to the end of the range.
 *
 * @returns undefined where the range is shorter than the shortest chord.
 * Frame: site NED.
 * Source: rule F2.
 */
export function worstChord(
  path: HolePath,
  direction: NorthEastDown,
  range: DepthRange,
  minChordM: number,
  side?: NorthEastDown,
): Lean | undefined {
  const ends = stationDepths(path, range).filter(
    (depthM) => depthM - range.fromM >= Math.max(minChordM - SAME_DEPTH_M, SAME_DEPTH_M),
  );
  return worstLean(ends.map((toM) => leanOfChord(path, direction, { fromM: range.fromM, toM }, side)));
}

/**
 * The worst lean of any piece of the axis inside a range: between neighbouring stations, or over a stated length.
 *
 * Pieces of a stated length start at every station and end at every station.
 *
 * @param segmentM length of the pieces along the axis, metres; undefined = between neighbouring stations.
 * @returns undefined where the range is shorter than one piece.
 * Frame: site NED.
 * Source: rule F2.
 */
export function worstSegment(
  path: HolePath,
  direction: NorthEastDown,
  range: DepthRange,
  segmentM?: number,
  side?: NorthEastDown,
): Lean | undefined {
  return worstLean(segments(path, range, segmentM).map((piece) => leanOfChord(path, direction, piece, side)));
}

/** The pieces of a range: between neighbouring stations, or of one length from and to every station. */
export function segments(path: HolePath, range: DepthRange, segmentM?: number): DepthRange[] {
  const depths = stationDepths(path, range);
  if (segmentM === undefined) return depths.slice(1).map((toM, i) => ({ fromM: depths[i]!, toM }));
  const pieces: DepthRange[] = [];
  for (const depthM of depths) {
    const [end, start] = [depthM + segmentM, depthM - segmentM];
    if (end <= range.toM + SAME_DEPTH_M) pieces.push({ fromM: depthM, toM: Math.min(end, range.toM) });
    if (start >= range.fromM - SAME_DEPTH_M)
      pieces.push({ fromM: Math.max(start, range.fromM), toM: depthM });
  }
  return pieces;
}

/** The worst of several leans; one that is not a number comes first. */
export function worstLean(leans: readonly Lean[]): Lean | undefined {
  let worst = leans[0];
  for (const lean of leans) {
    if (!Number.isFinite(lean.ratio)) return lean;
    if (worst !== undefined && lean.ratio > worst.ratio) worst = lean;
  }
  return worst;
}
