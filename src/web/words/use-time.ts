import { useCallback } from "react";
import type { Language } from "#core";
import { useLanguage } from "../preferences/use-preferences.ts";

const formats = new Map<Language, Intl.DateTimeFormat>();

function formatOf(language: Language): Intl.DateTimeFormat {
  const known =
    formats.get(language) ??
    new Intl.DateTimeFormat(language === "de" ? "de-DE" : "en-GB", {
      day: "numeric",
      month: "short",
      year: "numeric",
      hour: "2-digit",
      minute: "2-digit",
      hourCycle: "h23",
    });
  formats.set(language, known);
  return known;
}

/** A time for people: "3 May 2026, 14:02", in the zone of this device. */
export function useTime(): (wall: string) => string {
  const language = useLanguage();
  return useCallback(
    (wall) => {
      const time = Date.parse(wall);
      return Number.isFinite(time) ? formatOf(language).format(time) : wall;
    },
    [language],
  );
}
