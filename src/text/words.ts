import type { Language, Severity, Verdict } from "#core";

/** What a verdict is called. */
export const verdictWords: Readonly<Record<Language, Readonly<Record<Verdict, string>>>> = {
  en: {
    within: "Within",
    "too-close-to-call": "Too close to call",
    outside: "Outside",
    "not-judged": "Not judged",
  },
  de: {
    within: "Eingehalten",
    "too-close-to-call": "Zu knapp für ein Urteil",
    outside: "Überschritten",
    "not-judged": "Nicht beurteilt",
  },
};

/** The shape that stands with the word, so that no verdict rests on colour alone. */
export type VerdictShape = "circle-tick" | "triangle-question" | "square-cross" | "open-circle";

/** Shape, colour and a sign for plain text of each verdict. */
export const verdictSigns: Readonly<
  Record<Verdict, { readonly shape: VerdictShape; readonly fill: string; readonly sign: string }>
> = {
  within: { shape: "circle-tick", fill: "#0072B2", sign: "✓" },
  "too-close-to-call": { shape: "triangle-question", fill: "#F0E442", sign: "?" },
  outside: { shape: "square-cross", fill: "#D55E00", sign: "×" },
  "not-judged": { shape: "open-circle", fill: "#FFFFFF", sign: "○" },
};

/** What the severity of a finding is called. */
export const severityWords: Readonly<Record<Language, Readonly<Record<Severity, string>>>> = {
  en: { error: "Error", warning: "Warning", note: "Note" },
  de: { error: "Fehler", warning: "Warnung", note: "Hinweis" },
};
