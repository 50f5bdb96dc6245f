import type { Language } from "#core";
import { formatNumber, MISSING } from "./format-number.ts";
import { formatQuantity } from "./format-quantity.ts";

const ONE_IN = { en: "1 in ", de: "1 zu " } as const;
/** Beyond this the run is straight for all purposes, and the digits of n mean nothing. */
const LARGEST_N = 10_000;

/**
 * A ratio as "1 in n": whole n from 100 on, one decimal below, because 1 in 13.3 is not 1 in 13.
 *
 * @param ratio dimensionless (m/m); the sign is left out. 0 has no n and says "1 in ∞".
 */
export function formatRatioOneIn(ratio: number, language: Language): string {
  if (!Number.isFinite(ratio)) return MISSING;
  const n = 1 / Math.abs(ratio);
  if (n === Number.POSITIVE_INFINITY) return `${ONE_IN[language]}∞`;
  if (n > LARGEST_N) return `${ONE_IN[language]}> ${formatNumber(LARGEST_N, 0, language)}`;
  return ONE_IN[language] + formatNumber(n, n >= 99.95 ? 0 : 1, language);
}

/** A ratio both ways people write it: "4.1 mm/m (1 in 244)". */
export function formatRatio(ratio: number, language: Language): string {
  if (!Number.isFinite(ratio)) return MISSING;
  return `${formatQuantity(ratio * 1000, "mm/m", language)} (${formatRatioOneIn(ratio, language)})`;
}
