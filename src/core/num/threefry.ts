import { contract } from "../result.ts";

/** Rotations of rounds 0 to 7, first and second pair of words; they repeat after 8. */
const FIRST = [10, 11, 13, 23, 6, 17, 25, 18] as const;
const SECOND = [26, 21, 27, 5, 20, 11, 10, 20] as const;
const KEY_PARITY = 0x1bd11bda;
const ROUNDS = 20;

/**
 * Threefry-4x32 with 20 rounds: four random words for each key and counter, always the same ones.
 *
 * Nothing is carried from one call to the next, so any number of workers that share out the counters draw
 * exactly the numbers that one alone would.
 *
 * @param key four words, whole numbers from 0 to 2^32 - 1.
 * @param counter four words.
 * @param out receives four words. Shape: 4.
 *
 * Frame: none.
 * Source: Salmon, Moraes, Dror & Shaw, Parallel random numbers: as easy as 1, 2, 3, SC11, 2011.
 * Checked against: test/published/threefry
 */
export function threefry(key: ArrayLike<number>, counter: ArrayLike<number>, out: Uint32Array): void {
  contract(
    key.length === 4 && counter.length === 4 && out.length === 4,
    "threefry: key, counter and out must have four words",
  );
  threefryRounds(threefrySchedule(key), counter[0]!, counter[1]!, counter[2]!, counter[3]!, out);
}

/** The five words that a key brings into the rounds: to be made once for many counters. */
export function threefrySchedule(key: ArrayLike<number>): Int32Array {
  const words = Int32Array.from([0, 1, 2, 3, 4], (i) => (i < 4 ? key[i]! | 0 : 0));
  words[4] = KEY_PARITY ^ words[0]! ^ words[1]! ^ words[2]! ^ words[3]!;
  return words;
}

/** As `threefry`, with the schedule of the key made beforehand and the counter as four numbers. */
export function threefryRounds(
  keys: Int32Array,
  c0: number,
  c1: number,
  c2: number,
  c3: number,
  out: Uint32Array,
): void {
  let x0 = ((c0 | 0) + keys[0]!) | 0;
  let x1 = ((c1 | 0) + keys[1]!) | 0;
  let x2 = ((c2 | 0) + keys[2]!) | 0;
  let x3 = ((c3 | 0) + keys[3]!) | 0;
  for (let round = 0; round < ROUNDS; ) {
    const first = FIRST[round % 8]!;
    const second = SECOND[round % 8]!;
    if (round % 2 === 0) {
      x0 = (x0 + x1) | 0;
      x1 = ((x1 << first) | (x1 >>> (32 - first))) ^ x0;
      x2 = (x2 + x3) | 0;
      x3 = ((x3 << second) | (x3 >>> (32 - second))) ^ x2;
    } else {
      x0 = (x0 + x3) | 0;
      x3 = ((x3 << first) | (x3 >>> (32 - first))) ^ x0;
      x2 = (x2 + x1) | 0;
      x1 = ((x1 << second) | (x1 >>> (32 - second))) ^ x2;
    }
    round++;
    if (round % 4 === 0) {
      const turn = round / 4;
      x0 = (x0 + keys[turn % 5]!) | 0;
      x1 = (x1 + keys[(turn + 1) % 5]!) | 0;
      x2 = (x2 + keys[(turn + 2) % 5]!) | 0;
      x3 = (x3 + keys[(turn + 3) % 5]! + turn) | 0;
    }
  }
  out[0] = x0;
  out[1] = x1;
  out[2] = x2;
  out[3] = x3;
}
