import { fQuantile } from "#core";
import type { Share } from "../desk-record.ts";

/** From so many on the interval is narrow enough to compare parts of a job; ours, no source. */
const FEW = 20;
const TAIL = 0.025;

/**
 * A share of what was judged, with its 95 % interval.
 *
 * Source: C. J. Clopper, E. S. Pearson, "The use of confidence or fiducial limits illustrated in the case of the binomial",
 *   Biometrika 26 (1934), in the form with quantiles of F (from memory).
 */
export function shareOf(outside: number, judged: number): Share {
  const [low, high] = judged === 0 ? [Number.NaN, Number.NaN] : interval(outside, judged);
  return { judged, outside, share: outside / judged, low, high, isSmall: judged < FEW };
}

function interval(found: number, of: number): readonly [number, number] {
  const rest = of - found;
  const below =
    found === 0 ? 0 : found / (found + (rest + 1) * fQuantile(1 - TAIL, 2 * (rest + 1), 2 * found));
  const f = rest === 0 ? Number.NaN : (found + 1) * fQuantile(1 - TAIL, 2 * (found + 1), 2 * rest);
  return [below, rest === 0 ? 1 : f / (rest + f)];
}
