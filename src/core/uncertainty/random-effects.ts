import type { HolePath } from "../path/hole-path.ts";
import type { SourceId } from "./error-source.ts";

/** Chance of a direction, by station of the path. */
export interface DirectionErrors {
  readonly source: SourceId;
  /** standard deviation of a component of the direction, dimensionless. Shape: stations */
  readonly standard: Float64Array;
  /** both: north and east alike; lean: of the inclination only; across: square to the lean only, standing for sin I times azimuth */
  readonly acts: "both" | "lean" | "across";
}

/** Chance at the stops of one hole: what each stop, each interval and each stretch of time adds. Standard values. */
export interface StopErrors {
  readonly tangent: readonly DirectionErrors[];
  /** standard deviation of the depth, by station, metres */
  readonly depthM: Float64Array;
  /** how a gyro's heading wanders between known headings; undefined where nothing is carried by a gyro */
  readonly walk: HeadingWalk | undefined;
  /** true where station 0 is the unread top, carried by the direction of station 1 */
  readonly carriedTop: boolean;
  /** displacement that the course between station i - 1 and i can hide, by station i, metres, as vectors */
  readonly hidden: { readonly north: Float64Array; readonly east: Float64Array; readonly down: Float64Array };
}

/** Random walk of a heading, tied at its start and, where it was closed, at its end. */
export interface HeadingWalk {
  /** rad per square root second */
  readonly walk: number;
  /** time of the first known heading, seconds */
  readonly fromS: number;
  /** time of the last known heading, on which the run was closed; undefined for a run that was left open */
  readonly toS: number | undefined;
  /** which time speaks at which station of the path with which share; shares of one station add up to 1 */
  readonly voices: readonly { readonly station: number; readonly timeS: number; readonly share: number }[];
}

/** Effects on one point, one column a unit of chance: three components each. Shape: units x 3. */
export interface EffectColumns {
  readonly source: SourceId;
  /** north, east, down of each unit, metres */
  readonly values: Float64Array;
}

/**
 * What every unit of chance moves a station by: independent, each of variance 1.
 *
 * The path is a sum of directions times lengths, so each direction error counts for half of the intervals at its stop, down to the
 * station. A heading error turns the direction about the vertical; a walk is the sum of the steps before it, less, after a closed
 * correction, its share of the whole (a bridge, variance N^2 t (T - t) / T).
 *
 * @param station index in the path. @returns columns by source; two stations of one path may be combined unit by unit.
 *
 * Frame: site NED. Source: rules E1, E2, C4; docs/sources.md [E5], [E6].
 * Checked against: closed forms (random-effects.test.ts), Monte Carlo through the whole pipeline (test/jobs).
 */
export function effectsAt(path: HolePath, errors: StopErrors, station: number): readonly EffectColumns[] {
  const lever = leversTo(path, station, errors.carriedTop);
  return [
    ...errors.tangent.map((direction) => ({
      source: direction.source,
      values: directionEffects(path, direction, lever),
    })),
    { source: "depth-reading", values: depthEffects(path, errors.depthM, station) },
    ...(errors.walk === undefined
      ? []
      : [{ source: "gyro-noise" as const, values: walkEffects(path, errors.walk, lever) }]),
    { source: "unread-stretch", values: hiddenEffects(errors.hidden, station) },
  ];
}

/** Length of path that each station's direction stands for, as far as a station: half of the intervals beside it. */
function leversTo(path: HolePath, station: number, carriedTop: boolean): Float64Array {
  const lever = new Float64Array(path.count);
  for (let i = 1; i <= station; i++) {
    const half = (path.depthM[i]! - path.depthM[i - 1]!) / 2;
    lever[i - 1]! += half;
    lever[i]! += half;
  }
  if (carriedTop && path.count > 1) {
    lever[1]! += lever[0]!;
    lever[0] = 0;
  }
  return lever;
}

