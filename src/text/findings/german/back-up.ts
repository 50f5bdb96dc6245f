import type { Sentences } from "../sentences.ts";

export const backUpSentences: Sentences = {
  "backup.not-one": "Das ist keine Sicherung eines Büros: {found}.",
  "backup.damaged":
    "Die Sicherung wurde verändert oder beschädigt: Teil {part}: {found}. Nichts davon wurde eingespielt; eine andere Kopie nehmen.",
  "backup.cut":
    "Die Sicherung endet zu früh: nach Teil {part}. Nichts davon wurde eingespielt; eine andere Kopie nehmen.",
  "backup.newer":
    "Die Sicherung stammt von einer neueren Version des Programms ({found}; diese Version kennt {expected}). Das Programm erneuern.",
  "backup.not-empty":
    "An diesem Ort sind schon Aufzeichnungen: {found}. Eingespielt wird nur an einem leeren Ort; nichts wurde verändert.",
  "backup.unfinished":
    "Ein Einspielen an diesen Ort wurde nicht fertig. Denselben Befehl noch einmal geben; bis dahin sind die Aufzeichnungen hier nicht vollständig.",
  "backup.row":
    "Eine Zeile von {table} in der Sicherung lässt sich nicht schreiben: {found}. Nichts davon wurde eingespielt.",
  "backup.entry":
    "Der Eintrag {entry} des Projekts {job} ist nicht in Ordnung ({found}). Der beschriebene Ort wird nicht benutzt.",
  "backup.blob":
    "Die Datei {hash} ist nicht vollständig oder nicht das, was ihr Name sagt. Der beschriebene Ort wird nicht benutzt.",
  "backup.set":
    "Das Projekt {job} hat nicht auf beiden Seiten dieselben Einträge: {found} statt {expected}. Der beschriebene Ort wird nicht benutzt.",
  "backup.file": "Die Datei ließ sich nicht lesen oder schreiben: {found}.",
  "backup.source": "An diesem Ort sind keine Aufzeichnungen: {found}.",
};
