import { add, contract, type HolePath, type NorthEastDown, ned, scale } from "#core";
import { type HoleShape, tangentOf } from "./hole-shape.ts";

/** Abscissae in (0, 1) and weights of the 5-point Gauss-Legendre rule (Abramowitz & Stegun, table 25.4, from memory). */
const NODES = [
  [0.5 - 0.906179845938664 / 2, 0.2369268850561891 / 2],
  [0.5 - 0.5384693101056831 / 2, 0.4786286704993665 / 2],
  [0.5, 0.5688888888888889 / 2],
  [0.5 + 0.5384693101056831 / 2, 0.4786286704993665 / 2],
  [0.5 + 0.906179845938664 / 2, 0.2369268850561891 / 2],
] as const;

/** Longest piece integrated at once; with waves of 2 m or longer the error of a 100 m hole stays below 1e-9 m. */
const LONGEST_PIECE_M = 0.1;

/**
 * True coordinates of a hole at given depths, by numerical integration of its tangent.
 *
 * @param head position of the axis at depth 0, metres.
 * @param depthsM depths along the hole, metres, strictly increasing; may begin above the head.
 * @returns stations at these depths. Between them the hole is as its shape says, not an arc.
 * @throws ContractError if the depths do not increase.
 * Frame: site north-east-down.
 */
export function truePath(hole: HoleShape, head: NorthEastDown, depthsM: ArrayLike<number>): HolePath {
  const count = depthsM.length;
  const tangentAt = tangentOf(hole);
  const column = () => new Float64Array(count);
  const [depthM, northM, eastM, downM] = [Float64Array.from(depthsM), column(), column(), column()];
  const [tangentNorth, tangentEast, tangentDown] = [column(), column(), column()];
  let position = head;
  let depth = 0;
  for (let i = 0; i < count; i++) {
    const next = depthM[i]!;
    contract(i === 0 || next > depthM[i - 1]!, `truePath: depth ${next} does not follow ${depthM[i - 1]}`);
    position = add(position, displacement(tangentAt, depth, next));
    depth = next;
    const { tangent } = tangentAt(next);
    [northM[i], eastM[i], downM[i]] = [position.north, position.east, position.down];
    [tangentNorth[i], tangentEast[i], tangentDown[i]] = [tangent.north, tangent.east, tangent.down];
  }
  return { count, depthM, northM, eastM, downM, tangentNorth, tangentEast, tangentDown };
}

function displacement(tangentAt: ReturnType<typeof tangentOf>, fromM: number, toM: number): NorthEastDown {
  const pieces = Math.max(1, Math.ceil(Math.abs(toM - fromM) / LONGEST_PIECE_M));
  const length = (toM - fromM) / pieces;
  let sum = ned(0, 0, 0);
  for (let piece = 0; piece < pieces; piece++)
    for (const [node, weight] of NODES)
      sum = add(sum, scale(tangentAt(fromM + (piece + node) * length).tangent, weight * length));
  return sum;
}
