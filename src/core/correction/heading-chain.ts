import { holonomyOf } from "../frames/holonomy.ts";
import type { NorthEastDown } from "../geometry/vector.ts";

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
  const chain = new Chain(rows, constants);
  chain.guess();
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep++) {
    const before = chain.headingRad.slice();
    chain.sweep(driftRad, sweep === 0);
    // where no step led through a row that was still a guess, one sweep has settled everything
    if (!chain.usedGuesses || largestChange(before, chain.headingRad) < SETTLED_RAD) break;
  }
  const { headingRad, north, east, down, holonomyRad, earthTurnRad } = chain;
  return { headingRad, north, east, down, holonomyRad, earthTurnRad };
}

/**
 * One chain being worked out. Plain numbers and no object a step: a job has hundreds of thousands of steps, and its
 * uncertainty ten times as many.
 */
class Chain {
  readonly headingRad: Float64Array;
  readonly north: Float64Array;
  readonly east: Float64Array;
  readonly down: Float64Array;
  holonomyRad = 0;
  earthTurnRad = 0;
  /** whether the sweep led through rows that it had not come to yet */
  usedGuesses = false;
  readonly #rows: ChainRows;
  readonly #constants: ChainConstants;
  /** of the step that was taken last */
  #stepHolonomyRad = 0;
  #stepEarthRad = 0;

  constructor(rows: ChainRows, constants: ChainConstants) {
    const count = rows.turnRad.length;
    this.#rows = rows;
    this.#constants = constants;
    this.headingRad = new Float64Array(count);
    this.north = new Float64Array(count);
    this.east = new Float64Array(count);
    this.down = new Float64Array(count);
  }

  /** First guess without holonomy, so that the way back has directions to lead through. */
  guess(): void {
    const { openingHeadingRad, openingRow } = this.#constants;
    const { turnRad } = this.#rows;
    for (let i = 0; i < turnRad.length; i++)
      this.#setHeading(i, openingHeadingRad + turnRad[i]! - turnRad[openingRow]!);
  }

  sweep(driftRad: Float64Array, first: boolean): void {
    const { openingRow, openingHeadingRad } = this.#constants;
    this.holonomyRad = 0;
    this.earthTurnRad = 0;
    this.usedGuesses = openingRow > 0;
    this.#setHeading(openingRow, openingHeadingRad - driftRad[openingRow]!);
    for (let i = openingRow + 1; i < driftRad.length; i++) {
      this.#carry(driftRad, i - 1, i, first);
      this.holonomyRad += this.#stepHolonomyRad;
      this.earthTurnRad += this.#stepEarthRad;
    }
    for (let i = openingRow - 1; i >= 0; i--) this.#carry(driftRad, i + 1, i, first);
  }

  /** Rule A2, written out. */
  #setHeading(i: number, heading: number): void {
    const sine = Math.sin(heading);
    const cosine = Math.cos(heading);
    const x = this.#rows.tiltX[i]!;
    const y = this.#rows.tiltY[i]!;
    const north = x * cosine - y * sine;
    const east = x * sine + y * cosine;
    this.headingRad[i] = heading;
    this.north[i] = north;
    this.east[i] = east;
    this.down[i] = Math.sqrt(1 - north * north - east * east);
  }

  /**
   * One step from a settled row to the next; three rounds because the new direction depends on the new heading.
   *
   * Turning the direction by a small angle changes the holonomy by 1 - cos I of it, so what is left is divided by cos I
   * (Newton); plain repetition would not settle in holes far from plumb.
   */
  #carry(driftRad: Float64Array, from: number, to: number, first: boolean): void {
    const { timeS, turnRad } = this.#rows;
    const seconds = timeS[to]! - timeS[from]!;
    const shown = turnRad[to]! - turnRad[from]! - this.#constants.ownRateRadPerS * seconds;
    const without = this.headingRad[from]! + shown - (driftRad[to]! - driftRad[from]!);
    if (first) this.#setHeading(to, without);
    for (let round = 0; round < 3; round++) {
      this.#alongWay(from, to, seconds);
      const heading = this.headingRad[to]!;
      const left = without - this.#stepEarthRad + this.#stepHolonomyRad - heading;
      this.#setHeading(to, heading + left / Math.max(this.down[to]!, LEAST_DOWN));
      if (Math.abs(left) < SETTLED_RAD / 10) break;
    }
  }

  /**
   * Holonomy and earth turn on the way from row to row, through the stations of the ladder that lie between them, in the order
   * in which the probe passed; the time is spread over the way in proportion to the travel.
   */
  #alongWay(from: number, to: number, seconds: number): void {
    const { depthM, ladder } = this.#rows;
    const start = depthM[from]!;
    const end = depthM[to]!;
    const low = firstAtOrAbove(this.#rows, Math.min(start, end) + SAME_DEPTH_M);
    const high = firstAtOrAbove(this.#rows, Math.max(start, end) - SAME_DEPTH_M);
    const steps = Math.max(high - low, 0);
    let holonomyRad = 0;
    let rateTimesTravel = 0;
    let travel = 0;
    let plainRate = 0;
    let previous = from;
    for (let k = 0; k <= steps; k++) {
      const between = start > end ? high - 1 - k : low + k;
      const next = k === steps ? to : ladder[between]!;
      if (next > to) this.usedGuesses = true;
      holonomyRad += this.#holonomy(previous, next);
      const rate = (this.#earthAlong(previous) + this.#earthAlong(next)) / 2;
      const lengthM = Math.abs(depthM[next]! - depthM[previous]!);
      rateTimesTravel += rate * lengthM;
      travel += lengthM;
      plainRate += rate;
      previous = next;
    }
    const meanRate = travel > 0 ? rateTimesTravel / travel : plainRate / (steps + 1);
    this.#stepHolonomyRad = holonomyRad;
    this.#stepEarthRad = meanRate * seconds;
  }

  #holonomy(i: number, k: number): number {
    const { north, east, down } = this;
    return holonomyOf(north[i]!, east[i]!, down[i]!, north[k]!, east[k]!, down[k]!);
  }

  #earthAlong(i: number): number {
    const { earthRate } = this.#constants;
    return earthRate.north * this.north[i]! + earthRate.east * this.east[i]! + earthRate.down * this.down[i]!;
  }
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

function largestChange(before: Float64Array, after: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < after.length; i++) {
    const change = Math.abs(after[i]! - before[i]!);
    if (change > largest) largest = change;
  }
  return largest;
}
