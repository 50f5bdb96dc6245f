import { add, type NorthEastDown, ned, scale } from "../geometry/vector.ts";
import { dogleg } from "./dogleg.ts";
import type { HolePath } from "./hole-path.ts";

/** A point of the axis with its direction. Site north-east-down, metres; tangent of unit length. */
export interface PathPoint {
  readonly position: NorthEastDown;
  readonly tangent: NorthEastDown;
}

const nothing: PathPoint = {
  position: ned(Number.NaN, Number.NaN, Number.NaN),
  tangent: ned(Number.NaN, Number.NaN, Number.NaN),
};

export const positionAt = (path: HolePath, i: number): NorthEastDown =>
  ned(path.northM[i]!, path.eastM[i]!, path.downM[i]!);
export const tangentAt = (path: HolePath, i: number): NorthEastDown =>
  ned(path.tangentNorth[i]!, path.tangentEast[i]!, path.tangentDown[i]!);

/**
 * Point and direction at any depth, on the exact arc between the two stations around it.
 *
 * @param depthM depth along the hole, metres. @returns NaN everywhere above the first and below the last
 *   station (nothing is invented there) and for a NaN depth.
 *
 * Frame: site NED. Source: rule D3; arc in vector form, docs/sources.md [P1].
 * Checked against: test/published/path-methods, points on the arcs of cases A and D.
 */
export function interpolatePath(path: HolePath, depthM: number): PathPoint {
  const upper = stationAbove(path, depthM);
  if (upper < 0) return nothing;
  const from = path.depthM[upper]!;
  if (upper === path.count - 1 || depthM === from)
    return { position: positionAt(path, upper), tangent: tangentAt(path, upper) };
  return pointOnArc(path, upper, depthM - from);
}

/** Last station at or above the depth; -1 outside the path or for NaN. */
function stationAbove(path: HolePath, depthM: number): number {
  const { count, depthM: depths } = path;
  if (count === 0 || !(depthM >= depths[0]! && depthM <= depths[count - 1]!)) return -1;
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (depths[middle]! <= depthM) low = middle;
    else high = middle - 1;
  }
  return low;
}

function pointOnArc(path: HolePath, upper: number, fromUpperM: number): PathPoint {
  const first = tangentAt(path, upper);
  const second = tangentAt(path, upper + 1);
  const lengthM = path.depthM[upper + 1]! - path.depthM[upper]!;
  const beta = dogleg(first, second);
  const start = positionAt(path, upper);
  if (beta < 1e-9) {
    // The arc is straight to far below a nanometre; the general form would be 0/0.
    const part = fromUpperM / lengthM;
    return {
      position: add(start, scale(first, fromUpperM)),
      tangent: add(scale(first, 1 - part), scale(second, part)),
    };
  }
  const phi = (beta * fromUpperM) / lengthM;
  const sinBeta = Math.sin(beta);
  const tangent = add(scale(first, Math.sin(beta - phi) / sinBeta), scale(second, Math.sin(phi) / sinBeta));
  // cos(beta-phi) - cos(beta) and 1 - cos(phi), written without cancellation
  const ofFirst = 2 * Math.sin(beta - phi / 2) * Math.sin(phi / 2);
  const ofSecond = 2 * Math.sin(phi / 2) ** 2;
  const factor = lengthM / (beta * sinBeta);
  return {
    position: add(start, add(scale(first, factor * ofFirst), scale(second, factor * ofSecond))),
    tangent,
  };
}

/**
 * Depth along the hole at which the axis first reaches a level.
 *
 * @param downM level as down = -level, metres. @returns metres along the hole; NaN if the path does not reach it.
 *
 * Frame: site NED. Source: rule D3, bisection on the exact arc.
 */
export function depthAtDown(path: HolePath, downM: number): number {
  for (let i = 0; i < path.count; i++) {
    if (path.downM[i] === downM) return path.depthM[i]!;
    const below = path.downM[i + 1];
    if (below !== undefined && path.downM[i]! < downM && below > downM) return crossing(path, i, downM);
  }
  return Number.NaN;
}

function crossing(path: HolePath, upper: number, downM: number): number {
  const from = path.depthM[upper]!;
  let low = 0;
  let high = path.depthM[upper + 1]! - from;
  for (let round = 0; round < 60 && high - low > 1e-12; round++) {
    const middle = (low + high) / 2;
    if (pointOnArc(path, upper, middle).position.down < downM) low = middle;
    else high = middle;
  }
  return from + (low + high) / 2;
}
