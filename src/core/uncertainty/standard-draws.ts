import { hashText } from "../num/hash-text.ts";
import { fillNormals, fillUniforms } from "../num/random-stream.ts";
import type { DistributionShape } from "./error-source.ts";

/**
 * Numbers with mean 0 and standard deviation 1, of a distribution's form, for one trial of a named source.
 *
 * The number of a trial is found by seed, name and trial alone: it does not matter which trials were made before, or where.
 *
 * @param name of the source and of what its value belongs to. @param trial whole number from 0.
 * @param count how many a trial, the same for every trial of a name.
 *
 * Frame: none. Source: JCGM 101:2008, 6.4 (from memory): rectangular, triangular and arcsine forms scaled to variance 1.
 */
export function standardDraws(
  distribution: DistributionShape,
  seed: number,
  name: string,
  trial: number,
  count: number,
): Float64Array {
  const stream = { seed, stream: hashText(name) };
  const width = 2 * Math.ceil(count / 2);
  const out = new Float64Array(count);
  if (distribution === "normal") {
    fillNormals(stream, trial * width, out);
    return out;
  }
  if (distribution === "triangular") {
    const pairs = new Float64Array(2 * count);
    fillUniforms(stream, 2 * trial * width, pairs);
    return out.map((_, i) => Math.sqrt(6) * (pairs[2 * i]! + pairs[2 * i + 1]! - 1));
  }
  fillUniforms(stream, trial * width, out);
  return distribution === "rectangular"
    ? out.map((u) => Math.sqrt(3) * (2 * u - 1))
    : out.map((u) => Math.SQRT2 * Math.cos(2 * Math.PI * u));
}
