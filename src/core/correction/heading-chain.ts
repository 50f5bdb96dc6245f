import { tangentFromTilt } from "../frames/attitude.ts";
import { holonomy } from "../frames/holonomy.ts";
import { dot, type NorthEastDown, ned } from "../geometry/vector.ts";

/** What the heading is carried along: rows in the order of time. Arrays of equal length. */
export interface ChainRows {
  /** seconds */
  readonly timeS: Float64Array;
  /** gyro angle about the probe axis with its scale applied, radians, positive clockwise looking down */
  readonly turnRad: Float64Array;
  /** corrected depth along the hole, metres */
  readonly depthM: Float64Array;
  /** corrected sines of the lean towards probe +x and +y */
  readonly tiltX: Float64Array;
  readonly tiltY: Float64Array;
  /** rows of one pass, sorted by depth: the way between two rows that are not neighbours leads through them */
  readonly ladder: readonly number[];
}

export interface ChainConstants {
  /** row at which the heading is known */
  readonly openingRow: number;
  /** azimuth of probe +x at that row, radians from grid north */
  readonly openingHeadingRad: number;
  /** the gyro's own rate, without the earth, rad/s */
  readonly ownRateRadPerS: number;
  /** earth rate turned to the site grid, rad/s */
  readonly earthRate: NorthEastDown;
}

/** Headings of every row and the direction of the hole that goes with them. */
export interface ChainedHeadings {
  /** azimuth of probe +x in the levelled frame, radians from grid north, not wrapped */
  readonly headingRad: Float64Array;
  readonly north: Float64Array;
  readonly east: Float64Array;
  readonly down: Float64Array;
  /** sum of the holonomy terms from the opening row to the last row, radians */
  readonly holonomyRad: number;
  /** turn of the earth taken out between the opening row and the last row, radians */
  readonly earthTurnRad: number;
}

const MAX_SWEEPS = 12;
const SETTLED_RAD = 1e-12;
/** closer to horizontal than 3 degrees a gyro along the hole says next to nothing about the heading */
const LEAST_DOWN = 0.05;
/** rows of the way that are this close to an end of it are the end itself, metres */
const SAME_DEPTH_M = 0.001;

/**
 * Carries the heading from row to row: turn shown by the gyro, less the earth's turn and the gyro's own drift,
 * plus the holonomy of the levelled frame.
 *
 * The direction at a row depends on its heading, so each step is iterated, and the whole chain is swept until it settles:
 * the way back to the top leads through stations whose directions are being worked out.
 *
 * @param driftRad drift to take out at each row, radians, from a closure model. Shape: rows.
 * @returns NaN from the first row on whose time, turn or tilt is missing.
 *
 * Frame: probe to site NED. Source: rules A2, A4, A5.
 * Checked against: the rigid-body simulator (test/jobs).
 */
export function chainHeadings(
  rows: ChainRows,
  constants: ChainConstants,
  driftRad: Float64Array,
): ChainedHeadings {
  const count = rows.turnRad.length;
  const state: State = {
    headingRad: new Float64Array(count),
    north: new Float64Array(count),
    east: new Float64Array(count),
    down: new Float64Array(count),
  };
  // First guess without holonomy, so that the way back has directions to lead through.
  for (let i = 0; i < count; i++)
    setHeading(
      rows,
      state,
      i,
      constants.openingHeadingRad + rows.turnRad[i]! - rows.turnRad[constants.openingRow]!,
    );
  let sums = { holonomyRad: 0, earthTurnRad: 0 };
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep++) {
    const before = state.headingRad.slice();
    sums = sweepRows(rows, constants, driftRad, state, sweep === 0);
    if (largestChange(before, state.headingRad) < SETTLED_RAD) break;
  }
  return { ...state, ...sums };
}

type State = Pick<ChainedHeadings, "headingRad" | "north" | "east" | "down">;

function setHeading(rows: ChainRows, state: State, i: number, heading: number): void {
  const tangent = tangentFromTilt({ x: rows.tiltX[i]!, y: rows.tiltY[i]! }, heading);
  state.headingRad[i] = heading;
  state.north[i] = tangent.north;
  state.east[i] = tangent.east;
  state.down[i] = tangent.down;
}

const tangentOf = (state: State, i: number): NorthEastDown =>
  ned(state.north[i]!, state.east[i]!, state.down[i]!);

