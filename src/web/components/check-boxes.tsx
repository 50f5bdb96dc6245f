import { Checkbox, CheckboxGroup, Label } from "react-aria-components";
import styles from "./check-boxes.module.css";

export interface CheckBoxesProps {
  readonly label: string;
  readonly chosen: readonly string[];
  readonly choices: readonly { readonly id: string; readonly text: string }[];
  readonly onChange: (ids: readonly string[]) => void;
}

/** Any number out of a few, each with a box that is ticked. */
export function CheckBoxes({ label, chosen, choices, onChange }: CheckBoxesProps) {
  return (
    <CheckboxGroup className={styles["group"]!} value={[...chosen]} onChange={onChange}>
      <Label className={styles["label"]!}>{label}</Label>
      <div className={styles["boxes"]}>
        {choices.map(({ id, text }) => (
          <Checkbox key={id} value={id} className={styles["choice"]!}>
            <span className={styles["box"]} aria-hidden="true" />
            {text}
          </Checkbox>
        ))}
      </div>
    </CheckboxGroup>
  );
}
