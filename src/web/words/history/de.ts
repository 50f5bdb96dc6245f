import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  title: "Aufzeichnung",
  lead: "Alles, was aufgezeichnet wurde, das Neueste zuerst: wer, auf welchem Gerät und warum. Nichts wird je herausgenommen.",
  proof: "Nachweis zeigen",
  evidence: "Nachweisdatei sichern",
  evidenceDone:
    "Die Nachweisdatei ist gesichert. Jeder kann sie ohne Konto prüfen, unter: Eine Datei prüfen.",
  evidenceFailed: "Keine Nachweisdatei: {why}",
  about: "Element oder Messreihe",
  aboutHint: "P12 oder P12-1; leer für alles",
  show: "Gezeigt",
  all: "Alles",
  asideOnly: "Zurückgestellt und wieder aufgenommen",
  list: "Einträge",
  wall: "Wann (Uhr des Geräts)",
  what: "Was",
  aboutColumn: "Worüber",
  details: "Geschrieben",
  reason: "Warum",
  author: "Wer",
  device: "Gerät",
  number: "Nummer dort",
  arrival: "Platz hier",
  more: "Ältere zeigen (noch {count})",
  emptyTitle: "Noch ist nichts aufgezeichnet",
  emptyText: "Legen Sie den Auftrag an oder lesen Sie Messwerte ein: Von da an steht jeder Schritt hier.",
  noneTitle: "Kein Eintrag passt",
  noneText: "Kürzen Sie, was unter Element oder Messreihe steht, oder zeigen Sie alles.",
  noneAction: "Alles zeigen",
  brokenGap:
    "Die Einträge {from} bis {to} von {device} sind nicht angekommen. {waiting, plural, =0 {} one {# späterer zählt erst, wenn sie da sind.} other {# spätere zählen erst, wenn sie da sind.}}",
  brokenFork:
    "{device} hat unter der Nummer {from} zwei Dinge geschrieben. Was dort folgt, zählt nicht, bis jemand das klärt.",
  brokenLink:
    "Eintrag {from} von {device} passt nicht zu dem davor: Einer von beiden wurde geändert. Was dort folgt, zählt nicht.",
  proofTitle: "Nachweis für Eintrag {sequence} von {device}",
  proofAsking: "Wird geprüft …",
  signedTitle: "Wer ihn geschrieben hat",
  signedGood:
    "Die Unterschrift des Geräts passt: An diesem Eintrag ist nichts geändert, seit {author} ihn dort geschrieben hat.",
  officeTitle: "Ob er zur Aufzeichnung gehört",
  officeGood:
    "Er ist Eintrag {place} von {size} in der Reihenfolge, in der das Büro sie bekommen hat. {steps, plural, =0 {Er ist der einzige und selbst der Stand.} one {Eine weitere Prüfsumme führt von ihm zu dem Stand, den das Büro unterschrieben hat.} other {# weitere Prüfsummen führen von ihm zu dem Stand, den das Büro unterschrieben hat.}} Das alles wurde auf diesem Gerät nachgerechnet und nicht geglaubt.",
  officeHead: "Stand vom {when} nach der Uhr des Büros",
  officeNone: "Noch lässt sich nichts zeigen: {why}",
  notShownTitle: "Was damit nicht gezeigt ist",
  notShown:
    "Die Zeit ist, was die Uhr des Geräts zeigte ({when}): Bewiesen hat sie niemand. Ob das Büro anderen eine andere Aufzeichnung gezeigt hat, sieht man, wenn man Stände vergleicht, etwa die auf Berichten gedruckten.",
  entryId: "Eintrag",
  deviceKey: "Schlüssel des Geräts",
  headRoot: "Wurzel des Standes",
  officeKey: "Schlüssel des Büros",
};
