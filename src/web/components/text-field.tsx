import { TextField as AriaTextField, FieldError, Input, Label, Text, TextArea } from "react-aria-components";
import styles from "./field.module.css";

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
  /** what is wrong and what to do; undefined: nothing */
  readonly trouble?: string | undefined;
  readonly type?: "text" | "password" | "email" | "search";
  /** more than one line */
  readonly rows?: number;
  /** lines of a table: the whole width, and no line is broken */
  readonly isTable?: boolean;
  readonly autoFocus?: boolean;
  readonly autoComplete?: string;
  readonly name?: string;
}

/** A field for words. What was typed is kept whatever is wrong with it. */
export function TextField({ label, hint, trouble, rows, isTable = false, ...field }: TextFieldProps) {
  return (
    <AriaTextField
      {...field}
      className={styles["field"]!}
      isInvalid={trouble !== undefined}
      validationBehavior="aria"
      data-table={isTable || undefined}
    >
      <Label className={styles["label"]!}>{label}</Label>
      {hint === undefined ? null : (
        <Text slot="description" className={styles["hint"]!}>
          {hint}
        </Text>
      )}
      <div className={styles["box"]}>
        {rows === undefined ? (
          <Input className={styles["input"]!} />
        ) : (
          <TextArea rows={rows} className={styles["input"]!} />
        )}
      </div>
      <FieldError className={styles["trouble"]!}>{trouble}</FieldError>
    </AriaTextField>
  );
}
