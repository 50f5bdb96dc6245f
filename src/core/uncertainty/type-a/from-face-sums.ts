import { sampleStandardDeviation } from "../../num/moments.ts";
import type { TypeAValue } from "./type-a-value.ts";

/**
 * Standard uncertainty of one reading from the sums of two faces: their scatter over sqrt 2.
 *
 * Reading and turned reading add up to twice the zero at every station; what the sums scatter is the noise of two readings:
 * of the sensor, and of how the probe sits.
 *
 * @param sums face 1 + face 2 at each station, one axis, any unit. Shape: n; one that is not finite is left out.
 * @returns unit of the sums; undefined with fewer than 2 of them. Degrees of freedom: n - 1.
 *
 * Frame: probe, one axis.
 * Source: rule C2; scatter of a sum of two equal errors, JCGM 100:2008 5.1.2.
 * Checked against: closed form and simulation (type-a.test.ts).
 */
export function fromFaceSums(sums: ArrayLike<number>): TypeAValue | undefined {
  const known = Array.from(sums).filter(Number.isFinite);
  if (known.length < 2) return undefined;
  return {
    value: sampleStandardDeviation(known) / Math.SQRT2,
    degreesOfFreedom: known.length - 1,
    from: "face-sums",
  };
}
