import type { Issue } from "#core";
import { sentenceOf } from "#text";
import { useLanguage } from "../preferences/use-preferences.ts";

/** What went wrong, as a sentence. */
export function TroubleSentence({ trouble }: { readonly trouble: Issue }) {
  return <>{sentenceOf(trouble, useLanguage())}</>;
}
