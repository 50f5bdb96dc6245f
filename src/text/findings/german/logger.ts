import type { Sentences } from "../sentences.ts";

export const loggerSentences: Sentences = {
  "logger.binary":
    "Gefunden: das Zeichen {found}, das in keinem Text vorkommt; erwartet: {expected}. Die Datei ist beschädigt oder kein Export von Messwerten.",
  "logger.cell-count":
    "Gefunden: {found} Zellen in der Zeile; erwartet: {expected}. Ihre Zellen lassen sich nicht zuordnen, die Zeile wird nicht übernommen.",
  "logger.cell-number": 'Gefunden: "{found}"; erwartet: {expected}. Es wird nie als 0 gelesen.',
  "logger.cell-time":
    'Gefunden: "{found}"; erwartet: {expected}. Reihenfolge von Tag und Monat oder die Rolle der Spalte prüfen.',
  "logger.checksum":
    "Gefunden: die Prüfsumme {found}; erwartet: {expected}. Die Zeile wurde unterwegs beschädigt; nichts davon wird verwendet.",
  "logger.depth-repeated":
    "Gefunden: die Tiefe {found} noch einmal, nach Zeile {other}; erwartet: {expected}. Beide Zeilen bleiben; nachsehen, welche gilt.",
  "logger.depth-turns":
    "Die Tiefe kehrt nach Zeile {other} zu {found} um; erwartet: {expected}. Ab hier zählen die Zeilen als der andere Weg durch das Loch.",
  "logger.directions-made":
    "Gefunden: {found}; daraus werden {expected}. Ein Neigungsnullpunkt lässt sich danach nicht mehr anbringen: Die Neigungen müssen ohne ihn kommen.",
  "logger.encoding": "Gefunden: {found}; erwartet: {expected}. Eine andere Kodierung wählen.",
  "logger.footer":
    'Zeilen unter dem letzten Messwert werden übergangen: {found}, beginnend mit "{expected}".',
  "logger.gap": "Gefunden: ein Schritt von {found}; erwartet: {expected}. Dazwischen wurde nichts gemessen.",
  "logger.no-checksum":
    "Gefunden: {found} Sätze ohne {expected}. Sie werden gelesen; Schäden darin sind nicht zu erkennen.",
  "logger.no-depth": "Gefunden: {found} als Tiefe; erwartet: {expected}. Nichts wird an ihre Stelle gesetzt.",
  "logger.no-readings":
    "Gefunden: {found}; erwartet: {expected}. Trennzeichen und Kodierung prüfen, oder die Zeile des ersten Messwerts.",
  "logger.not-a-row":
    'Gefunden: "{found}" zwischen den Messwerten; erwartet: {expected}. Die Zeile wird nicht übernommen.',
  "logger.not-open": "Die Datei ist nicht mehr offen. Noch einmal wählen; es wurde nichts geschrieben.",
  "logger.over-range":
    "Gefunden: {found}; erwartet: {expected}. Der Wert liegt außerhalb des Bereichs oder steht für keine Messung, er bleibt leer.",
  "logger.role-missing":
    "Gefunden: {found} für das, was eine Messreihe braucht; erwartet: auch {expected}. Angeben, welche Spalte es ist.",
  "logger.rows-above":
    "Gefunden: {found} Zeilen mit Zahlen über der Tabelle, die in Zeile {expected} beginnt. Sie werden nicht übernommen; sind es Messwerte, eine frühere erste Zeile wählen.",
  "logger.rows-left-out":
    "{found} von {expected} Zeilen fehlt ein Wert, den die Messreihe braucht. Sie werden nicht übernommen; jede ist genannt.",
  "logger.sentence-form": 'Gefunden: "{found}"; erwartet: {expected}. Die Zeile wird nicht übernommen.',
  "logger.template-form": "Das ist keine lesbare Zuordnung: gefunden: {found}; erwartet: {expected}.",
  "logger.turn-carried-on":
    "Die Drehung beginnt {found} Mal bei einer vollen Drehung von {expected}° von vorn. Sie wird darüber hinweg fortgeführt.",
  "logger.unit-clash":
    "Gefunden: {found}; erwartet: {expected} wie bei den anderen Beschleunigungen. Alle drei müssen in einer Einheit stehen.",
  "logger.value-missing":
    'Gefunden: "{found}"; erwartet: {expected}. Hier wurde nichts gemessen; nichts wird an die Stelle gesetzt.',
  "logger.why-code-page":
    "Manche Bytes sind kein UTF-8, die Datei wird daher als {found} gelesen. Nachsehen, ob Buchstaben und Gradzeichen stimmen.",
  "logger.why-continuous": "{found} von {expected} Tiefen sind gleich der davor.",
  "logger.why-convention":
    "Die Datei sagt das nicht. An einem Loch oder einer Lage mit bekannter Neigung prüfen.",
  "logger.why-convention-usual": "Nichts in der Datei spricht gegen das Übliche.",
  "logger.why-date-order": '"{found}" lässt sich nicht anders lesen.',
  "logger.why-date-order-open": '"{found}" lässt sich mit dem Tag oder mit dem Monat zuerst lesen.',
  "logger.why-decimal": '"{found}" lässt sich nicht anders lesen.',
  "logger.why-decimal-both": 'Beide Zeichen kommen vor: "{found}" und "{expected}".',
  "logger.why-decimal-none": "Keine Zahl zeigt ein Dezimalzeichen.",
  "logger.why-decimal-open": '"{found}" lässt sich mit beiden Zeichen lesen.',
  "logger.why-depths-negative": "Die meisten Tiefen sind negativ.",
  "logger.why-depths-positive": "Die meisten Tiefen sind positiv oder 0.",
  "logger.why-first-line": "Zeilen mit Zahlen beginnen in Zeile {found}.",
  "logger.why-given": "Von Hand gesetzt.",
  "logger.why-heading-line": "Zeile {found} enthält Wörter über den Zahlen.",
  "logger.why-inclination-steep": "Die meisten Neigungen liegen über 60°, wie von der Waagerechten gezählt.",
  "logger.why-last-line": "Die letzte Zeile mit Zahlen ist Zeile {found}.",
  "logger.why-mark": "Die Datei beginnt mit dem Kennzeichen von {found}.",
  "logger.why-missing": "Diese stehen an der Stelle einer Zahl: {found}.",
  "logger.why-no-dates": "Kein Datum mit zweifelhafter Reihenfolge kommt vor.",
  "logger.why-no-heading": "Über den Zahlen steht keine Zeile mit Wörtern.",
  "logger.why-no-slope": "Keine Neigung ist als Steigung angegeben.",
  "logger.why-no-thousands": "Keine Zahl zeigt eines.",
  "logger.why-no-unit": "Es hat keine Einheit.",
  "logger.why-no-units-line": "Keine Zeile enthält nur Einheiten.",
  "logger.why-nothing-missing": "Jede Zelle, die eine Zahl sein soll, ist eine.",
  "logger.why-one-column": "Kein Trennzeichen teilt die Zeilen gleichmäßig.",
  "logger.why-role-depths": "Die Zahlen wachsen von Zeile zu Zeile. Sonst spricht nichts dafür.",
  "logger.why-role-taken": "Eine andere Spalte wurde schon für {found} genommen.",
  "logger.why-role-times": "Die Zellen sind Daten oder Zeiten.",
  "logger.why-role-unknown": 'Die Überschrift "{found}" nennt nichts Bekanntes.',
  "logger.why-role-word": 'Die Überschrift "{found}" sagt es.',
  "logger.why-sentences": "{found} von {expected} Zeilen sind Sätze, die mit $ oder ! beginnen.",
  "logger.why-separator": "Es teilt {found} von {expected} Zeilen in gleich viele Zellen.",
  "logger.why-slope-small": "Die Neigungen sind so klein, dass beides auf dasselbe hinauskommt.",
  "logger.why-slope-steep":
    "Manche Neigungen liegen über 3°, wo sich beide um mehr als ein Tausendstel unterscheiden.",
  "logger.why-stops": "Die meisten Tiefen unterscheiden sich von der davor.",
  "logger.why-template": 'Aus der Zuordnung "{found}".',
  "logger.why-thousands": 'Zu sehen in "{found}".',
  "logger.why-unit-any": "Für Beschleunigungen ist jede gemeinsame Einheit recht.",
  "logger.why-unit-usual":
    "Die Datei nennt keine Einheit; {found} ist üblich. An einem bekannten Wert prüfen.",
  "logger.why-unit-written": '"{found}" steht in der Datei.',
  "logger.why-units-line": "Zeile {found} enthält nur Einheiten.",
  "logger.why-utf8": "Jedes Byte lässt sich als UTF-8 lesen.",
  "logger.why-workbook": "Die Datei ist eine Arbeitsmappe.",
  "logger.why-z-negative": "Die z-Werte sind negativ, wie bei einem Sensor, dessen z nach unten zeigt.",
  "logger.why-z-positive":
    "Die z-Werte sind positiv: z zeigt nach oben, oder der Sensor zeigt die Schwerkraft statt der Gegenkraft.",
  "logger.why-zeros": "Jedes zweite Byte ist null, wie in {found}.",
  "logger.why-zone-open": "Die Zeiten haben keine Zone; ohne sie gelten sie als UTC.",
  "logger.why-zone-written": "Die Zeiten brauchen keine oder tragen ihre eigene.",
  "logger.word-unknown":
    'Gefunden: "{found}"; erwartet: eines von: {expected}. Die Zeile zählt, als stünde dort nichts.',
};
