import type { Issue, Place } from "#core";
import { sentenceOf, severityWords } from "#text";
import { useLanguage } from "../preferences/use-preferences.ts";
import { componentWords } from "../words/components/words.ts";
import { useWords } from "../words/use-words.ts";
import styles from "./finding-list.module.css";

const ORDER = { error: 0, warning: 1, note: 2 } as const;
const SIGN = { error: "✕", warning: "!", note: "i" } as const;

/** What was found, as sentences, the worst first, each with the place where it was found. */
export function FindingList({ findings }: { readonly findings: readonly Issue[] }) {
  const language = useLanguage();
  const word = useWords(componentWords);
  if (findings.length === 0) return <p className={styles["none"]}>{word("findingsNone")}</p>;
  const sorted = findings.toSorted((a, b) => ORDER[a.severity] - ORDER[b.severity]);
  return (
    <ul className={styles["list"]}>
      {sorted.map((finding, i) => (
        // findings have no id, and the list is never changed in place
        // biome-ignore lint/suspicious/noArrayIndexKey: see above
        <li key={i} className={styles["finding"]} data-severity={finding.severity}>
          <span className={styles["severity"]}>
            <span aria-hidden="true" className={styles["sign"]}>
              {SIGN[finding.severity]}
            </span>
            {severityWords[language][finding.severity]}
          </span>
          <span className={styles["sentence"]}>
            {sentenceOf(finding, language)}
            <PlaceOf place={finding.place} />
          </span>
        </li>
      ))}
    </ul>
  );
}

function PlaceOf({ place: { file, line, field } }: { readonly place: Place }) {
  const word = useWords(componentWords);
  const parts = [
    file,
    line === undefined ? undefined : word("findingLine", { line: String(line) }),
    field,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? null : <small className={styles["place"]}>{parts.join(" · ")}</small>;
}
