import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  title: "Konflikte",
  lead: "Felder, die zwei Personen geändert haben, ohne voneinander zu wissen. Wählen Sie, was gilt; das andere bleibt in der Aufzeichnung.",
  working: "Was jeder Wert für die Ergebnisse bedeutet, wird gerade berechnet.",
  emptyTitle: "Keine Konflikte",
  emptyText:
    "Ändern zwei Personen dasselbe Feld, ohne voneinander zu wissen, stehen beide Werte hier, bis jemand einen wählt.",
  toHistory: "Zur Aufzeichnung",
  signingTitle:
    "Berichte und Urteile, die diese Felder berühren, kann niemand unterschreiben, bis sie entschieden sind.",
  conflict: "{field}: {thing}",
  value: "Wert {letter}",
  by: "{author} auf {device}, {when} nach dessen Uhr",
  used: "Mit diesem rechnet das Programm, bis jemand entscheidet.",
  before: "Vor beiden: {value}",
  beforeNothing: "Vor beiden stand hier nichts.",
  effects: "Was es für die Ergebnisse bedeutet",
  effectNone: "Kein Ergebnis ändert sich, gleich welcher Wert bleibt.",
  effectSame:
    "{count, plural, one {Das Urteil über {element} bleibt gleich; nur die Zahlen ändern sich.} other {Die Urteile über # Elemente bleiben gleich; nur ihre Zahlen ändern sich.}}",
  effectOne: "Das Urteil über {element} ändert sich von {from} (A) zu {to} (B).",
  effectMany: "Das Urteil über {element} hängt davon ab: {list}.",
  effectOfLetter: "{verdict} mit {letter}",
  effectMore: "{count, plural, one {# weiteres Urteil ändert sich.} other {# weitere Urteile ändern sich.}}",
  effectLeftOut:
    "{count, plural, one {# weiteres Element hätte andere Zahlen; es wurde hier nicht ausgewertet.} other {# weitere Elemente hätten andere Zahlen; sie wurden hier nicht ausgewertet.}}",
  noElement: "nicht im Auftrag",
  keep: "{letter} behalten",
  writeNew: "Neu schreiben",
  newValue: "Ein anderer Wert für {field}",
  newSend: "Schreiben",
  newCancel: "Lassen",
  newMissing: "Geben Sie den Wert ein, der gilt.",
  kept: "{field}, {thing}: entschieden ist {value}. Der andere Wert bleibt in der Aufzeichnung.",
  onlyHere:
    "Dieses Feld enthält mehr als eine Zahl oder einen Text, darum muss einer von beiden bleiben; ändern Sie ihn danach auf seiner eigenen Seite.",
};
