import type { Pass } from "./passes.ts";
import { type AngleZero, type CorrectedTilts, withoutZero } from "./tilt.ts";

/** Zero left in the tilts, found by turning the probe, with what the faces say about their own quality. */
export interface FaceZero extends AngleZero {
  /** stops read on both faces */
  readonly stops: number;
  /** scatter of the zero from stop to stop, one axis, radians */
  readonly scatterRad: number;
  /** largest departure of one stop's zero from the mean, radians, and the row of its first face */
  readonly largestRad: number;
  readonly largestRow: number;
}

/** The zero is an angle, the comparison one of sines: each round takes the zero off and looks for what is left. */
const MAX_ROUNDS = 20;
const SETTLED_RAD = 1e-10;

/** Faces whose headings differ by less than this do not show the zero: common practice, no source. */
const LEAST_TURN = Math.PI / 3;

/**
 * Zero of the tilts from stops read on both faces.
 *
 * What belongs to the ground is the same on both faces once turned to the level frame; what belongs to the probe turns
 * with it. For faces exactly opposite this is the half sum of the two readings, stop by stop; with a heading for each
 * face it holds for any turn.
 *
 * @param tilts sines of the lean by row. @param headingRad azimuth of probe +x by row, radians.
 * @param depthM by row. @param sameDepthM depths that belong to one stop, metres.
 * @returns undefined where no stop was read on both faces.
 *
 * Frame: probe. Source: rules B1, C2.
 */
export function zeroFromFaces(
  tilts: CorrectedTilts,
  headingRad: Float64Array,
  depthM: Float64Array,
  passes: readonly Pass[],
  sameDepthM: number,
): FaceZero | undefined {
  const pairs = pairFaces(passes, depthM, sameDepthM);
  let zero = { xRad: 0, yRad: 0 };
  let found: FaceZero | undefined;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const left = zeroLeft(withoutZero(tilts, zero), headingRad, pairs);
    if (left === undefined) return undefined;
    zero = { xRad: zero.xRad + left.xRad, yRad: zero.yRad + left.yRad };
    found = { ...left, ...zero };
    if (Math.hypot(left.xRad, left.yRad) < SETTLED_RAD) break;
  }
  return found;
}

/** Weighted mean of the zeros of the stops, and what it leaves. */
function zeroLeft(
  tilts: CorrectedTilts,
  headingRad: Float64Array,
  pairs: readonly (readonly [number, number])[],
): FaceZero | undefined {
  const stops = pairs.flatMap(([first, second]) => {
    const turn = 2 - 2 * Math.cos(headingRad[first]! - headingRad[second]!);
    if (!(turn >= 2 - 2 * Math.cos(LEAST_TURN))) return [];
    const zero = zeroOfStop(tilts, headingRad, first, second, turn);
    return Number.isFinite(zero.x + zero.y) ? [{ ...zero, turn, row: first }] : [];
  });
  if (stops.length === 0) return undefined;
  const weight = stops.reduce((sum, stop) => sum + stop.turn, 0);
  const x = stops.reduce((sum, stop) => sum + stop.turn * stop.x, 0) / weight;
  const y = stops.reduce((sum, stop) => sum + stop.turn * stop.y, 0) / weight;
  const departures = stops.map((stop) => Math.hypot(stop.x - x, stop.y - y));
  const worst = departures.reduce((best, departure, i) => (departure > departures[best]! ? i : best), 0);
  const squares = departures.reduce((sum, departure) => sum + departure * departure, 0);
  return {
    xRad: Math.asin(x),
    yRad: Math.asin(y),
    stops: stops.length,
    scatterRad: stops.length > 1 ? Math.sqrt(squares / (2 * (stops.length - 1))) : Number.NaN,
    largestRad: departures[worst]!,
    largestRow: stops[worst]!.row,
  };
}

/** Zero of one stop: (R1 - R2) zero = R1 r1 - R2 r2, with (R1 - R2)'(R1 - R2) = turn times the identity. */
function zeroOfStop(
  tilts: CorrectedTilts,
  headingRad: Float64Array,
  first: number,
  second: number,
  turn: number,
): { x: number; y: number } {
  const c1 = Math.cos(headingRad[first]!);
  const s1 = Math.sin(headingRad[first]!);
  const c2 = Math.cos(headingRad[second]!);
  const s2 = Math.sin(headingRad[second]!);
  const north = tilts.x[first]! * c1 - tilts.y[first]! * s1 - (tilts.x[second]! * c2 - tilts.y[second]! * s2);
  const east = tilts.x[first]! * s1 + tilts.y[first]! * c1 - (tilts.x[second]! * s2 + tilts.y[second]! * c2);
  return {
    x: ((c1 - c2) * north + (s1 - s2) * east) / turn,
    y: (-(s1 - s2) * north + (c1 - c2) * east) / turn,
  };
}

/** Rows of face 1 and face 2 at the same stop: of the same direction where it was read on both, else of any. */
function pairFaces(
  passes: readonly Pass[],
  depthM: Float64Array,
  sameDepthM: number,
): readonly (readonly [number, number])[] {
  const pairs: (readonly [number, number])[] = [];
  for (const one of passes.filter((pass) => pass.face === 1)) {
    const second = passes.filter((pass) => pass.face === 2);
    const other = second.find((pass) => pass.direction === one.direction) ?? second[0];
    if (other === undefined) continue;
    let k = 0;
    for (const row of one.rows) {
      while (k < other.rows.length && depthM[other.rows[k]!]! < depthM[row]! - sameDepthM) k++;
      const match = other.rows[k];
      if (match !== undefined && depthM[match]! <= depthM[row]! + sameDepthM) pairs.push([row, match]);
    }
  }
  return pairs;
}
