import type { en } from "./en.ts";

export const de: Record<keyof typeof en, string> = {
  title: "Urteil über {element}",
  deciding: "Die Regel, die entscheidet",
  found: "Gefunden",
  allowed: "Erlaubt",
  margin: "Luft bis zur Grenze",
  over: "Über der Grenze um",
  uncertainty: "Standardunsicherheit",
  probability: "Wahrscheinlichkeit der Einhaltung",
  atLevel: "Auf der Höhe",
  rule: "Regel",
  source: "Quelle",
  noSource: "Eigene Regel des Auftrags; kein Dokument ist genannt",
  status_read: "im Dokument gelesen",
  status_quoted: "in einem Text gesehen, der es anführt",
  status_memory: "aus dem Gedächtnis: vor Gebrauch zu bestätigen",
  all: "Alle Regeln",
  noRules:
    "Keine Regel des Auftrags gilt für dieses Element, also lässt es sich nicht beurteilen. Legen Sie zuerst fest, was erlaubt ist.",
  decision_simple: "Eingehalten, wenn der Wert die Grenze nicht überschreitet.",
  decision_guarded:
    "Eingehalten, wenn die Wahrscheinlichkeit der Einhaltung mindestens {probability} beträgt; sonst nicht.",
  "decision_four-way":
    "Eingehalten, wenn die Wahrscheinlichkeit der Einhaltung mindestens {probability} beträgt; nicht eingehalten, wenn die der Überschreitung es tut; dazwischen zu knapp.",
  decisionTitle: "Wie entschieden wird",
  close: "Was es entscheiden würde",
  closeValue:
    "{rule}: Mit {found} gefunden gegen {allowed} erlaubt würde eine Standardunsicherheit von {needed} oder weniger entscheiden; sie beträgt {now}. Das gilt für den gefundenen Wert: Eine neue Messung findet einen anderen.",
  closeHow:
    "Noch einmal zu messen verringert, was sich von Messreihe zu Messreihe ändert, nicht, was sie gemeinsam haben.",
  record: "Urteil festhalten",
  recordAgain: "Urteil noch einmal festhalten",
  recordTitle: "Festhalten: Urteil über {element}: {verdict}",
  recordText:
    "Wert, Grenze, Unsicherheit und die Messwerte, auf denen sie beruhen, kommen in die Aufzeichnung. Ändert sich etwas, lässt sich das Urteil neu festhalten.",
  recordUsual: "Wie nach der vereinbarten Regel ausgewertet.",
  recordDone: "Urteil über {element} festgehalten: {verdict}.",
  recorded: "Festgehalten",
  recordedBy: "{verdict}, durch {author}, {when}: {reason}",
  recordedNone: "Noch ist kein Urteil festgehalten.",
  recordedOld:
    "Messwerte, Regeln oder Ergebnisse haben sich seither geändert. Halten Sie das Urteil neu fest, bevor sich jemand darauf verlässt.",
  notAccepted: "Diese Messwerte hat niemand angenommen, so wie sie jetzt sind: {runs}.",
  sign: "Unterschreiben",
  signTitle: "Das Urteil über {element} unterschreiben",
  signText:
    "Sie unterschreiben alles, was bis jetzt über {element} aufgezeichnet ist: sein Soll, das Urteil und durch dieses genau diese Messwerte. Jeder kann die Unterschrift prüfen. Sie lässt sich nicht zurücknehmen; eine neuere Aufzeichnung braucht eine neue Unterschrift.",
  signAs: "Unterschrift von {name}, jetzt.",
  signOwn:
    "Sie sind als die Person genannt, die diese Messwerte aufgenommen hat. Ein zweites Paar Augen ist besser: Die Unterschrift wird es zeigen.",
  signMeaning: "Was Ihre Unterschrift bedeutet",
  meaningChecked: "Geprüft durch",
  meaningApproved: "Freigegeben durch",
  meaningAccepted: "Abgenommen durch",
  signName: "Tippen Sie Ihren Namen, wie er oben steht",
  signNameOther: "Das ist nicht der Name, unter dem Sie angemeldet sind: {name}.",
  signSpace: "Drücken Sie mit der Leertaste oder dem Zeiger: Die Eingabetaste unterschreibt nicht.",
  signDone: "{element} unterschrieben.",
  signRecordFirst: "Halten Sie zuerst das Urteil fest: Eine Unterschrift steht unter etwas Geschriebenem.",
  signOldFirst: "Halten Sie das Urteil zuerst neu fest: Seither hat sich etwas geändert.",
  signConflict:
    "Zwei Personen haben ein Feld dieses Elements geändert. Entscheiden Sie das zuerst; bis dahin kann niemand unterschreiben.",
  signatures: "Unterschriften",
  signaturesNone: "Noch hat niemand unterschrieben.",
  seal: "{meaning} {name}, {when}",
  sealSound: "In Ordnung: Die Unterschrift passt, und alles, wofür sie steht, ist unverändert.",
  sealOld: "In Ordnung, aber für einen früheren Stand: Seither wurde etwas aufgezeichnet.",
  sealKey: "Schlüssel {key}",
  check: "Die ganze Aufzeichnung prüfen",
  checkGood:
    "{entries, plural, one {# Eintrag} other {# Einträge}} von {devices, plural, one {# Gerät} other {# Geräten}}: Jeder ist unterschrieben und unverändert, und dazwischen fehlt keiner.",
  checkBad:
    "Die Aufzeichnung ist nicht in Ordnung. Erster fehlerhafter Eintrag des Geräts {device}: Nummer {sequence}. {why}",
  caution:
    "Ein Urteil ist keine Planungsentscheidung. Was daraus folgt, bestimmt die verantwortliche Ingenieurin oder der verantwortliche Ingenieur nach den Regeln, die am Ort gelten.",
};
