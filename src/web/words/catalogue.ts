import type { Language } from "#core";

/** The texts of one area in one language, by key. ICU messages: "{count, plural, one {# run} other {# runs}}". */
export type Texts = Readonly<Record<string, string>>;

/** One area in every language. */
export type Catalogue<Key extends string> = Readonly<Record<Language, Readonly<Record<Key, string>>>>;

/** Joins the languages of an area; the compiler sees to it that all have the same keys. */
export const catalogue = <const T extends Texts>(
  en: T,
  de: Readonly<Record<keyof T & string, string>>,
): Catalogue<keyof T & string> => ({ en: en as Readonly<Record<keyof T & string, string>>, de });
