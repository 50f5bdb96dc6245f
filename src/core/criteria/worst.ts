import type { Measured } from "./criterion.ts";

/**
 * The one of several values that uses most of its own limit; where one of them is not a number, that one.
 *
 * Frame: none.
 * Source: common practice, no source.
 */
export function worstOf(candidates: readonly Measured[]): Measured | undefined {
  let worst = candidates[0];
  for (const candidate of candidates) {
    const used = utilisation(candidate);
    if (Number.isNaN(used)) return candidate;
    if (worst === undefined) continue;
    const most = utilisation(worst);
    // of two that use as much, the tighter limit speaks: at zero offset it is the one that decides
    if (used > most || (used === most && candidate.limit < worst.limit)) worst = candidate;
  }
  return worst;
}

/** Share of the limit that a value uses; a limit of nothing is used up by anything. */
const utilisation = ({ value, limit }: Measured): number =>
  limit > 0 ? value / limit : limit <= 0 ? Number.POSITIVE_INFINITY : Number.NaN;
