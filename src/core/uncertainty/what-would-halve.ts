import type { SourceId } from "./error-source.ts";

/** Part of one source in a variance, as budgets list it. */
export interface VariancePart {
  readonly source: SourceId;
  /** of the variance, [0, 1] */
  readonly share: number;
}

/** What it would take to halve an expanded uncertainty. */
export type HalvingAnswer =
  /** one source alone can do it: its standard value brought down to `factor` of what it is, [0, 0.5] */
  | { readonly kind: "one-source"; readonly source: SourceId; readonly factor: number }
  /** no source alone can */
  | {
      readonly kind: "several-sources";
      readonly largest: SourceId;
      /** expanded uncertainty that would stay, as a share of what it is, if the largest source were gone altogether */
      readonly leftWithoutLargest: number;
      /** the fewest sources that would all have to go, largest first */
      readonly together: readonly SourceId[];
    }
  /** there is nothing to halve */
  | { readonly kind: "nothing" };

/** Half the uncertainty is a quarter of the variance. */
const VARIANCE_LEFT = 1 / 4;

/**
 * Which single source, brought down to what part of its standard value, would halve the expanded uncertainty.
 *
 * Sources are independent and act in proportion to their standard value, and the expanded uncertainty goes with the root of the variance.
 * One source can do it alone only if it holds at least three quarters of the variance, so there is never more than one.
 *
 * @param parts shares of one variance, each source once; those without a finite positive share do not count.
 * @returns the one source with its factor, sqrt(1 - 3 / (4 share)); or what stays without the largest, and which would have to go together.
 *
 * Frame: none. Source: rule E2; variances of independent sources add.
 * Checked against: worked by hand (what-would-halve.test.ts).
 */
export function whatWouldHalve(parts: readonly VariancePart[]): HalvingAnswer {
  const acting = parts
    .filter(({ share }) => Number.isFinite(share) && share > 0)
    .toSorted((a, b) => b.share - a.share);
  const largest = acting[0];
  if (largest === undefined) return { kind: "nothing" };
  const whole = acting.reduce((sum, { share }) => sum + share, 0);
  const shareOfLargest = largest.share / whole;
  if (shareOfLargest >= 1 - VARIANCE_LEFT) {
    const factor = Math.sqrt(1 - (1 - VARIANCE_LEFT) / shareOfLargest);
    return { kind: "one-source", source: largest.source, factor };
  }
  return {
    kind: "several-sources",
    largest: largest.source,
    leftWithoutLargest: Math.sqrt(1 - shareOfLargest),
    together: fewestTogether(acting, whole).map(({ source }) => source),
  };
}

/** Largest first, until no more than a quarter of the variance is left. */
function fewestTogether(acting: readonly VariancePart[], whole: number): readonly VariancePart[] {
  let left = whole;
  const gone: VariancePart[] = [];
  for (const part of acting) {
    if (left <= VARIANCE_LEFT * whole) break;
    gone.push(part);
    left -= part.share;
  }
  return gone;
}
