import type { TangentProfile } from "../frames/tangent-profile.ts";
import { type NorthEastDown, ned } from "../geometry/vector.ts";
import { contract } from "../result.ts";
import type { HolePath } from "./hole-path.ts";
import type { PathMethodId } from "./path-method.ts";
import { pathSteps } from "./steps.ts";

/**
 * Adds up the path from the tangents at the stations.
 *
 * @param start position of the first station, metres, site north-east-down.
 * @returns the path, one point a station; a NaN tangent makes every point below it NaN.
 * @throws ContractError if the arrays differ in length or the depths do not increase.
 *
 * Frame: site NED. Source: rules D1, D2, docs/sources.md [P1].
 * Checked against: test/published/path-methods, test/published/bsee.
 */
export function computePath(profile: TangentProfile, start: NorthEastDown, method: PathMethodId): HolePath {
  const { depthM, north, east, down } = profile;
  const count = depthM.length;
  contract(
    north.length === count && east.length === count && down.length === count,
    `computePath: ${count} depths, ${north.length}, ${east.length}, ${down.length} tangent components`,
  );
  const step = pathSteps[method];
  const northM = new Float64Array(count);
  const eastM = new Float64Array(count);
  const downM = new Float64Array(count);
  let { north: n, east: e, down: d } = start;
  for (let i = 0; i < count; i++) {
    if (i > 0) {
      const lengthM = depthM[i]! - depthM[i - 1]!;
      contract(lengthM > 0, `computePath: depth ${depthM[i]} follows ${depthM[i - 1]}`);
      const move = step(
        ned(north[i - 1]!, east[i - 1]!, down[i - 1]!),
        ned(north[i]!, east[i]!, down[i]!),
        lengthM,
      );
      n += move.north;
      e += move.east;
      d += move.down;
    }
    northM[i] = n;
    eastM[i] = e;
    downM[i] = d;
  }
  return {
    count,
    depthM,
    northM,
    eastM,
    downM,
    tangentNorth: north,
    tangentEast: east,
    tangentDown: down,
  };
}
