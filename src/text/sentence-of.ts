import type { Issue, Language } from "#core";
import { fillIn } from "./figure-words.ts";
import { englishSentences } from "./findings/english-sentences.ts";
import { germanPhrase } from "./findings/german/phrases.ts";
import { germanSentences } from "./findings/german-sentences.ts";
import type { Sentences } from "./findings/sentences.ts";

const catalogues: Readonly<Record<Language, Sentences>> = { en: englishSentences, de: germanSentences };

/** Codes that have a sentence; a test holds them against the codes that the program uses. */
export const sentenceCodes: readonly string[] = Object.keys(englishSentences);

/** The sentence for a finding or for the reason of a verdict. A code without a sentence shows itself and its values. */
export function sentenceOf(finding: Pick<Issue, "code" | "values">, language: Language = "en"): string {
  const template = catalogues[language][finding.code] ?? englishSentences[finding.code];
  const written = Object.entries(finding.values).map(
    ([name, value]) => [name, readable(value, language)] as const,
  );
  if (template === undefined)
    return [finding.code, ...written.map(([name, value]) => `${name} ${value}`)].join(", ");
  return fillIn(template, Object.fromEntries(written));
}

/** A number of a finding as people read it: four decimals, or four digits where it is smaller than that shows; whole numbers stay whole. */
function readable(value: string | number, language: Language): string | number {
  if (typeof value === "string") return language === "de" ? germanPhrase(value) : value;
  if (!Number.isFinite(value)) return value;
  const rounded = Math.abs(value) < 0.1 ? Number(value.toPrecision(4)) : Math.round(value * 1e4) / 1e4;
  return language === "de" ? String(rounded).replace(".", ",") : rounded;
}
