import type { Language } from "./criterion.ts";

/** A number as it stands in a sentence: four significant digits, decimal comma in German. */
export function plainNumber(value: number, language: Language): string {
  const text = String(Number(value.toPrecision(4)));
  return language === "de" ? text.replace(".", ",") : text;
}

export const millimetres = (valueM: number, language: Language): string =>
  `${plainNumber(valueM * 1000, language)} mm`;

export const metresWords = (valueM: number, language: Language): string =>
  `${plainNumber(valueM, language)} m`;

export const degreesWords = (valueDeg: number, language: Language): string =>
  `${plainNumber(valueDeg, language)}°`;

/** A ratio as "1 in n"; the trade reads it faster than a decimal fraction. */
export const oneIn = (ratio: number, language: Language): string =>
  `1 ${language === "de" ? "zu" : "in"} ${plainNumber(1 / ratio, language)}`;
