import type { Language } from "#core";
import { formatAgainstLimit, formatMeasured, formatProbability, formatUncertainty } from "#text";
import { useLanguage } from "../preferences/use-preferences.ts";
import { componentWords } from "../words/components/words.ts";
import { useWords } from "../words/use-words.ts";
import styles from "./measured.module.css";

export interface MeasuredProps {
  /** in the criterion's unit; NaN: nothing was measured */
  readonly value: number;
  readonly limit?: number;
  /** of the criterion: "m" is shown in mm, "m/m" in mm/m */
  readonly unit: string;
  /** standard uncertainty; shown doubled, as an interval of some 95 % */
  readonly standardUncertainty?: number | undefined;
  readonly probabilityWithin?: number | undefined;
}

/** Coverage factor of the interval shown beside a value: about 95 % (JCGM 100:2008, 6.2). */
const SHOWN_COVERAGE = 2;

/** "41 mm ± 6 mm, allowed 75 mm": never a number without its unit. For cells of tables and for sentences. */
export function measuredText(
  { value, limit, unit, standardUncertainty }: MeasuredProps,
  language: Language,
): { readonly value: string; readonly limit: string | undefined } {
  const shown =
    limit === undefined
      ? { value: formatMeasured(value, unit, language), limit: undefined }
      : formatAgainstLimit(value, limit, unit, language);
  const isKnown = standardUncertainty !== undefined && Number.isFinite(value);
  const interval = isKnown
    ? ` ± ${formatUncertainty(SHOWN_COVERAGE * standardUncertainty, unit, language)}`
    : "";
  return { value: shown.value + interval, limit: shown.limit };
}

/** A measured value with its interval, what it is held against, and how sure that is. */
export function Measured(props: MeasuredProps) {
  const language = useLanguage();
  const word = useWords(componentWords);
  const shown = measuredText(props, language);
  return (
    <span className={styles["measured"]}>
      <span className={styles["value"]}>{shown.value}</span>
      {shown.limit === undefined ? null : <span>{word("allowed", { limit: shown.limit })}</span>}
      {props.probabilityWithin === undefined ? null : (
        <span className={styles["soft"]}>
          {word("probability", { probability: formatProbability(props.probabilityWithin, language) })}
        </span>
      )}
    </span>
  );
}
