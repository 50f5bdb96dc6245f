import { median } from "../num/median.ts";
import type { ContinuousLog, Stretch } from "./continuous-log.ts";

/** A row is still when nothing moves within this time about it, seconds. */
const SPAN_S = 1;
/** A gap of this many usual steps, and longer than SPAN_S, ends a stretch. */
const GAP_STEPS = 20;
/** So many rows are looked at for the usual rate of the gyro at rest. */
const RATE_SAMPLES = 4000;

export interface StillStretches {
  readonly stretches: readonly Stretch[];
  /** stretches in which the depth does not change, whatever the gyro says */
  readonly pauses: readonly Stretch[];
  /** rate that the gyro shows at rest: its own and the earth's, rad/s; 0 without a gyro */
  readonly restRateRadPerS: number;
}

/**
 * Finds the stretches of a log in which neither depth nor gyro moves, in one pass over the rows for each.
 *
 * A row is still when over the second about it the depth changes by no more than its limit and the probe turns by no more than
 * its limit besides the rate that the gyro shows at rest. That rate is the median over the rows whose depth is still.
 *
 * @param depthM depth of each row, metres. Shape: log.count.
 * @returns stretches in the order of time, also very short ones. A change of leg or face, or a gap in time, ends one.
 *
 * Frame: probe axis. Source: rule C3, docs/method/steadiness.md; limits are common practice, no source.
 */
export function stillStretches(
  log: ContinuousLog,
  depthM: Float64Array,
  depthLimitM: number,
  turnLimitRad: number,
): StillStretches {
  const still = new Uint8Array(log.count).fill(1);
  clearMoving(log.timeS, depthM, depthLimitM, still);
  const pauses = runsOf(log, still);
  const hasTurn = log.turnRad.length > 0;
  const restRateRadPerS = hasTurn ? rateAtRest(log, still) : 0;
  if (hasTurn) {
    const turn = log.turnRad.map((value, i) => value - restRateRadPerS * log.timeS[i]!);
    clearMoving(log.timeS, turn, turnLimitRad, still);
  }
  return { stretches: hasTurn ? runsOf(log, still) : pauses, pauses, restRateRadPerS };
}

/** Clears the mark of every row about which the values range over more than the limit within SPAN_S. */
function clearMoving(timeS: Float64Array, values: Float64Array, limit: number, still: Uint8Array): void {
  const count = values.length;
  const largest = new RowQueue(count);
  const smallest = new RowQueue(count);
  let ahead = 0;
  let behind = 0;
  for (let i = 0; i < count; i++) {
    for (; ahead < count && timeS[ahead]! <= timeS[i]! + SPAN_S / 2; ahead++) {
      while (largest.size > 0 && !(values[largest.last]! > values[ahead]!)) largest.dropLast();
      while (smallest.size > 0 && !(values[smallest.last]! < values[ahead]!)) smallest.dropLast();
      largest.add(ahead);
      smallest.add(ahead);
    }
    while (timeS[behind]! < timeS[i]! - SPAN_S / 2) behind++;
    while (largest.first < behind) largest.dropFirst();
    while (smallest.first < behind) smallest.dropFirst();
    // asks for what must be true, so that a missing value never counts as rest
    if (!(values[largest.first]! - values[smallest.first]! <= limit)) still[i] = 0;
  }
}

/** Rows in the order in which they came, of which both ends can be taken away. */
class RowQueue {
  readonly #rows: Int32Array;
  #start = 0;
  #end = 0;

  constructor(capacity: number) {
    this.#rows = new Int32Array(capacity);
  }

  get size(): number {
    return this.#end - this.#start;
  }

  get first(): number {
    return this.#rows[this.#start]!;
  }

  get last(): number {
    return this.#rows[this.#end - 1]!;
  }

  add(row: number): void {
    this.#rows[this.#end++] = row;
  }

  dropFirst(): void {
    this.#start++;
  }

  dropLast(): void {
    this.#end--;
  }
}

function rateAtRest(log: ContinuousLog, still: Uint8Array): number {
  const { timeS, turnRad, count } = log;
  const step = Math.max(1, Math.floor(count / RATE_SAMPLES));
  const rates: number[] = [];
  let later = 0;
  for (let i = 0; i < count; i += step) {
    while (later < count && timeS[later]! < timeS[i]! + SPAN_S) later++;
    if (later === count) break;
    const rate = (turnRad[later]! - turnRad[i]!) / (timeS[later]! - timeS[i]!);
    if (still[i] === 1 && still[later] === 1 && Number.isFinite(rate)) rates.push(rate);
  }
  return rates.length === 0 ? 0 : median(Float64Array.from(rates));
}

function runsOf(log: ContinuousLog, still: Uint8Array): readonly Stretch[] {
  const { timeS, leg, face, count } = log;
  const usualStep = count < 2 ? 0 : timeS[count - 1]! / (count - 1);
  const gapS = Math.max(SPAN_S, GAP_STEPS * usualStep);
  const stretches: Stretch[] = [];
  let fromRow = -1;
  for (let i = 0; i <= count; i++) {
    const goesOn =
      i < count &&
      still[i] === 1 &&
      fromRow >= 0 &&
      timeS[i]! - timeS[i - 1]! <= gapS &&
      leg[i] === leg[i - 1] &&
      face[i] === face[i - 1];
    if (goesOn) continue;
    if (fromRow >= 0) stretches.push({ fromRow, toRow: i });
    fromRow = i < count && still[i] === 1 ? i : -1;
  }
  return stretches;
}
