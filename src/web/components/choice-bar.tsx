import { Label, Radio, RadioGroup } from "react-aria-components";
import styles from "./choice-bar.module.css";

export interface ChoiceBarProps<Id extends string> {
  readonly label: string;
  readonly value: Id;
  readonly choices: readonly { readonly id: Id; readonly text: string }[];
  readonly onChange: (id: Id) => void;
  /** the label is only for those who do not see the choices around it */
  readonly isLabelHidden?: boolean;
}

/** One out of a few, all of them seen. The chosen one has a thick bar and bold letters, not only a shade. */
export function ChoiceBar<Id extends string>({
  label,
  value,
  choices,
  onChange,
  isLabelHidden = false,
}: ChoiceBarProps<Id>) {
  return (
    <RadioGroup
      className={styles["group"]!}
      value={value}
      orientation="horizontal"
      onChange={(picked) => {
        const chosen = choices.find(({ id }) => id === picked);
        if (chosen !== undefined) onChange(chosen.id);
      }}
      {...(isLabelHidden ? { "aria-label": label } : {})}
    >
      {isLabelHidden ? null : <Label className={styles["label"]!}>{label}</Label>}
      <div className={styles["bar"]}>
        {choices.map(({ id, text }) => (
          <Radio key={id} value={id} className={styles["choice"]!}>
            {text}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
