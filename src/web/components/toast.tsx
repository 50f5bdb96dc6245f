import { useEffect, useSyncExternalStore } from "react";
import { componentWords } from "../words/components/words.ts";
import { useWords } from "../words/use-words.ts";
import { Button } from "./button.tsx";
import styles from "./toast.module.css";

/** Something that has happened, with a way to undo it where there is one. */
export interface ToastText {
  readonly text: string;
  readonly undo?: () => void;
}

const SHOWN_MS = 10_000;
const listeners = new Set<() => void>();
const held: { now: ToastText | undefined } = { now: undefined };

/** Tells what has happened, at the edge of the screen, until it is read or the next thing happens. */
export function tell(toast: ToastText | undefined): void {
  held.now = toast;
  for (const listener of listeners) listener();
}

const subscribe = (listener: () => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

/** Where `tell` shows its texts. Stands once in the frame. */
export function ToastPlace() {
  const toast = useSyncExternalStore(subscribe, () => held.now);
  const word = useWords(componentWords);
  useEffect(() => {
    // with an undo it stays until it is put away: nobody has to be quick
    if (toast === undefined || toast.undo !== undefined) return;
    const timer = setTimeout(() => tell(undefined), SHOWN_MS);
    return () => clearTimeout(timer);
  }, [toast]);
  return (
    <div className={styles["place"]} role="status">
      {toast === undefined ? null : (
        <div className={styles["toast"]}>
          <span>{toast.text}</span>
          {toast.undo === undefined ? null : (
            <Button
              weight="quiet"
              onPress={() => {
                toast.undo?.();
                tell(undefined);
              }}
            >
              {word("undo")}
            </Button>
          )}
          <Button weight="quiet" onPress={() => tell(undefined)}>
            {word("close")}
          </Button>
        </div>
      )}
    </div>
  );
}
