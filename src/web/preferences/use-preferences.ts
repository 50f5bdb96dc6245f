import { useSyncExternalStore } from "react";
import type { Language } from "#core";
import { onPreferences, type Preferences, preferences } from "./preferences.ts";

export const usePreferences = (): Preferences => useSyncExternalStore(onPreferences, preferences);

export const useLanguage = (): Language => usePreferences().language;
