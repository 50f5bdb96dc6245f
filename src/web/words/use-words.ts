import { useMemo } from "react";
import { useLanguage } from "../preferences/use-preferences.ts";
import type { Catalogue } from "./catalogue.ts";
import { type Words, wordsIn } from "./words-in.ts";

export { type Places, type Words, wordsIn } from "./words-in.ts";

/** The texts of an area in the language of the app. */
export function useWords<Key extends string>(area: Catalogue<Key>): Words<Key> {
  const language = useLanguage();
  return useMemo(() => wordsIn(area, language), [area, language]);
}
