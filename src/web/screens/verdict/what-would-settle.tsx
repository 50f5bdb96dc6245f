import { formatAgainstLimit } from "#text";
import { Sheet } from "../../components/page.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { useWords } from "../../words/use-words.ts";
import { verdictWords } from "../../words/verdict/words.ts";
import type { VerdictView } from "../../worker/desk-review.ts";
import shared from "../review/review.module.css";

/** What it would take to call what is too close: how much surer one would have to be, and which source of error stands in the way. */
export function WhatWouldSettle({ view: { rules, halving } }: { readonly view: VerdictView }) {
  const word = useWords(verdictWords);
  const language = useLanguage();
  const close = rules.filter(({ settlesAt }) => settlesAt !== undefined);
  if (close.length === 0) return null;
  return (
    <Sheet title={word("close")}>
      {close.map(({ judgement, title, settlesAt }) => {
        const { criterionId, value, limit, unit, standardUncertainty } = judgement;
        const shown = formatAgainstLimit(value, limit, unit, language);
        // as many digits as it takes to tell what is needed from what there is
        const surer = formatAgainstLimit(
          standardUncertainty ?? Number.NaN,
          settlesAt ?? Number.NaN,
          unit,
          language,
        );
        return (
          <p key={criterionId}>
            {word("closeValue", {
              rule: title,
              found: shown.value,
              allowed: shown.limit,
              needed: surer.limit,
              now: surer.value,
            })}
          </p>
        );
      })}
      {halving.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p className={shared["soft"]}>{word("closeHow")}</p>
    </Sheet>
  );
}
