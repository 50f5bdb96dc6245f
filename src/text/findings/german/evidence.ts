import type { Sentences } from "../sentences.ts";

export const evidenceSentences: Sentences = {
  "evidence.answer-sound":
    "Nichts wurde verändert: alle Einträge ({entries}), Geräte ({devices}) und Unterschriften ({seals}) passen zu dem, was signiert wurde.",
  "evidence.answer-unsettled":
    "Nichts deutet darauf, dass diese Datei verändert wurde, aber nicht alles in ihr ist in Ordnung ({entries} Einträge).",
  "evidence.answer-changed-at":
    "Diese Datei wurde verändert: Eintrag {place} ist der erste, der nicht so ist, wie er signiert wurde.",
  "evidence.answer-changed-between":
    "Diese Datei wurde verändert: der erste Eintrag, der nicht so ist, wie er signiert wurde, liegt zwischen {from} und {to}.",
  "evidence.answer-changed": "Diese Datei wurde verändert, oder nichts zeigt, dass sie es nicht wurde.",
  "evidence.answer-no-bag":
    "Dies ist keine Beweisdatei, oder eine, die nicht geöffnet wird, weil sie Schaden anrichten könnte.",
  "evidence.not-a-bag": "{found} fehlt: ohne sie ist dies keine Beweisdatei.",
  "evidence.bag-version": "Die Datei weist sich nicht als BagIt-Sammlung der Version 1.0 in UTF-8 aus.",
  "evidence.manifest-line":
    "Eine Zeile des Verzeichnisses besteht nicht aus SHA-256 und Namen, oder nennt eine Datei zweimal.",
  "evidence.manifest-differs":
    "Die Datei hat nicht die SHA-256, die {manifest} angibt: sie wurde beschädigt oder verändert.",
  "evidence.manifest-without-file": "{manifest} nennt eine Datei, die nicht hier ist.",
  "evidence.file-without-manifest": "Die Datei steht nicht in {manifest}: sie wurde später hineingelegt.",
  "evidence.lines":
    "Die Datei hat zu viele oder zu lange Zeilen, oder wurde in einer Zeile abgeschnitten. Sie wird nicht gelesen.",
  "evidence.line-form":
    "Die Zeile hat nicht die eine Form, in der sie geschrieben wird (RFC 8785): jemand oder ein Programm hat sie neu geschrieben.",
  "evidence.ids":
    "Die Liste der Namen ist beschädigt: sie sagt nichts mehr über die Reihenfolge der Einträge.",
  "evidence.derived-differs":
    "Was die Datei aus den Einträgen wiederholt, ist nicht das, was die Einträge sagen. Es gelten die Einträge.",
  "evidence.no-entries": "Der Auftrag hat keine Einträge: es gibt nichts zu beweisen.",
  "evidence.other-job": "Es gehört zu einem anderen Auftrag ({found}).",
  "evidence.no-head-over-all":
    "Kein vom Büro signierter Kopf deckt genau diese {entries} Einträge: nichts zeigt, dass es alle sind und die richtigen.",
  "evidence.head-other-job":
    "Der Kopf wurde für einen anderen Auftrag signiert ({found}). Er sagt hier nichts.",
  "evidence.head-other-key":
    "Der Kopf wurde mit einem anderen Schlüssel als dem des Büros signiert ({key}). Im Büro nachfragen, ob es ihn je hatte.",
  "evidence.known-head-cut":
    "Der von außen bekannte Kopf zählt {expected} Einträge; hier sind nur {found}. Das Ende fehlt, oder diese Datei ist älter.",
  "evidence.known-head-differs":
    "Die ersten {size} Einträge sind nicht die des von außen bekannten Kopfes: dies ist eine andere Geschichte als die damals erzählte.",
  "evidence.tail-cut":
    "Hier müsste der Eintrag {entry} stehen; von hier an fehlen am Ende {missing} Einträge.",
  "evidence.entry-missing": "Hier müsste der Eintrag {entry} stehen; er fehlt.",
  "evidence.entry-put-in": "Der Eintrag {entry} wurde eingefügt, oder steht hier ein zweites Mal.",
  "evidence.entry-moved": "Der Eintrag {entry} steht hier, kam aber an anderer Stelle der Reihenfolge an.",
  "evidence.entry-exchanged": "Der Eintrag {entry} steht hier an der Stelle von {expected}.",
  "evidence.blob-missing":
    "Die Datei {blob}, die der Eintrag nennt, ist nicht hier: sie wurde herausgenommen, oder kam nie im Büro an.",
  "evidence.blob-changed": "Die Datei {blob} wurde verändert: ihre SHA-256 ist eine andere als ihr Name.",
  "evidence.stray-file": "Die Datei gehört nicht hierher: kein Eintrag nennt sie.",
  "evidence.seal-not-checked":
    "Es gibt mehr Unterschriften, als in einer Datei geprüft werden; die für {about} wurde nicht geprüft.",
  "evidence.office-key-not-known":
    "Der Schlüssel des Büros stammt aus der Datei selbst. Das Büro nach seinem Schlüssel fragen und damit prüfen; ohne ihn sieht eine ganz neu geschriebene Geschichte mit anderen Schlüsseln gleich aus.",
  "evidence.no-known-head":
    "Ob der Auftrag nach Eintrag {entries} weiterging, ist hier nicht zu sehen. Ein Kopf auf einem späteren Bericht, oder einer, der zugesandt wurde, zeigt es.",
  "evidence.after-last-known-head":
    "Die Einträge {from} bis {to} kamen nach dem letzten von außen bekannten Kopf; für sie spricht nur der Kopf des Büros.",
  "evidence.entries-unread":
    "{found} Einträge sind von einer Art, die diese Version nicht lesen kann. Sie sind unverändert; ihr Inhalt wurde nicht betrachtet.",
  "evidence.times-are-claims":
    "Zeiten sind das, was die Uhren der Geräte sagten; Signaturen beweisen sie nicht.",
};
