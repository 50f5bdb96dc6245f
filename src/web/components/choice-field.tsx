import {
  Select as AriaSelect,
  Button,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  SelectValue,
  Text,
} from "react-aria-components";
import styles from "./field.module.css";

export interface ChoiceFieldProps<Id extends string> {
  readonly label: string;
  readonly value: Id;
  readonly choices: readonly { readonly id: Id; readonly text: string }[];
  readonly onChange: (id: Id) => void;
  readonly hint?: string;
}

/** One out of a list. For up to five choices take `ChoiceBar`: everything is seen at once there. */
export function ChoiceField<Id extends string>({
  label,
  value,
  choices,
  onChange,
  hint,
}: ChoiceFieldProps<Id>) {
  return (
    <AriaSelect
      className={styles["field"]!}
      value={value}
      onChange={(key) => {
        const chosen = choices.find(({ id }) => id === key);
        if (chosen !== undefined) onChange(chosen.id);
      }}
    >
      <Label className={styles["label"]!}>{label}</Label>
      {hint === undefined ? null : (
        <Text slot="description" className={styles["hint"]!}>
          {hint}
        </Text>
      )}
      <Button className={styles["choice"]!}>
        <SelectValue />
        <span aria-hidden="true">▾</span>
      </Button>
      <Popover className={styles["list"]!}>
        <ListBox>
          {choices.map(({ id, text }) => (
            <ListBoxItem key={id} id={id} textValue={text} className={styles["item"]!}>
              {text}
            </ListBoxItem>
          ))}
        </ListBox>
      </Popover>
    </AriaSelect>
  );
}
