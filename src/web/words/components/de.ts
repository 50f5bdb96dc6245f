import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  close: "Schließen",
  undo: "Rückgängig",
  stop: "Anhalten",
  progressOf: "{done} von {total}",
  findingsNone: "Es wurde nichts gefunden.",
  findingLine: "Zeile {line}",
  numberMissing: "Geben Sie eine Zahl ein.",
  numberTwoMarks:
    "Es steht mehr als ein Dezimalzeichen da. Schreiben Sie die Zahl mit einem Komma oder Punkt und ohne Tausenderzeichen.",
  numberUnreadable:
    "Das ist keine Zahl. Schreiben Sie Ziffern, bei Nachkommastellen mit einem Komma oder Punkt.",
  numberOtherUnit:
    "Getippt wurde „{found}“, dieses Feld ist aber in {unit}. Rechnen Sie um und schreiben Sie den Wert ohne Einheit.",
  numberBetween: "Muss von {min} bis {max} {unit} reichen.",
  numberAtLeast: "Muss mindestens {min} {unit} sein.",
  numberAtMost: "Darf höchstens {max} {unit} sein.",
  allowed: "erlaubt {limit}",
  probability: "Wahrscheinlichkeit der Einhaltung {probability}",
  tableCopy: "Als Text kopieren",
  tableCopied: "{count, plural, one {# Zeile} other {# Zeilen}} als Text kopiert.",
  tableCopyFailed:
    "Der Browser hat das Kopieren nicht erlaubt. Wählen Sie die Zeilen aus und drücken Sie Strg+C.",
  tableRows: "{count, plural, one {# Zeile} other {# Zeilen}}",
  figureLarger: "Größer",
  figureSmaller: "Kleiner",
  figureFit: "Ganze Zeichnung",
  figureKeys: "Pfeiltasten verschieben die Zeichnung, Plus und Minus ändern die Größe, 0 zeigt das Ganze.",
  figureTable: "Zahlen dieser Zeichnung",
  figureUnsafe: "Die Zeichnung konnte nicht gezeigt werden, weil sie mehr als Linien und Text enthält.",
};