/** Two units a station, north and east, or one along or across the lean; the down component follows from the unit length. */
function directionEffects(
  path: HolePath,
  { standard, acts }: DirectionErrors,
  lever: Float64Array,
): Float64Array {
  const values = new Float64Array(6 * path.count);
  for (let i = 0; i < path.count; i++) {
    const move = lever[i]! * standard[i]!;
    if (move === 0) continue;
    const north = path.tangentNorth[i]!;
    const east = path.tangentEast[i]!;
    const down = path.tangentDown[i]!;
    const sine = Math.hypot(north, east);
    if (acts === "both" || sine < PLUMB_SINE) {
      values[6 * i] = move;
      values[6 * i + 2] = (-move * north) / down;
      values[6 * i + 4] = move;
      values[6 * i + 5] = (-move * east) / down;
    } else if (acts === "lean") {
      values[6 * i] = (move * north * down) / sine;
      values[6 * i + 1] = (move * east * down) / sine;
      values[6 * i + 2] = -move * sine;
    } else {
      values[6 * i] = (-move * east) / sine;
      values[6 * i + 1] = (move * north) / sine;
    }
  }
  return values;
}

/** A direction closer to plumb has no lean to act along: its error may point anywhere. */
const PLUMB_SINE = 1e-9;

/**
 * A stop read too deep lengthens the interval above it and shortens the one below. One unit a station.
 *
 * Above the first stop the path starts on that stop's own direction, so its depth moves only what bends below it.
 */
function depthEffects(path: HolePath, standard: Float64Array, station: number): Float64Array {
  const values = new Float64Array(3 * path.count);
  const columns = [path.tangentNorth, path.tangentEast, path.tangentDown];
  for (let i = 0; i <= station; i++) {
    columns.forEach((tangent, axis) => {
      const above = i === 0 ? tangent[0]! : (tangent[i - 1]! + tangent[i]!) / 2;
      const below = i === station ? 0 : (tangent[i]! + tangent[i + 1]!) / 2;
      values[3 * i + axis] = standard[i]! * (above - below);
    });
  }
  return values;
}

/**
 * One unit a step of time between known headings and stops.
 *
 * A heading at time t is off by the steps between the first known heading and t, whichever came first, less, after a closed
 * correction, the share (t - from) / (to - from) of the steps between the two known headings.
 */
function walkEffects(path: HolePath, walk: HeadingWalk, lever: Float64Array): Float64Array {
  const { fromS, toS, voices } = walk;
  const times = [...new Set([fromS, ...(toS === undefined ? [] : [toS]), ...voices.map((one) => one.timeS)])];
  times.sort((a, b) => a - b);
  const placeOf = new Map(times.map((time, i) => [time, i]));
  // turn of the direction about the vertical, (-tE, tN): change of its sum at the step that ends at a time
  const north = new Float64Array(times.length + 1);
  const east = new Float64Array(times.length + 1);
  const between = (from: number, to: number, turnNorth: number, turnEast: number): void => {
    north[from + 1]! += turnNorth;
    east[from + 1]! += turnEast;
    north[to + 1]! -= turnNorth;
    east[to + 1]! -= turnEast;
  };
  const first = placeOf.get(fromS)!;
  for (const { station, timeS, share } of voices) {
    const reach = lever[station]! * share;
    if (reach === 0) continue;
    const turnNorth = -reach * path.tangentEast[station]!;
    const turnEast = reach * path.tangentNorth[station]!;
    between(first, placeOf.get(timeS)!, turnNorth, turnEast);
    if (toS === undefined) continue;
    const part = (timeS - fromS) / (toS - fromS);
    between(first, placeOf.get(toS)!, -part * turnNorth, -part * turnEast);
  }
  const values = new Float64Array(3 * times.length);
  let sumNorth = 0;
  let sumEast = 0;
  for (let i = 1; i < times.length; i++) {
    sumNorth += north[i]!;
    sumEast += east[i]!;
    const standard = walk.walk * Math.sqrt(times[i]! - times[i - 1]!);
    values[3 * i] = standard * sumNorth;
    values[3 * i + 1] = standard * sumEast;
  }
  return values;
}

/** One unit an interval: what lies above the station counts in full. */
function hiddenEffects(hidden: StopErrors["hidden"], station: number): Float64Array {
  const values = new Float64Array(3 * hidden.north.length);
  for (let i = 1; i <= station; i++) {
    values[3 * i] = hidden.north[i]!;
    values[3 * i + 1] = hidden.east[i]!;
    values[3 * i + 2] = hidden.down[i]!;
  }
  return values;
}
