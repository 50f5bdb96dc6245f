import type { Language } from "#core";
import { formatNumber, MISSING } from "./format-number.ts";

const NEARLY_SURE = 0.999;

/** A probability in percent, never rounded to a certainty: "> 99.9 %", "< 0.1 %". */
export function formatProbability(probability: number, language: Language): string {
  if (!Number.isFinite(probability)) return MISSING;
  const percent = (share: number) => `${formatNumber(100 * share, 1, language)} %`;
  if (probability > NEARLY_SURE) return `> ${percent(NEARLY_SURE)}`;
  if (probability < 1 - NEARLY_SURE) return `< ${percent(1 - NEARLY_SURE)}`;
  return percent(probability);
}

/** A probability that was chosen, in percent with no more digits than it has: "95 %", "97.5 %". */
export function formatCoverage(probability: number, language: Language): string {
  const percent = 100 * probability;
  const isWhole = Math.abs(percent - Math.round(percent)) < 1e-6;
  const written = formatNumber(percent, isWhole ? 0 : 1, language);
  return written === MISSING ? MISSING : `${written} %`;
}
