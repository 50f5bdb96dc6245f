import { NumberField } from "../../components/number-field.tsx";
import { TextField } from "../../components/text-field.tsx";
import { elementsWords } from "../../words/elements/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { TypedRow } from "../../worker/desk-set-up.ts";
import type { CellField } from "./element-fields.ts";
import styles from "./elements-screen.module.css";

/** Cells of a line of the schedule as fields, each with its unit. */
export function CellFields({
  fields,
  typed,
  onChange,
}: {
  readonly fields: readonly CellField[];
  readonly typed: TypedRow;
  readonly onChange: (typed: TypedRow) => void;
}) {
  const word = useWords(elementsWords);
  const set = (heading: string) => (text: string) => onChange({ ...typed, [heading]: text });
  return (
    <div className={styles["cells"]}>
      {fields.map(({ heading, word: key, unit }) =>
        unit === undefined ? (
          <TextField
            key={heading}
            label={word(key)}
            value={typed[heading] ?? ""}
            onChange={set(heading)}
            autoComplete="off"
          />
        ) : (
          <NumberField
            key={heading}
            label={word(key)}
            unit={unit}
            text={typed[heading] ?? ""}
            onChange={set(heading)}
          />
        ),
      )}
    </div>
  );
}
