import { type FormEvent, useState } from "react";
import { Button } from "../../components/button.tsx";
import { Dialog } from "../../components/dialog.tsx";
import { TextField } from "../../components/text-field.tsx";
import { VerdictShape } from "../../components/verdict-badge.tsx";
import { reviewWords } from "../../words/review/words.ts";
import { useWords } from "../../words/use-words.ts";
import type { ElementRow } from "../../worker/desk.ts";
import styles from "./review.module.css";

const MOST = 8;

export interface FindElementProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly elements: readonly ElementRow[];
  readonly onOpen: (element: string) => void;
}

/** Finds an element by its name; Enter opens the first one that fits. */
export function FindElement({ isOpen, onClose, elements, onOpen }: FindElementProps) {
  const word = useWords(reviewWords);
  const [typed, setTyped] = useState("");
  const wanted = typed.trim().toLowerCase();
  const begins = elements.filter(({ id }) => id.toLowerCase().startsWith(wanted));
  const found = begins.length > 0 ? begins : elements.filter(({ id }) => id.toLowerCase().includes(wanted));
  const open = (element: string) => {
    setTyped("");
    onOpen(element);
  };
  const openFirst = (event: FormEvent) => {
    event.preventDefault();
    const [first] = found;
    if (wanted !== "" && first !== undefined) open(first.id);
  };
  return (
    <Dialog title={word("findTitle")} isOpen={isOpen} onClose={onClose}>
      <form onSubmit={openFirst}>
        <TextField
          label={word("findLabel")}
          type="search"
          autoComplete="off"
          autoFocus
          value={typed}
          onChange={setTyped}
        />
      </form>
      <ul className={styles["found"]} aria-live="polite">
        {found.slice(0, MOST).map(({ id, verdict }) => (
          <li key={id}>
            <Button weight="quiet" label={word("findOpen", { element: id })} onPress={() => open(id)}>
              {verdict === undefined ? null : <VerdictShape verdict={verdict} />}
              {id}
            </Button>
          </li>
        ))}
        {found.length === 0 ? <li>{word("findNone")}</li> : null}
        {found.length > MOST ? <li>{word("findMore", { count: found.length - MOST })}</li> : null}
      </ul>
    </Dialog>
  );
}
