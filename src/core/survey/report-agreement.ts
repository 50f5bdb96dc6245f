import type { PassAgreement } from "../correction/combine-passes.ts";
import { chiSquareUpper } from "../num/chi-square.ts";
import type { RunRecord } from "./run-context.ts";

/** Chance of calling sound passes in disagreement. Common practice, no source. */
const SIGNIFICANCE = 0.001;

/** D5: tells where passes or runs differ by more than their uncertainty. */
export function reportAgreement(
  agreement: PassAgreement,
  code: string,
  record: Pick<RunRecord, "find">,
): void {
  if (agreement.degreesOfFreedom === 0) return;
  const probability = chiSquareUpper(agreement.chiSquare, agreement.degreesOfFreedom);
  if (probability >= SIGNIFICANCE) return;
  record.find("warning", code, {
    chi_square: agreement.chiSquare,
    degrees_of_freedom: agreement.degreesOfFreedom,
    largest: agreement.largestNormalised,
    depth_m: agreement.largestDepthM,
    pass: agreement.largestPass,
  });
}
