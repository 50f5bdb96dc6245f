import type { HolePath } from "../path/hole-path.ts";
import type { StopErrors } from "./random-effects.ts";

/**
 * What the course of a hole can hide between two stops, from how its direction changes from stop to stop.
 *
 * The arc between two stops misses the third derivative of the path: h^3/12 times the second derivative of the direction, taken
 * from the second differences around the interval. Noise makes second differences too; its share is taken off. Where the
 * direction of the first stop was carried up to an unread top, the change of direction over that stretch is added.
 *
 * @param noise standard deviation of one component of a direction, by station.
 * @param carriedTop whether station 0 only carries the direction of station 1 upwards.
 * @returns standard displacement of each interval, as a vector by the station at its lower end, metres.
 *
 * Frame: site NED. Source: rule E1; error of the trapezoidal rule.
 * Checked against: coarse stations in simulated coverage (test/jobs).
 */
export function hiddenCourse(path: HolePath, noise: Float64Array, carriedTop: boolean): StopErrors["hidden"] {
  const { count, depthM } = path;
  const north = new Float64Array(count);
  const east = new Float64Array(count);
  const down = new Float64Array(count);
  for (let i = 1; i < count; i++) {
    const h = depthM[i]! - depthM[i - 1]!;
    const bend = meanSecondDerivative(path, noise, i);
    const factor = h ** 3 / 12;
    north[i] = factor * bend.north;
    east[i] = factor * bend.east;
    down[i] = factor * bend.down;
  }
  if (carriedTop && count > 2) addCarriedTop(path, north, east, down);
  return { north, east, down };
}

interface Vector {
  readonly north: number;
  readonly east: number;
  readonly down: number;
}

/** Second derivative of the direction around an interval: mean of both ends where both have one, noise taken off. */
function meanSecondDerivative(path: HolePath, noise: Float64Array, i: number): Vector {
  const ends = [i - 1, i]
    .filter((k) => k > 0 && k < path.count - 1)
    .map((k) => secondDerivative(path, noise, k));
  const mean = (of: keyof Vector) => ends.reduce((sum, end) => sum + end[of], 0) / Math.max(ends.length, 1);
  return { north: mean("north"), east: mean("east"), down: mean("down") };
}

function secondDerivative(path: HolePath, noise: Float64Array, k: number): Vector {
  const above = path.depthM[k]! - path.depthM[k - 1]!;
  const below = path.depthM[k + 1]! - path.depthM[k]!;
  const of = (t: Float64Array) =>
    (2 * ((t[k + 1]! - t[k]!) / below - (t[k]! - t[k - 1]!) / above)) / (above + below);
  const found = { north: of(path.tangentNorth), east: of(path.tangentEast), down: of(path.tangentDown) };
  const byNoise =
    (2 / (above + below)) *
    Math.hypot(noise[k + 1]! / below, noise[k]! * (1 / below + 1 / above), noise[k - 1]! / above);
  const size = Math.hypot(found.north, found.east);
  // two components of noise; what is left is the bend of the hole
  const real = Math.sqrt(Math.max(0, size * size - 2 * byNoise * byNoise));
  const part = size > 0 ? real / size : 0;
  return { north: found.north * part, east: found.east * part, down: found.down * part };
}

/** Two stations with one direction at the very top: the upper one was not read. */
function addCarriedTop(path: HolePath, north: Float64Array, east: Float64Array, down: Float64Array): void {
  const top = path.depthM[1]! - path.depthM[0]!;
  const next = path.depthM[2]! - path.depthM[1]!;
  const factor = (top * top) / 2 / next;
  north[1]! += factor * (path.tangentNorth[2]! - path.tangentNorth[1]!);
  east[1]! += factor * (path.tangentEast[2]! - path.tangentEast[1]!);
  down[1]! += factor * (path.tangentDown[2]! - path.tangentDown[1]!);
}
