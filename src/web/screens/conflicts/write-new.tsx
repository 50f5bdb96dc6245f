import { type FormEvent, useState } from "react";
import type { JsonValue } from "#records";
import { Button } from "../../components/button.tsx";
import { NumberField } from "../../components/number-field.tsx";
import { TextField } from "../../components/text-field.tsx";
import { readTypedNumber } from "../../components/typed-number.ts";
import { conflictsWords } from "../../words/conflicts/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ConflictCard } from "../../worker/desk-record.ts";
import styles from "./conflicts-screen.module.css";

export interface WriteNewProps {
  readonly edit: NonNullable<ConflictCard["edit"]>;
  readonly label: string;
  readonly onWrite: (value: JsonValue, text: string) => void;
  readonly onCancel: () => void;
}

/** A value in place of those in conflict. */
export function WriteNew({ edit, label, onWrite, onCancel }: WriteNewProps) {
  const word = useWords(conflictsWords);
  const [text, setText] = useState("");
  const [isMissing, setMissing] = useState(false);
  const send = (event: FormEvent) => {
    event.preventDefault();
    const typed = text.trim();
    if (edit.kind === "text" && typed !== "") return onWrite(typed, typed);
    const read = readTypedNumber(typed, edit.kind === "number" ? edit.unit : "");
    if (edit.kind === "number" && read.kind === "number")
      return onWrite(read.value, `${typed} ${edit.unit}`.trim());
    setMissing(true);
  };
  return (
    <form className={styles["form"]} onSubmit={send}>
      {edit.kind === "number" ? (
        <NumberField
          label={label}
          unit={edit.unit}
          text={text}
          onChange={setText}
          isAsked={isMissing}
          autoFocus
        />
      ) : (
        <TextField
          label={label}
          value={text}
          onChange={setText}
          autoComplete="off"
          autoFocus
          trouble={isMissing ? word("newMissing") : undefined}
        />
      )}
      <div className={styles["keep"]}>
        <Button weight="main" type="submit">
          {word("newSend")}
        </Button>
        <Button onPress={onCancel}>{word("newCancel")}</Button>
      </div>
    </form>
  );
}
