import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  skip: "Zum Inhalt",
  menu: "Menü",
  navigation: "Seiten",
  jobs: "Aufträge",
  settings: "Einstellungen",
  groupJob: "Auftrag",
  groupSetUp: "Vorbereiten",
  groupMeasured: "Gemessen",
  groupJudged: "Beurteilt",
  groupRecord: "Nachweis",
  loading: "Einen Moment …",
  writerElsewhere: "Ein anderes Fenster dieses Browsers schreibt. Dieses zeigt alles und ändert nichts.",
  storeTrouble: "In diesem Browser kann nichts gespeichert werden",
  notSent: "{count, plural, one {# Eintrag ist} other {# Einträge sind}} nur auf diesem Gerät",
  allSent: "Alles ist im Büro",
  sending: "Wird gesendet",
  notFoundTitle: "Diese Seite gibt es nicht",
  notFoundText: "Vielleicht ist die Adresse falsch getippt, oder die Seite ist umgezogen.",
  jobUnreadable: "Dieser Auftrag lässt sich auf diesem Gerät nicht öffnen",
  toJobs: "Zu den Aufträgen",
  mistakeTitle: "Auf dieser Seite hat das Programm einen Fehler gemacht",
  mistakeText:
    "Alles Gespeicherte ist sicher. Laden Sie die Seite neu; kommt der Fehler wieder, senden Sie den Text unten mit einem Wort dazu, was Sie getan haben.",
  reload: "Neu laden",
};
