import { contract } from "../result.ts";
import type { AllanCurve } from "./allan-curve.ts";

/** Noise of a rate sensor as read off its Allan deviation curve. */
export interface AllanTerms {
  /** angle random walk N: unit of the rates times root second (rad/sqrt(s) for rad/s) */
  readonly randomWalk: number;
  /** slope of the curve on its logarithmic scales over the times N was read at; -1/2 for white noise */
  readonly randomWalkSlope: number;
  /** lowest point of the curve, unit of the rates */
  readonly floor: number;
  /** bias instability B = floor / sqrt(2 ln 2 / pi), unit of the rates */
  readonly biasInstability: number;
  /** averaging time of the lowest point, s */
  readonly floorTimeS: number;
  /** place in the curve of the longest averaging time at which N was read */
  readonly lastFalling: number;
  /** place in the curve of the lowest point */
  readonly lowest: number;
  /** rate random walk K: unit of the rates over root second; NaN where the curve does not rise far enough to show it */
  readonly rateRandomWalk: number;
  /** place in the curve of the shortest averaging time at which K was read; undefined where it was not */
  readonly firstRising: number | undefined;
  /** false when the curve still falls at its end: the floor is then an upper bound, the record too short */
  readonly floorReached: boolean;
}

/** Flicker noise of size B shows as sqrt(2 ln 2 / pi) B, about 0.664 B. */
const FLICKER_FACTOR = Math.sqrt((2 * Math.LN2) / Math.PI);
/** N is read where at least this many separate windows stand behind a point: 16 % or better. */
const TRUSTED_DEGREES = 19;

/**
 * Reads angle random walk and floor off an Allan deviation curve.
 *
 * N is the mean of deviation times root averaging time over the falling part: from the shortest time to a
 * quarter of the time of the lowest point, where other noise begins to show, as far as points are trusted. K is read
 * likewise over the rising part, from four times the time of the lowest point on, with the share of N taken off.
 *
 * @param curve at least one averaging time.
 * @throws ContractError if the curve is empty.
 *
 * Frame: none.
 * Source: IEEE Std 952, annex C: N / sqrt(tau), 0.664 B at the minimum, K sqrt(tau / 3)
 *   (from memory).
 * Checked against: simulated white noise and white noise with a random walk of the rate (allan-terms.test.ts).
 */
export function readAllanTerms(curve: AllanCurve): AllanTerms {
  contract(curve.count > 0, "readAllanTerms: the curve is empty");
  const time = curve.averagingTimeS;
  const trusted = Array.from(time, (_, i) => i).filter((i) => curve.degreesOfFreedom[i]! >= TRUSTED_DEGREES);
  const usable = trusted.length > 0 ? trusted : [0];
  const lowest = usable.reduce(
    (best, i) => (curve.deviation[i]! < curve.deviation[best]! ? i : best),
    usable[0]!,
  );
  const falling = usable.filter((i) => i === usable[0] || time[i]! <= time[lowest]! / 4);

  const walks = falling.map((i) => Math.log(curve.deviation[i]! * Math.sqrt(time[i]!)));
  const last = falling[falling.length - 1]!;
  const first = falling[0]!;
  const floor = curve.deviation[lowest]!;
  const randomWalk = Math.exp(walks.reduce((sum, value) => sum + value, 0) / walks.length);
  const rising = usable.filter((i) => time[i]! >= 4 * time[lowest]!);
  const rateWalks = rising.map((i) => {
    const left = curve.deviation[i]! ** 2 - randomWalk ** 2 / time[i]!;
    return Math.log((3 * left) / time[i]!) / 2;
  });
  return {
    randomWalk,
    lastFalling: last,
    lowest,
    rateRandomWalk: Math.exp(rateWalks.reduce((sum, value) => sum + value, 0) / rateWalks.length),
    firstRising: rising[0],
    randomWalkSlope:
      Math.log(curve.deviation[last]! / curve.deviation[first]!) / Math.log(time[last]! / time[first]!),
    floor,
    biasInstability: floor / FLICKER_FACTOR,
    floorTimeS: time[lowest]!,
    floorReached: lowest !== usable[usable.length - 1],
  };
}
