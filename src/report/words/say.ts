import type { Language } from "#core";
import { fillIn } from "#text";

/** A word or sentence of a report in every language there is. */
export type Words = Readonly<Record<Language, string>>;

/** The words in the language of the report, with their values put in. */
export const say = (
  words: Words,
  language: Language,
  values: Readonly<Record<string, string | number>> = {},
): string => fillIn(words[language], values);
