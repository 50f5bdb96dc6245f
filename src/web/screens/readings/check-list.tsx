import type { Language } from "#core";
import { formatDepth, formatOffset, formatQuantity } from "#text";
import { useLanguage } from "../../preferences/use-preferences.ts";
import { readingsWords } from "../../words/readings/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { RunCheck } from "../../worker/desk-review.ts";
import type { ReadingsWord } from "./columns.ts";
import styles from "./readings-screen.module.css";

const NAMES = {
  complete: "checkComplete",
  closure: "checkClosure",
  "two-face": "checkTwoFace",
  passes: "checkPasses",
  "depth-return": "checkDepthReturn",
  "tilt-zero": "checkTiltZero",
  gaps: "checkGaps",
} as const;

const OUTCOMES = {
  good: { sign: "✓", word: "good" },
  look: { sign: "!", word: "look" },
  "not-done": { sign: "–", word: "notDone" },
} as const;

/** What was checked of the run, each with its outcome in a word and what was found. */
export function CheckList({ checks }: { readonly checks: readonly RunCheck[] }) {
  const word = useWords(readingsWords);
  const language = useLanguage();
  return (
    <ul className={styles["checks"]}>
      {checks.map((check) => (
        <li key={check.what} data-outcome={check.outcome}>
          <span className={styles["outcome"]}>
            <span aria-hidden="true" className={styles["sign"]}>
              {OUTCOMES[check.outcome].sign}
            </span>
            {word(OUTCOMES[check.outcome].word)}
          </span>
          <span>
            {word(NAMES[check.what])}
            {check.outcome === "not-done" ? null : (
              <span className={styles["found"]}>{foundText(check, word, language)}</span>
            )}
          </span>
        </li>
      ))}
    </ul>
  );
}

function foundText(
  { what, outcome, found, allowed, unit, atM }: RunCheck,
  word: ReadingsWord,
  language: Language,
): string {
  const text = (value: number) =>
    unit === "m"
      ? formatOffset(value, language)
      : formatQuantity(value, unit === "deg" ? "deg" : "1", language);
  const at = atM === undefined ? "" : formatDepth(atM, language);
  switch (what) {
    case "complete":
      return word("foundComplete", { count: found });
    case "closure":
      return word("foundClosure", { found: text(found), allowed: text(allowed ?? Number.NaN) });
    case "two-face":
      return word("foundTwoFace", { found: text(found), at });
    case "passes":
      return outcome === "look" ? word("foundPassesAt", { at }) : word("foundPasses", { count: found });
    case "gaps":
      return outcome === "look" ? word("foundGapsAt", { count: found, at }) : word("foundGaps");
    default:
      return word("foundDepthReturn", { found: text(found) });
  }
}
