import { IntlMessageFormat } from "intl-messageformat";
import type { Language } from "#core";
import type { Catalogue } from "./catalogue.ts";

/** What stands in the places of a message. Numbers with a unit come as text, made by the functions of `#text`. */
export type Places = Readonly<Record<string, string | number>>;

/** The text of a key, with its places filled. */
export type Words<Key extends string> = (key: Key, places?: Places) => string;

const prepared = new Map<string, IntlMessageFormat>();

function fill(message: string, language: Language, places: Places): string {
  const key = `${language} ${message}`;
  const known = prepared.get(key) ?? new IntlMessageFormat(message, language, undefined, { ignoreTag: true });
  prepared.set(key, known);
  return String(known.format(places));
}

/** The texts of an area in one language, for code that is no component: the worker too. */
export function wordsIn<Key extends string>(area: Catalogue<Key>, language: Language): Words<Key> {
  return (key, places) =>
    places === undefined ? area[language][key] : fill(area[language][key], language, places);
}
