import { TextField as AriaTextField, FieldError, Input, Label, Text } from "react-aria-components";
import { formatNumber } from "#text";
import { useLanguage } from "../preferences/use-preferences.ts";
import { componentWords } from "../words/components/words.ts";
import { useWords } from "../words/use-words.ts";
import styles from "./field.module.css";
import { readTypedNumber, type TypedNumber } from "./typed-number.ts";

export interface NumberFieldProps {
  readonly label: string;
  /** shown in the label, behind the box and in the echo: "m", "mm", "°" */
  readonly unit: string;
  /** as it was typed; kept whatever is wrong with it */
  readonly text: string;
  readonly onChange: (text: string, read: TypedNumber) => void;
  readonly hint?: string;
  /** impossible outside of these */
  readonly min?: number;
  readonly max?: number;
  /** said behind the understood value: "down", "positive up" */
  readonly sense?: string;
  /** asked by the form when it is sent: an empty field is a mistake then */
  readonly isAsked?: boolean;
  readonly autoFocus?: boolean;
}

/** A number with its unit. Comma and point are both decimal marks; what was understood is said below. */
export function NumberField({ label, unit, text, onChange, hint, sense, ...rest }: NumberFieldProps) {
  const language = useLanguage();
  const word = useWords(componentWords);
  const read = readTypedNumber(text, unit);
  const trouble = troubleWith(read, { unit, ...rest }, word, (value) =>
    formatNumber(value, decimalsOf(value), language),
  );
  const spaced = /^[°%]/.test(unit) && unit.startsWith("°") ? unit : ` ${unit}`;
  return (
    <AriaTextField
      className={styles["field"]!}
      value={text}
      onChange={(typed) => onChange(typed, readTypedNumber(typed, unit))}
      isInvalid={trouble !== undefined}
      validationBehavior="aria"
      autoFocus={rest.autoFocus ?? false}
      inputMode="decimal"
      autoComplete="off"
    >
      <Label className={styles["label"]!}>
        {label} <span className={styles["unit"]}>({unit})</span>
      </Label>
      {hint === undefined ? null : (
        <Text slot="description" className={styles["hint"]!}>
          {hint}
        </Text>
      )}
      <div className={styles["box"]}>
        <Input className={`${styles["input"]} ${styles["number"]}`} />
        <span className={styles["suffix"]} aria-hidden="true">
          {unit}
        </span>
      </div>
      <FieldError className={styles["trouble"]!}>{trouble}</FieldError>
      {trouble === undefined ? (
        <output className={styles["echo"]}>
          {read.kind === "number"
            ? `= ${formatNumber(read.value, read.decimals, language)}${spaced}${sense === undefined ? "" : ` ${sense}`}`
            : ""}
        </output>
      ) : null}
    </AriaTextField>
  );
}

const decimalsOf = (value: number): number => (Number.isInteger(value) ? 0 : 3);

type Bounds = Pick<NumberFieldProps, "unit" | "min" | "max" | "isAsked">;

function troubleWith(
  read: TypedNumber,
  { unit, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY, isAsked }: Bounds,
  word: ReturnType<typeof useWords<keyof (typeof componentWords)["en"]>>,
  show: (value: number) => string,
): string | undefined {
  switch (read.kind) {
    case "empty":
      return isAsked ? word("numberMissing") : undefined;
    case "two-marks":
      return word("numberTwoMarks");
    case "no-number":
      return word("numberUnreadable");
    case "other-unit":
      return word("numberOtherUnit", { found: read.found, unit });
    case "number":
      if (read.value >= min && read.value <= max) return undefined;
      if (Number.isFinite(min) && Number.isFinite(max))
        return word("numberBetween", { min: show(min), max: show(max), unit });
      return Number.isFinite(min)
        ? word("numberAtLeast", { min: show(min), unit })
        : word("numberAtMost", { max: show(max), unit });
  }
}
