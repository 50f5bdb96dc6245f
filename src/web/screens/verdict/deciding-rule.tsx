import type { CriterionSource } from "#core";
import { formatLevel, formatMeasured, formatProbability, formatTwoDigits, shownAs } from "#text";
import { measuredText } from "../../components/measured.tsx";
import { Sheet } from "../../components/page.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { useWords, type Words } from "../../words/use-words.ts";
import { verdictWords } from "../../words/verdict/words.ts";
import type { VerdictView } from "../../worker/desk-review.ts";
import styles from "./verdict-screen.module.css";

/** The rule that speaks for the element, quoted, with value, limit, uncertainty and probability. */
export function DecidingRule({ view: { row, rules } }: { readonly view: VerdictView }) {
  const word = useWords(verdictWords);
  const language = useLanguage();
  const rule = rules.find(({ judgement }) => judgement.criterionId === row.deciding?.criterionId) ?? rules[0];
  if (rule === undefined) return null;
  const { judgement, title, sentence, source, margin } = rule;
  const { unit, standardUncertainty, probabilityWithin, atDownM } = judgement;
  const { value, limit } = measuredText({ value: judgement.value, limit: judgement.limit, unit }, language);
  const shown = shownAs(unit);
  const facts = [
    { name: word("found"), text: value },
    { name: word("allowed"), text: limit ?? "–" },
    {
      name: word(margin < 0 ? "over" : "margin"),
      text: formatMeasured(Math.abs(margin), unit, language),
    },
    {
      name: word("uncertainty"),
      text:
        standardUncertainty === undefined
          ? "–"
          : formatTwoDigits(shown.factor * standardUncertainty, shown.unit, language),
    },
    { name: word("probability"), text: formatProbability(probabilityWithin ?? Number.NaN, language) },
    { name: word("atLevel"), text: formatLevel(-atDownM, language) },
  ];
  return (
    <Sheet title={word("deciding")}>
      <blockquote className={styles["rule"]}>
        <p>
          <strong>{title}.</strong> {sentence}
        </p>
        <footer>
          {word("source")}: {sourceText(source, word)}
        </footer>
      </blockquote>
      <dl className={styles["facts"]}>
        {facts.map(({ name, text }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
    </Sheet>
  );
}

function sourceText(
  source: CriterionSource | undefined,
  word: Words<keyof (typeof verdictWords)["en"]>,
): string {
  if (source === undefined) return word("noSource");
  const { document, edition, clause, status } = source;
  const named = [document, edition, clause].filter((part) => part !== undefined).join(", ");
  return status === undefined ? named : `${named} (${word(`status_${status}`)})`;
}
