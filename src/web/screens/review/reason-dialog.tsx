import { type FormEvent, type ReactNode, useEffect, useState } from "react";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { TextField } from "../../components/text-field.tsx";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import styles from "./review.module.css";

export interface ReasonDialogProps {
  readonly title: string;
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** what the button says: what will be done */
  readonly action: string;
  readonly onGive: (reason: string) => void;
  /** taken when nothing is typed; without it a reason has to be given */
  readonly usual?: string;
  /** reasons that are often given, to be taken with one press */
  readonly often?: readonly string[];
  readonly children?: ReactNode;
}

/** Asks why. Enter in the field does it; what was typed stays until it is done. */
export function ReasonDialog(props: ReasonDialogProps) {
  const { title, isOpen, onClose, action, onGive, usual, often = [], children } = props;
  const word = useWords(reviewWords);
  const [reason, setReason] = useState("");
  const [isMissing, setMissing] = useState(false);
  useEffect(() => {
    if (isOpen) setMissing(false);
  }, [isOpen]);
  const give = (text: string) => {
    const said = text.trim() === "" ? usual : text.trim();
    if (said === undefined) return setMissing(true);
    setReason("");
    onGive(said);
  };
  return (
    <Dialog title={title} isOpen={isOpen} onClose={onClose}>
      {children}
      {often.length === 0 ? null : (
        <ul className={styles["often"]}>
          {often.map((text) => (
            <li key={text}>
              <Button weight="quiet" onPress={() => give(text)}>
                {text}
              </Button>
            </li>
          ))}
        </ul>
      )}
      <form
        className={styles["form"]}
        onSubmit={(event: FormEvent) => {
          event.preventDefault();
          give(reason);
        }}
      >
        <TextField
          label={word(usual === undefined ? "reason" : "remark")}
          value={reason}
          onChange={setReason}
          autoFocus
          autoComplete="off"
          {...(usual === undefined ? {} : { hint: usual })}
          trouble={isMissing ? word("reasonMissing") : undefined}
        />
        <div>
          <Button weight="main" type="submit">
            {action}
          </Button>
        </div>
      </form>
    </Dialog>
  );
}
