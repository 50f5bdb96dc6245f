import { chiSquareUpper } from "../../num/chi-square.ts";
import { findRoot } from "../../num/find-root.ts";
import { contract } from "../../result.ts";
import type { TypeAValue } from "./type-a-value.ts";

/** What a run came back with. */
export interface Closure {
  /** heading carried to the closing reference less the reference, own rate of the gyro taken out, radians */
  readonly misclosureRad: number;
  /** between the references, seconds, > 0 */
  readonly seconds: number;
}

/**
 * Angle random walk N of the gyro from the misclosures of several runs: each has the variance N^2 T + 2 sigma^2.
 *
 * N is chosen so that the squared misclosures, each over its variance, add up to their number. Misclosures that the
 * references explain alone give N = 0.
 *
 * @param closures runs of one instrument. Shape: n.
 * @param referenceRad standard uncertainty of setting the probe to one reference, sigma, radians.
 * @param fitted rates that were estimated from these misclosures and taken off them.
 * @returns rad / sqrt(s); undefined with fewer than 2 closures more than were fitted. Degrees of freedom: n - fitted where the gyro makes the misclosures,
 *   fewer where the references do; 0 for N = 0.
 * @throws ContractError if a misclosure is not finite, a time not positive, or the uncertainty negative.
 *
 * Frame: probe axis.
 * Source: rule C4; moment estimator of a variance component, first order for its degrees of freedom.
 * Checked against: closed form for equal times and simulation (type-a.test.ts).
 */
export function fromClosures(
  closures: readonly Closure[],
  referenceRad: number,
  fitted = 0,
): TypeAValue | undefined {
  checkClosures(closures, referenceRad);
  const n = closures.length - fitted;
  if (n < 2) return undefined;
  const walk2 = walkSquared(closures, referenceRad, n);
  if (walk2 === 0) return { value: 0, degreesOfFreedom: 0, from: "closures" };
  const information = closures.reduce(
    (sum, { seconds }) => sum + seconds / varianceOf(seconds, referenceRad, Math.sqrt(walk2)),
    0,
  );
  // how much of the variance of a closure is the gyro's, on average
  const part = (walk2 * information) / closures.length;
  const degreesOfFreedom = part * part * n;
  return { value: Math.sqrt(walk2), degreesOfFreedom, from: "closures" };
}

function walkSquared(closures: readonly Closure[], referenceRad: number, n: number): number {
  // all of every misclosure put down to the gyro
  const most = closures.reduce((sum, { misclosureRad, seconds }) => sum + misclosureRad ** 2 / seconds, 0);
  if (referenceRad === 0 || most === 0) return most / n;
  const excess = (walk2: number): number => chiSquareOf(closures, referenceRad, Math.sqrt(walk2)) - n;
  if (!(excess(0) > 0)) return 0;
  // at `most` each term is at most its share of 1, so the sum is at most 1
  return findRoot((share) => excess(share * most), 0, 1) * most;
}

/** Whether misclosures agree with what the instrument and the references are said to be. */
export interface ClosureTest {
  /** sum of the squared misclosures, each over its variance N^2 T + 2 sigma^2 */
  readonly chiSquare: number;
  readonly degreesOfFreedom: number;
  /** chance of so large a sum, or a larger one, if what is said is true */
  readonly probability: number;
}

/**
 * Tests the misclosures of several runs against a stated random walk and uncertainty of the references.
 *
 * @param walk N, rad / sqrt(s). @returns undefined without closures.
 * @throws ContractError as `fromClosures`, or if everything is stated to be without error.
 *
 * Frame: probe axis. Source: rule C4; sum of squares of normal variables, chi-square with n degrees of freedom.
 * Checked against: simulation (type-a.test.ts).
 */
export function testClosures(
  closures: readonly Closure[],
  referenceRad: number,
  walk: number,
): ClosureTest | undefined {
  checkClosures(closures, referenceRad);
  contract(walk >= 0 && walk + referenceRad > 0, `testClosures: walk ${walk}, references ${referenceRad}`);
  if (closures.length === 0) return undefined;
  const chiSquare = chiSquareOf(closures, referenceRad, walk);
  const degreesOfFreedom = closures.length;
  return { chiSquare, degreesOfFreedom, probability: chiSquareUpper(chiSquare, degreesOfFreedom) };
}

const varianceOf = (seconds: number, referenceRad: number, walk: number): number =>
  walk ** 2 * seconds + 2 * referenceRad ** 2;

const chiSquareOf = (closures: readonly Closure[], referenceRad: number, walk: number): number =>
  closures.reduce(
    (sum, { misclosureRad, seconds }) => sum + misclosureRad ** 2 / varianceOf(seconds, referenceRad, walk),
    0,
  );

function checkClosures(closures: readonly Closure[], referenceRad: number): void {
  contract(referenceRad >= 0, `closures: uncertainty of the references ${referenceRad}`);
  for (const { misclosureRad, seconds } of closures)
    contract(Number.isFinite(misclosureRad) && seconds > 0, `closures: ${misclosureRad} rad in ${seconds} s`);
}
