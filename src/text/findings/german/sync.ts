import type { Sentences } from "../sentences.ts";

export const syncSentences: Sentences = {
  "sync.no-answer":
    "Das Büro unter {address} hat nicht geantwortet ({found}). Was aufgezeichnet wurde, ist auf diesem Gerät sicher und wird später gesendet.",
  "sync.silent":
    "Das Büro hat {seconds} s lang nichts gesagt. Was aufgezeichnet wurde, ist auf diesem Gerät sicher und wird später gesendet.",
  "sync.signed-out":
    "Niemand ist von hier aus im Büro angemeldet. Was aufgezeichnet wurde, ist auf diesem Gerät sicher: zum Senden anmelden.",
  "sync.not-allowed":
    "Das Büro erlaubt das nicht ({found}). Was aufgezeichnet wurde, ist auf diesem Gerät sicher; an die Leitung des Auftrags wenden.",
  "sync.no-such-job":
    "Das Büro kennt diesen Auftrag nicht, oder Sie dürfen ihn nicht sehen. Was aufgezeichnet wurde, ist auf diesem Gerät sicher; an die Leitung des Auftrags wenden.",
  "sync.busy":
    "Das Büro ist ausgelastet und bittet, {seconds} s zu warten. Was aufgezeichnet wurde, ist auf diesem Gerät sicher und wird dann gesendet.",
  "sync.office-failed":
    "Das Büro konnte es nicht ausführen (Status {status}). Was aufgezeichnet wurde, ist auf diesem Gerät sicher und wird später gesendet.",
  "sync.refused":
    "Das Büro hat dies abgelehnt (Status {status}): {found} Es bleibt auf diesem Gerät; der Rest wird gesendet.",
  "sync.answer-damaged":
    "Die Antwort des Büros war nicht lesbar oder wurde unterwegs verändert ({found}). Es wird später noch einmal gefragt.",
  "sync.client-too-old":
    "Dieses Programm ist zu alt, um mit dem Büro zu senden und zu holen (es spricht {found}, das Büro {expected}). Aufzeichnen und eine Kopie sichern geht weiter; zum Senden das Programm erneuern.",
  "sync.address": "{found} ist keine Adresse eines Büros. Schreiben Sie sie wie in https://office.example.",
  "sync.insecure-address":
    "Der Schlüssel ginge offen lesbar an {address}. Verwenden Sie eine Adresse, die mit https beginnt.",
  "sync.not-named":
    "Das Büro hat zu diesem Eintrag nichts gesagt. Er ist auf diesem Gerät sicher und wird später noch einmal gesendet.",
  "sync.page-damaged":
    "{count} Einträge kamen beschädigt aus dem Büro. Sie sind beiseitegelegt, wie sie kamen, und werden noch einmal geholt.",
  "sync.office-restored":
    "Das Büro wurde aus einer Sicherung wiederhergestellt. Was es verloren hat und dieses Gerät hat, wurde noch einmal gesendet.",
  "sync.office-lost":
    "Das Büro hatte nicht alles, was es als vorhanden genannt hatte. Alles wurde neu verglichen, und was dieses Gerät hat, wurde noch einmal gesendet. Sagen Sie es dem Betreiber des Büros.",
  "sync.sets-differ":
    "Dieses Gerät und das Büro haben nicht dieselben Einträge, obwohl alles gesendet und geholt wurde. Sichern Sie eine Kopie, und sagen Sie es dem Betreiber des Büros.",
  "sync.file-stuck":
    "Die Datei {blob} kommt nicht voran. Sie ist auf diesem Gerät sicher und wird später noch einmal gesendet.",
  "sync.file-short": "Die Datei {blob} endete nach {found} Byte. Der Rest wird später geholt.",
  "sync.file-too-large": "Die Datei hat {found} Byte; höchstens {expected} können gesendet werden.",
  "sync.file-not-named":
    "Kein Eintrag an dieser Stelle nennt die Datei {blob}. Senden Sie zuerst den Eintrag.",
  "sync.file-not-here": "Die Datei {blob} ist noch nicht vollständig im Büro.",
  "sync.kind-not-known":
    "Einträge der Art „{kind}“ kennt dieses Büro nicht. Der Eintrag liegt beiseite, bis das Büro erneuert ist.",
  "sync.kind-not-allowed":
    "Wer einen Eintrag der Art „{kind}“ sendet, braucht in diesem Auftrag das Recht „{right}“. Er liegt beiseite; jemand mit diesem Recht kann ihn übernehmen.",
  "sync.aside-unknown": "Unter diesem Namen liegt nichts beiseite.",
  "sync.aside-not-sound":
    "Das kann nicht übernommen werden: es ist kein einwandfreier Eintrag dieses Auftrags. Es bleibt beiseite, wie es kam.",
};
