import type { Sentences } from "../sentences.ts";

export const serverSentences: Sentences = {
  "server.not-found": "Unter dieser Adresse gibt es nichts.",
  "server.bad-address": "Die Adresse der Anfrage ist nicht lesbar.",
  "server.bad-request": "Die Anfrage ist nicht zu verstehen.",
  "server.request-field": "Das Feld {field} der Anfrage ist nicht, wie es sein soll: {found}.",
  "server.body-not-json": "Der Inhalt der Anfrage ist kein JSON.",
  "server.body-too-large": "Der Inhalt der Anfrage ist größer als {expected} Byte.",
  "server.media-type": "Der Inhalt der Anfrage ist von einer Art, die hier nicht angenommen wird: {found}.",
  "server.form-body":
    "Ein Inhalt der Art {found} wird nicht angenommen, weil jede Seite ihn senden könnte. JSON senden.",
  "server.foreign-origin": "Die Anfrage kam von einer anderen Seite ({found}) und wurde abgelehnt.",
  "server.foreign-host":
    "Dieser Server antwortet nur auf diesem Rechner und nicht unter dem Namen {found}. Ihn als 127.0.0.1 öffnen.",
  "server.too-many-requests": "Zu viele Anfragen. {seconds} Sekunden warten.",
  "server.mistake":
    "Der Server hat einen Fehler gemacht; die Anfrage ist vielleicht nicht ausgeführt. Im Protokoll heißt sie {request}.",
  "server.not-ready": "Die Datenbank antwortet gerade nicht. In einer Minute noch einmal versuchen.",
  "server.log-changed":
    "Das Protokoll des Auftrags {job} beginnt nicht mehr mit den {size} Einträgen, die dieses Büro unterzeichnet hat. Es wird nichts mehr unterzeichnet; mit einer Sicherung und einer Beweisdatei vergleichen.",
  "server.no-such-size": "Der Baum hat {expected} Einträge; gefragt war nach einem von {found}.",
  "server.file": "{file} ist nicht lesbar oder nicht schreibbar: {found}.",
  "server.era":
    "Die Datei oder Tabelle, die zählt, wie oft dieses Büro wiederhergestellt wurde, enthält {found}, was keine ganze Zahl ist. Die letzte Sicherung einspielen.",
  "server.port-taken":
    "Auf dem Port {port} von {host} lauscht schon ein anderes Programm. Es beenden oder einen anderen Port nennen.",
  "server.cannot-listen": "Der Server kann auf Port {port} von {host} nicht lauschen: {found}.",
  "server.setting": "Die Einstellung {setting} ist {found}; erwartet: {expected}.",
  "server.setting-secret":
    "{setting} enthält ein Passwort, das jeder auf diesem Rechner lesen könnte. Die Adresse in {expected} angeben oder in einer Datei, die {expected}_FILE nennt.",
  "server.setting-file": "Die Datei {file}, die {setting} nennt, ist nicht brauchbar: {found}.",
  "server.setting-short": "{setting} ist zu kurz: mindestens {expected} Zeichen, durch Zufall gemacht.",
};
