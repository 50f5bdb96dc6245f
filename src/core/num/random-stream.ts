import { contract } from "../result.ts";
import { threefryRounds, threefrySchedule } from "./threefry.ts";

/**
 * One endless series of random numbers, addressed by place: the number at a place is always the same.
 *
 * Different seeds or streams give unrelated series. One stream for one variable keeps the numbers of a variable
 * unchanged when another is added.
 */
export interface RandomStream {
  /** whole number, 0 to 2^53 - 1; chosen by the person, printed with the result */
  readonly seed: number;
  /** whole number, 0 to 2^32 - 1; which variable */
  readonly stream: number;
}

const WORD = 2 ** 32;

/**
 * Fills an array with numbers spread evenly over (0, 1), neither end included.
 *
 * @param first place of the first number in the series, whole, >= 0.
 * @throws ContractError if seed, stream or place is not a whole number in its range.
 *
 * Frame: none.
 * Source: 52 bits of two words of `threefry`, at the middle of their interval.
 */
export function fillUniforms(random: RandomStream, first: number, out: Float64Array): void {
  fillByPairs(random, first, out, (a, b, pair) => {
    pair[0] = a;
    pair[1] = b;
  });
}

/**
 * Fills an array with independent standard normal numbers.
 *
 * Their last digits may differ between engines, which are free in rounding log, cos and sin.
 *
 * @param first place of the first number in the series, whole, >= 0.
 * @throws ContractError if seed, stream or place is not a whole number in its range.
 *
 * Frame: none.
 * Source: Box & Muller, A note on the generation of random normal deviates, Ann. Math. Stat. 29, 1958 (from memory).
 * Checked against: moments and tail shares of a million (random-stream.test.ts).
 */
export function fillNormals(random: RandomStream, first: number, out: Float64Array): void {
  fillByPairs(random, first, out, (a, b, pair) => {
    const radius = Math.sqrt(-2 * Math.log(a));
    const angle = 2 * Math.PI * b;
    pair[0] = radius * Math.cos(angle);
    pair[1] = radius * Math.sin(angle);
  });
}

/** The number at one place of the series of `fillUniforms`. */
export function uniformAt(random: RandomStream, place: number): number {
  const one = new Float64Array(1);
  fillUniforms(random, place, one);
  return one[0]!;
}

/** The number at one place of the series of `fillNormals`. */
export function normalAt(random: RandomStream, place: number): number {
  const one = new Float64Array(1);
  fillNormals(random, place, one);
  return one[0]!;
}

function fillByPairs(
  random: RandomStream,
  first: number,
  out: Float64Array,
  make: (a: number, b: number, pair: Float64Array) => void,
): void {
  const { seed, stream } = random;
  const isWhole = (value: number) => Number.isSafeInteger(value) && value >= 0;
  contract(isWhole(seed) && isWhole(stream) && stream < WORD, `random: seed ${seed}, stream ${stream}`);
  contract(isWhole(first), `random: place ${first}`);
  const keys = threefrySchedule([seed % WORD, Math.floor(seed / WORD), stream, 0]);
  const words = new Uint32Array(4);
  const numbers = new Float64Array(2);
  const end = first + out.length;
  for (let place = first; place < end; ) {
    const pair = Math.floor(place / 2);
    threefryRounds(keys, pair | 0, Math.floor(pair / WORD) | 0, 0, 0, words); // "|" keeps the lower 32 bits
    make(unitInterval(words[0]!, words[1]!), unitInterval(words[2]!, words[3]!), numbers);
    for (let half = place % 2; half < 2 && place < end; half++, place++) out[place - first] = numbers[half]!;
  }
}

/** Middle of one of 2^52 equal parts of (0, 1): never 0, never 1. */
const unitInterval = (high: number, low: number): number =>
  ((high >>> 6) * 2 ** 26 + (low >>> 6) + 0.5) / 2 ** 52;
