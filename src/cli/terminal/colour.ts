import type { Severity, Verdict } from "#core";
import type { Terminal } from "./terminal.ts";

/** Codes of the 256-colour palette nearest to the program's colours; the word and the sign always stand beside it. */
const VERDICT_COLOUR: Readonly<Record<Verdict, string>> = {
  within: "38;5;32",
  "too-close-to-call": "38;5;184",
  outside: "38;5;166",
  "not-judged": "2",
};
const SEVERITY_COLOUR: Readonly<Record<Severity, string>> = {
  error: "38;5;166",
  warning: "38;5;184",
  note: "2",
};

const paint = (terminal: Terminal, code: string, text: string): string =>
  terminal.colour ? `\u001b[${code}m${text}\u001b[0m` : text;

export const paintVerdict = (terminal: Terminal, verdict: Verdict, text: string): string =>
  paint(terminal, VERDICT_COLOUR[verdict], text);
export const paintSeverity = (terminal: Terminal, severity: Severity, text: string): string =>
  paint(terminal, SEVERITY_COLOUR[severity], text);
export const paintHeading = (terminal: Terminal, text: string): string => paint(terminal, "1", text);
