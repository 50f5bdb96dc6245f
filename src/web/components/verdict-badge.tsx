import type { Verdict } from "#core";
import { verdictSymbol } from "#figures";
import { verdictWords } from "#text";
import { useLanguage } from "../preferences/use-preferences.ts";
import styles from "./verdict-badge.module.css";

const symbols = new Map<Verdict, string>();

/** Drawn by the code that draws the figures: one shape wherever it stands. */
function symbolOf(verdict: Verdict): string {
  const known = symbols.get(verdict) ?? verdictSymbol(verdict, 12, 12, 9);
  symbols.set(verdict, known);
  return known;
}

/** The shape of a verdict alone, where the word stands beside it anyway. */
export function VerdictShape({
  verdict,
  large = false,
}: {
  readonly verdict: Verdict;
  readonly large?: boolean;
}) {
  return (
    <svg
      className={styles["shape"]}
      data-large={large || undefined}
      viewBox="0 0 24 24"
      aria-hidden="true"
      focusable="false"
      // biome-ignore lint/security/noDangerouslySetInnerHtml: numbers only, drawn by our own code
      dangerouslySetInnerHTML={{ __html: symbolOf(verdict) }}
    />
  );
}

/** A verdict: shape, then word. */
export function VerdictBadge({
  verdict,
  large = false,
}: {
  readonly verdict: Verdict;
  readonly large?: boolean;
}) {
  const language = useLanguage();
  return (
    <span className={styles["badge"]} data-large={large || undefined} data-verdict={verdict}>
      <VerdictShape verdict={verdict} large={large} />
      {verdictWords[language][verdict]}
    </span>
  );
}
