import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  title: "Eingang",
  lead: "Was angekommen ist und darauf wartet, dass jemand es ansieht, das Dringendste zuerst.",
  openOldest: "Das älteste öffnen: {run}",
  emptyTitle: "Nichts wartet",
  emptyText: "Jede Messreihe, die hier ist, ist angenommen. Neue stehen hier, sobald sie ankommen.",
  noRunsTitle: "Noch keine Messreihen",
  noRunsText:
    "Bringen Sie Messwerte in der Liste der Aufträge herein, oder lassen Sie die Geräte der Baustelle ihre senden.",
  toPlan: "Zum Lageplan",
  show: "Gezeigt",
  waitingShown: "Wartend ({count})",
  acceptedShown: "Angenommen ({count})",
  allShown: "Alle ({count})",
  list: "Messreihen",
  run: "Messreihe",
  element: "Element",
  tube: "Rohr",
  verdict: "Urteil",
  state: "Zustand",
  waiting: "Wartet",
  changed: "Seit der Annahme geändert",
  accepted: "Angenommen",
  odd: "Was auffällt",
  oddNothing: "–",
  oddUnusable: "nicht auswertbar",
  oddMissing: "{count, plural, one {# Messwert fehlt} other {# Messwerte fehlen}}",
  oddOpen: "nicht beendet",
  oddErrors: "{count, plural, one {# Fehler} other {# Fehler}}",
  oddWarnings: "{count, plural, one {# Warnung} other {# Warnungen}}",
  oddAside: "{count} zurückgestellt",
  readings: "Messwerte",
  started: "Begonnen",
  arrived: "Letzter Eintrag",
  operator: "Durch",
  working: "Wird ausgewertet",
  missing:
    "Die Einträge {from} bis {to} des Geräts {device} sind nicht angekommen. Was gezeigt wird, ist vielleicht nicht alles.",
  missingOne:
    "Der Eintrag {from} des Geräts {device} ist nicht angekommen. Was gezeigt wird, ist vielleicht nicht alles.",
  unread:
    "{count, plural, one {# Eintrag} other {# Einträge}} kann diese Fassung des Programms nicht lesen. Laden Sie die Seite neu, um eine neuere zu bekommen.",
  forks:
    "{count, plural, one {Ein Gerät hat unter einer Nummer zweierlei geschrieben.} other {Geräte haben #-mal unter einer Nummer zweierlei geschrieben.}} Was folgt, zählt nicht, bis jemand es klärt.",
};
