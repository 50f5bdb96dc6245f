import { criterion, type VerdictResult } from "#core";
import { formatLevel, formatProbability, sentenceOf, verdictWords } from "#text";
import { measuredText } from "../../components/measured.tsx";
import { type Column, Table } from "../../components/table.tsx";
import { VerdictBadge } from "../../components/verdict-badge.tsx";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { elementWords } from "../../words/element/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./verdict-table.module.css";

/** Every rule that applies, what was found, what is allowed, how sure that is, and where the limit comes from. */
export function VerdictTable({ verdicts }: { readonly verdicts: readonly VerdictResult[] }) {
  const word = useWords(elementWords);
  const language = useLanguage();
  const titleOf = ({ kind }: VerdictResult) => criterion(kind)?.text[language].title ?? kind;
  const sourceOf = ({ source }: VerdictResult) =>
    source === undefined
      ? "–"
      : [source.document, source.edition, source.clause].filter((part) => part !== undefined).join(", ");
  const columns: readonly Column<VerdictResult>[] = [
    { id: "rule", title: word("rule"), text: titleOf },
    {
      id: "verdict",
      title: word("verdict"),
      text: ({ verdict }) => verdictWords[language][verdict],
      draw: ({ verdict }) => <VerdictBadge verdict={verdict} />,
    },
    { id: "found", title: word("found"), kind: "number", text: (row) => measuredText(row, language).value },
    {
      id: "allowed",
      title: word("allowed"),
      kind: "number",
      text: (row) => measuredText(row, language).limit ?? "–",
    },
    {
      id: "probability",
      title: word("probability"),
      kind: "number",
      text: ({ probabilityWithin }) => formatProbability(probabilityWithin ?? Number.NaN, language),
    },
    {
      id: "level",
      title: word("level"),
      kind: "number",
      text: ({ atDownM }) => formatLevel(-atDownM, language),
    },
    { id: "source", title: word("source"), text: sourceOf },
  ];
  const reasons = verdicts.flatMap((verdict) =>
    verdict.reasons.map((reason) => ({
      key: `${verdict.criterionId} ${reason.code}`,
      text: `${titleOf(verdict)}: ${sentenceOf(reason, language)}`,
    })),
  );
  return (
    <>
      <Table
        label={word("verdicts")}
        columns={columns}
        rows={verdicts}
        idOf={({ criterionId }) => criterionId}
      />
      {reasons.length === 0 ? null : (
        <ul className={styles["reasons"]}>
          {reasons.map(({ key, text }) => (
            <li key={key}>{text}</li>
          ))}
        </ul>
      )}
    </>
  );
}
