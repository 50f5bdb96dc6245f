import type { Language } from "#core";
import { attempt } from "../attempt.ts";

/** system: light or dark, as the device is set */
export const THEMES = ["system", "light", "dark", "contrast"] as const;
export type Theme = (typeof THEMES)[number];
export const LANGUAGES: readonly Language[] = ["en", "de"];

/** What this device remembers about how things are shown. Nothing of a job stands here. */
export interface Preferences {
  readonly language: Language;
  readonly theme: Theme;
  /** whether single keys act on the screens of the review: "[", "]", "/", "?", "a" */
  readonly singleKeys: boolean;
}

const KEY = "toeline-preferences";
const listeners = new Set<() => void>();

/** The language of the browser, if the app speaks it. */
const usual = (): Preferences => ({
  language: navigator.language.startsWith("de") ? "de" : "en",
  theme: "system",
  singleKeys: true,
});

function stored(): Preferences {
  const read = attempt(() => JSON.parse(localStorage.getItem(KEY) ?? "{}") as Partial<Preferences>);
  const { language, theme, singleKeys } = read.ok ? read.value : {};
  const { language: usualLanguage, theme: usualTheme } = usual();
  return {
    language: LANGUAGES.find((each) => each === language) ?? usualLanguage,
    theme: THEMES.find((each) => each === theme) ?? usualTheme,
    singleKeys: singleKeys !== false,
  };
}

const held: { now: Preferences | undefined } = { now: undefined };

/** The preferences as they are now; the same object until one changes. */
export function preferences(): Preferences {
  held.now ??= stored();
  return held.now;
}

/** Changes preferences on this device and on the screen. A browser that keeps nothing shows them until it is closed. */
export function changePreferences(change: Partial<Preferences>): void {
  held.now = { ...preferences(), ...change };
  attempt(() => localStorage.setItem(KEY, JSON.stringify(held.now)));
  showPreferences();
  for (const listener of listeners) listener();
}

export function onPreferences(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Puts language and theme on the page. Called once before anything is drawn, then with each change. */
export function showPreferences(): void {
  const { language, theme } = preferences();
  document.documentElement.lang = language;
  document.documentElement.dataset["theme"] = theme === "system" ? systemTheme() : theme;
}

const systemTheme = (): Theme => {
  if (matchMedia("(prefers-contrast: more)").matches) return "contrast";
  return matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light";
};
