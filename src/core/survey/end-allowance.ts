/** Length of probe and debris at the toe: common practice, no source. */
const LEAST_END_ALLOWANCE_M = 1;

/**
 * How far above the toe readings may stop, or below the head begin, and still speak for the whole length.
 *
 * @param intervalM usual depth between stations; NaN where there is none.
 * @returns twice the interval, but never less than 1 m.
 *
 * Frame: along the hole. Source: rule D4; the length itself is common practice, no source.
 */
export const endAllowanceM = (intervalM: number): number =>
  Math.max(LEAST_END_ALLOWANCE_M, 2 * (Number.isNaN(intervalM) ? 0 : intervalM));
