import type { Issue, Result } from "#core";
import { sentenceOf } from "#text";
import { tell } from "../../components/toast.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";

type Written = Result<readonly string[], readonly Issue[]>;

/** Waits until something is written down and says so, or says why not. @returns whether it was. */
export function useSaved(): (writing: Promise<Written>, done: string, undo?: () => void) => Promise<boolean> {
  const word = useWords(reviewWords);
  const language = useLanguage();
  return async (writing, done, undo) => {
    const written = await writing;
    if (written.ok) tell({ text: done, ...(undo === undefined ? {} : { undo }) });
    else
      tell({
        text: word("notSaved", { why: written.error.map((issue) => sentenceOf(issue, language)).join(" ") }),
      });
    return written.ok;
  };
}