function sweepRows(
  rows: ChainRows,
  constants: ChainConstants,
  driftRad: Float64Array,
  state: State,
  first: boolean,
): { holonomyRad: number; earthTurnRad: number } {
  const { openingRow } = constants;
  const sums = { holonomyRad: 0, earthTurnRad: 0 };
  setHeading(rows, state, openingRow, constants.openingHeadingRad - driftRad[openingRow]!);
  for (let i = openingRow + 1; i < driftRad.length; i++) {
    const step = carry(rows, constants, driftRad, state, i - 1, i, first);
    sums.holonomyRad += step.holonomyRad;
    sums.earthTurnRad += step.earthTurnRad;
  }
  for (let i = openingRow - 1; i >= 0; i--) carry(rows, constants, driftRad, state, i + 1, i, first);
  return sums;
}

/**
 * One step from a settled row to the next; three rounds because the new direction depends on the new heading.
 *
 * Turning the direction by a small angle changes the holonomy by 1 - cos I of it, so what is left is divided by cos I
 * (Newton); plain repetition would not settle in holes far from plumb.
 */
function carry(
  rows: ChainRows,
  constants: ChainConstants,
  driftRad: Float64Array,
  state: State,
  from: number,
  to: number,
  first: boolean,
): { holonomyRad: number; earthTurnRad: number } {
  const seconds = rows.timeS[to]! - rows.timeS[from]!;
  const shown = rows.turnRad[to]! - rows.turnRad[from]! - constants.ownRateRadPerS * seconds;
  const without = state.headingRad[from]! + shown - (driftRad[to]! - driftRad[from]!);
  if (first) setHeading(rows, state, to, without);
  const way = wayBetween(rows, from, to);
  let terms = { holonomyRad: 0, earthTurnRad: 0 };
  for (let round = 0; round < 3; round++) {
    terms = alongWay(rows, constants.earthRate, state, way, seconds);
    const heading = state.headingRad[to]!;
    const left = without - terms.earthTurnRad + terms.holonomyRad - heading;
    setHeading(rows, state, to, heading + left / Math.max(state.down[to]!, LEAST_DOWN));
  }
  return terms;
}

/** Rows from `from` to `to` with the stations of the ladder that lie between them, in the order in which the probe passed. */
function wayBetween(rows: ChainRows, from: number, to: number): readonly number[] {
  const start = rows.depthM[from]!;
  const end = rows.depthM[to]!;
  const low = Math.min(start, end) + SAME_DEPTH_M;
  const high = Math.max(start, end) - SAME_DEPTH_M;
  if (!(high > low)) return [from, to];
  const between = rows.ladder.slice(firstAtOrAbove(rows, low), firstAtOrAbove(rows, high));
  if (start > end) between.reverse();
  return [from, ...between, to];
}

/** First place of the ladder whose depth is at least the given one. */
function firstAtOrAbove(rows: ChainRows, depthM: number): number {
  let low = 0;
  let high = rows.ladder.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rows.depthM[rows.ladder[middle]!]! < depthM) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Holonomy and earth turn along a way; the time is spread over it in proportion to the travel. */
function alongWay(
  rows: ChainRows,
  earthRate: NorthEastDown,
  state: State,
  way: readonly number[],
  seconds: number,
): { holonomyRad: number; earthTurnRad: number } {
  let holonomyRad = 0;
  let rateTimesTravel = 0;
  let travel = 0;
  let plainRate = 0;
  for (let k = 1; k < way.length; k++) {
    const first = tangentOf(state, way[k - 1]!);
    const second = tangentOf(state, way[k]!);
    holonomyRad += holonomy(first, second);
    const rate = (dot(earthRate, first) + dot(earthRate, second)) / 2;
    const lengthM = Math.abs(rows.depthM[way[k]!]! - rows.depthM[way[k - 1]!]!);
    rateTimesTravel += rate * lengthM;
    travel += lengthM;
    plainRate += rate;
  }
  const meanRate = travel > 0 ? rateTimesTravel / travel : plainRate / (way.length - 1);
  return { holonomyRad, earthTurnRad: meanRate * seconds };
}

function largestChange(before: Float64Array, after: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < after.length; i++) {
    const change = Math.abs(after[i]! - before[i]!);
    if (change > largest) largest = change;
  }
  return largest;
}
