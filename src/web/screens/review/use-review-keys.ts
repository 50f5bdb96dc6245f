import { useEffect, useRef } from "react";
import { usePreferences } from "../../preferences/use-preferences.ts";

/** What the keys of the review do on a screen. Escape, arrows and Enter are not among them: they belong to what is focused. */
export interface ReviewKeys {
  readonly previous?: (() => void) | undefined;
  readonly next?: (() => void) | undefined;
  readonly find?: () => void;
  readonly help?: () => void;
  readonly accept?: (() => void) | undefined;
}

const KEYS: Readonly<Record<string, keyof ReviewKeys>> = {
  "[": "previous",
  "]": "next",
  "/": "find",
  "?": "help",
  a: "accept",
};

/**
 * Single keys on a screen of the review. They are off while something is typed or a dialog is open, and where somebody has switched
 * them off (WCAG 2.2, 2.1.4).
 */
export function useReviewKeys(keys: ReviewKeys): void {
  const { singleKeys } = usePreferences();
  const latest = useRef(keys);
  latest.current = keys;
  useEffect(() => {
    if (!singleKeys) return;
    const onKey = (event: KeyboardEvent) => {
      const name = KEYS[event.key];
      // brackets are typed with Alt, or with Ctrl and Alt, on many keyboards
      const isCommand =
        event.metaKey || (event.ctrlKey && !event.altKey) || (event.altKey && name === "accept");
      if (name === undefined || isCommand || isTyping(event)) return;
      const act = latest.current[name];
      if (act === undefined) return;
      event.preventDefault();
      act();
    };
    addEventListener("keydown", onKey);
    return () => removeEventListener("keydown", onKey);
  }, [singleKeys]);
}

function isTyping({ target }: KeyboardEvent): boolean {
  if (document.querySelector("[role=dialog], [role=listbox]") !== null) return true;
  return target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
}
