import type { Language } from "#core";

/** What stands where nothing was measured: never 0. */
export const MISSING = "–";

const MINUS = "−";
const formats = new Map<string, Intl.NumberFormat>();

/** One formatter for each language, number of decimals and use of the plus sign: making one is slow, using one is not. */
function numberFormat(language: Language, decimals: number, signed: boolean): Intl.NumberFormat {
  const key = `${language} ${decimals} ${signed}`;
  const known = formats.get(key);
  if (known !== undefined) return known;
  const made = new Intl.NumberFormat(language, {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
    useGrouping: false,
    // "negative" and "exceptZero" both keep a value that rounds to zero from showing as minus zero
    signDisplay: signed ? "exceptZero" : "negative",
  });
  formats.set(key, made);
  return made;
}

/**
 * A number for people: fixed decimals, decimal mark of the language, a true minus sign, no thousands mark.
 *
 * A value that is not finite is shown as a dash. The machine's own locale plays no part.
 *
 * @param decimals digits after the decimal mark, 0 to 20.
 * @param options signed: write a plus before positive values.
 */
export function formatNumber(
  value: number,
  decimals: number,
  language: Language,
  options: { readonly signed?: boolean } = {},
): string {
  if (!Number.isFinite(value)) return MISSING;
  return numberFormat(language, decimals, options.signed ?? false)
    .format(value)
    .replace("-", MINUS);
}
