/** Times between two tries, milliseconds. */
export const PAUSES = {
  /** after the first failure; doubled with each further one */
  first: 5_000,
  longest: 5 * 60_000,
  /** nothing is wrong, and nothing tells when the office has something new */
  polling: 30_000,
  /** nothing is wrong, and a live connection tells: only to be sure that nothing was missed */
  live: 5 * 60_000,
  /** something was written here: what follows at once goes with it */
  gathering: 300,
} as const;

/** A pause is drawn from this share below it to this share above it, so that many devices do not come all at once. */
const SPREAD = 0.25;

/**
 * How long to wait after so many failures one after the other.
 *
 * @param uniform from 0 to 1.
 * @param atLeast what the office has asked for, milliseconds.
 */
export function pauseAfterFailures(failures: number, uniform: number, atLeast = 0): number {
  const pause = Math.min(PAUSES.longest, PAUSES.first * 2 ** (failures - 1));
  return Math.max(atLeast, spread(pause, uniform));
}

/** The same pause, a little longer or shorter. */
export const spread = (pause: number, uniform: number): number =>
  Math.round(pause * (1 + SPREAD * (2 * uniform - 1)));
