import type { Reason } from "#formats";
import { sentenceOf } from "#text";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { bringInWords } from "../../words/bring-in/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./bring-in.module.css";

const SIGN = { certain: "✓", likely: "~", open: "?" } as const;

/** How sure a setting is, in word and sign, and why. */
export function Sure({ reason }: { readonly reason: Reason | undefined }) {
  const word = useWords(bringInWords);
  const language = useLanguage();
  if (reason === undefined) return null;
  return (
    <span className={styles["sure"]} data-sure={reason.sure}>
      <span aria-hidden="true" className={styles["sign"]}>
        {SIGN[reason.sure]}
      </span>
      <strong>{word(reason.sure)}</strong> {sentenceOf(reason.why, language)}
    </span>
  );
}

/** One setting out of a list, with how sure it is and why. */
export function Setting({
  label,
  value,
  choices,
  reason,
  onChange,
}: {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly { readonly id: string; readonly text: string }[];
  readonly reason: Reason | undefined;
  readonly onChange: (id: string) => void;
}) {
  return (
    <div className={styles["setting"]}>
      <label className={styles["settingLabel"]}>
        <span>{label}</span>
        <select className={styles["select"]} value={value} onChange={(event) => onChange(event.target.value)}>
          {choices.map(({ id, text }) => (
            <option key={id} value={id}>
              {text}
            </option>
          ))}
        </select>
      </label>
      <Sure reason={reason} />
    </div>
  );
}
