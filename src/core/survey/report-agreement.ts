import type { PassAgreement } from "../correction/combine-passes.ts";
import { chiSquareUpper } from "../num/chi-square.ts";
import { normalUpper } from "../num/normal.ts";
import type { RunRecord } from "./run-context.ts";

/** Chance of calling sound passes in disagreement. Common practice, no source. */
const SIGNIFICANCE = 0.001;

/**
 * D5: tells where passes or runs differ by more than their uncertainty: all stations together, or one of them alone.
 *
 * All together by chi-square on the effective degrees of freedom; one alone by its normalised residual, with the chance
 * shared out over all residuals.
 */
export function reportAgreement(
  agreement: PassAgreement,
  code: string,
  record: Pick<RunRecord, "find">,
): void {
  const { chiSquare, degreesOfFreedom, effectiveDegreesOfFreedom, largestNormalised } = agreement;
  if (degreesOfFreedom === 0) return;
  const scaled = (chiSquare * effectiveDegreesOfFreedom) / degreesOfFreedom;
  const together = chiSquareUpper(scaled, effectiveDegreesOfFreedom);
  const alone = 2 * normalUpper(largestNormalised) * degreesOfFreedom;
  if (together >= SIGNIFICANCE && alone >= SIGNIFICANCE) return;
  record.find("warning", code, {
    chi_square: chiSquare,
    degrees_of_freedom: degreesOfFreedom,
    largest: largestNormalised,
    depth_m: agreement.largestDepthM,
    pass: agreement.largestPass,
  });
}
