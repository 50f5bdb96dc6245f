import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  lead: "{elements, plural, one {# Element} other {# Elemente}}, {runs, plural, one {# Messreihe} other {# Messreihen}}",
  reading: "Der Auftrag wird gelesen",
  fetching: "Der Auftrag wird vom Büro geholt",
  working: "Die Elemente werden ausgewertet",
  emptyTitle: "Noch keine Elemente",
  emptyText:
    "Fügen Sie hinzu, was gebaut wird: tippen, aus einer Tabelle einfügen oder eine Liste hereinbringen.",
  level: "Höhe des Plans",
  planLabel: "Lageplan. Alle Elemente stehen auch in der Tabelle daneben.",
  planKeys:
    "Pfeiltasten verschieben den Plan, Plus und Minus ändern die Größe, 0 zeigt das Ganze. Eckige Klammern gehen von Element zu Element, die Eingabetaste öffnet eines.",
  planWhole: "Ganzer Plan",
  open: "Öffnen",
  notAtLevel: "nicht auf dieser Höhe",
  notRead: "auf dieser Höhe nicht gemessen",
  offsetAtLevel: "auf dieser Höhe {offset} daneben",
  countsTitle: "Urteile. Drücken Sie eines, um nur diese zu sehen.",
  elements: "Elemente",
  element: "Element",
  verdict: "Urteil",
  found: "Gefunden",
  allowed: "Erlaubt",
  nextTitle: "Was wartet",
  nextOpen: "{element} öffnen",
  waitsElements: "Es müssen Elemente hinzugefügt werden",
  waitsNothing: "Nichts wartet: Alle Elemente sind beurteilt",
  waitsConflicts: "{count, plural, one {# Feld wurde} other {# Felder wurden}} von zweien geändert",
  waitsEntries: "Es fehlen Einträge: Was gezeigt wird, ist vielleicht nicht alles",
  waitsErrors: "{count, plural, one {# Befund ist} other {# Befunde sind}} zu beheben oder zu erklären",
  waitsOutside:
    "{count, plural, one {# Element überschreitet} other {# Elemente überschreiten}} das Erlaubte",
  waitsTooClose: "{count, plural, one {# Element ist} other {# Elemente sind}} zu knapp für ein Urteil",
  waitsRuns: "{count, plural, one {# Element ist} other {# Elemente sind}} noch nicht vermessen",
  waitsJudgement: "{count, plural, one {# Element ist} other {# Elemente sind}} nicht beurteilt",
};
