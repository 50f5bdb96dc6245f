import type { Sentences } from "../sentences.ts";

export const formatsSentences: Sentences = {
  "formats.acceleration-odd":
    "Die drei Beschleunigungen ergeben hier zusammen {found}, in den anderen Zeilen etwa {expected}. In Ruhe zeigen alle Zeilen dasselbe; die Sonde kann sich bewegt haben.",
  "formats.acceleration-zero":
    "Alle drei Beschleunigungen sind 0; erwartet wird die Schwerkraft. Der Sensor gab nichts, die Messreihe lässt sich nicht berechnen.",
  "formats.attitude-incomplete":
    "Der Kreiselnullpunkt wurde geneigt aufgenommen, gefunden: {found}; erwartet: {expected}. Die Kalibrierung wird nicht verwendet.",
  "formats.azimuth-north-missing":
    "Gefunden: {found} dazu, von welchem Nord die Azimute zählen; erwartet: {expected}. Die Messreihe lässt sich nicht berechnen.",
  "formats.bearing-without-rake":
    "Gefunden: {found}; erwartet: {expected}. Das Element wird als lotrecht angenommen.",
  "formats.budget-unknown":
    'Gefunden: "{found}", keine Geräteklasse; erwartet: {expected}. Die übliche Klasse wird angenommen.',
  "formats.calibration-ended":
    "Kalibrierung {id} wurde vor der Messreihe beendet: {found}; erwartet: {expected}. Sie wurde trotzdem verwendet; neu kalibrieren.",
  "formats.calibration-expired":
    "Gefunden: {found}; erwartet: {expected}. Sie wurde trotzdem verwendet; eine Kalibrierung nennen, die noch galt.",
  "formats.calibration-later":
    "Gefunden: {found}; erwartet: {expected}. Sie wurde verwendet, denn eine Prüfung nach der Messung ist üblich; nachsehen, ob die richtige genannt ist.",
  "formats.calibration-missing":
    "Gefunden: {found} unter den Kalibrierungen der Messreihe; erwartet: {expected}. Die Messreihe wird ohne sie berechnet, ihr Fehler ist nicht bekannt.",
  "formats.calibration-of-other":
    "Gefunden: {found}; erwartet: {expected}. Die Kalibrierung eines anderen Geräts wird nicht verwendet.",
  "formats.calibration-twice":
    "Die Messreihe nennt mehr als eine Kalibrierung derselben Art: {found}; erwartet: {expected}. Die gültige behalten.",
  "formats.calibration-undated":
    "Gefunden: {found} zur Messreihe; ob ihre Kalibrierungen noch galten, kann niemand sagen; erwartet: {expected}.",
  "formats.calibration-unknown":
    "Gefunden: Kalibrierung {found}, die der Auftrag nicht hat; erwartet: {expected}.",
  "formats.calibration-unusable":
    "Kalibrierung {found} hat selbst Fehler und wird nicht verwendet; erwartet: {expected}.",
  "formats.calibration-used-up":
    "Gefunden: {found}; erwartet: {expected}. Sie wurde trotzdem verwendet; neu kalibrieren.",
  "formats.calibration-zero":
    "Gefunden: {found}; erwartet: {expected}. Die Kalibrierung wird nicht verwendet.",
  "formats.cell-angle": 'Gefunden: "{found}"; erwartet: {expected}.',
  "formats.cell-choice": 'Gefunden: "{found}"; erwartet wird eines von: {expected}.',
  "formats.cell-count":
    "Gefunden: {found} Zellen in der Zeile; erwartet: {expected}, so viele wie Überschriften. Ein Trennzeichen fehlt oder ist zu viel, oder die Zeile ist abgeschnitten.",
  "formats.cell-empty": "Gefunden: {found}; erwartet: {expected}. An ihre Stelle wird nichts gesetzt.",
  "formats.cell-not-a-reading":
    'Gefunden: "{found}", was für einen nicht genommenen Messwert steht; erwartet: {expected}. Es wird nie als Zahl gelesen.',
  "formats.cell-number": 'Gefunden: "{found}"; erwartet: {expected}. Es wird nie als 0 gelesen.',
  "formats.cell-range":
    "Gefunden: {found}; erwartet: {expected}. Nach falscher Einheit, verschobener Spalte oder Tippfehler suchen.",
  "formats.cell-time": 'Gefunden: "{found}"; erwartet: {expected}, zum Beispiel 2026-03-02T07:10:00Z.',
  "formats.column-duplicate":
    'Die Überschrift "{found}" steht noch einmal da; erwartet: {expected}. Eine löschen oder umbenennen.',
  "formats.column-missing": 'Gefunden: {found}; erwartet wird eine Spalte mit der Überschrift "{expected}".',
  "formats.column-mistyped":
    'Die Überschrift "{found}" ist nicht bekannt; gemeint ist vielleicht "{expected}". Die Spalte wird übergangen; wenn sie gemeint ist, die Überschrift berichtigen.',
  "formats.column-unit":
    'Gefunden: Überschrift "{found}"; erwartet: {expected}. Die Einheit jeder Zahl steht in ihrer Überschrift; diese ist unbekannt oder fehlt. Die Spalte umrechnen und umbenennen.',
  "formats.column-unknown":
    "Gefunden: {count} Spalten, die nicht zu den folgenden gehören: {expected}. Es sind {found}; sie werden übergangen.",
  "formats.continuous-measures":
    "Gefunden: {found}, fortlaufend aufgezeichnet; erwartet: {expected}. Stattdessen eine Zeile je Halt angeben.",
  "formats.convergence-missing":
    "Der Winkel zählt nicht ab Gitternord, und das Netz ist {found}; erwartet: {expected}. Die Messreihe lässt sich nicht ins Netz drehen.",
  "formats.coordinates-swapped":
    "Ost- und Nordwert scheinen vertauscht: gefunden {found}; erwartet {expected}, neben den anderen Elementen.",
  "formats.count-without-scale":
    "Tiefen sind als {found} angegeben; erwartet: {expected} in der Messreihe. Ohne sie gibt es keine Tiefen.",
  "formats.criteria-set-unknown":
    'Gefunden: "{found}", kein fertiger Satz von Kriterien; erwartet: {expected}.',
  "formats.criterion-field":
    'Gefunden: "{found}"; erwartet: {expected}. Das Kriterium wird ausgelassen, danach wird nichts beurteilt.',
  "formats.criterion-idle":
    "Das Kriterium gilt für {found}, was auf kein Element passt; erwartet: {expected}. Danach wird nichts beurteilt.",
  "formats.criterion-unknown":
    'Gefunden: "{found}", keine Art von Kriterium; erwartet: {expected}. Danach wird nichts beurteilt.',
  "formats.cutoff-outside":
    "Die Kappebene liegt bei {found}; erwartet: {expected}. Sie gilt als nicht angegeben.",
  "formats.decimal-ambiguous":
    'Gefunden: "{found}", was tausend und mehr oder etwas über eins heißen kann; erwartet: {expected}. Nichts in der Datei verrät, was gemeint ist.',
  "formats.decimal-clash":
    'Gefunden: "{found}", mit anderem Dezimalzeichen als "{expected}" in Zeile {other}. Erwartet wird ein Dezimalzeichen je Datei; mit einem neu speichern.',
  "formats.decimal-comma-separator":
    'Gefunden: Zeilen wie "{found}", in denen das Komma Zellen und Dezimalen trennt; erwartet: {expected}.',
  "formats.declination-missing":
    "Der Winkel zählt ab magnetisch Nord, gefunden: {found}; erwartet: {expected}. Die Messreihe lässt sich nicht ins Netz drehen.",
  "formats.depth-and-count": "Gefunden: {found} depth_m und count; {expected}.",
  "formats.depth-beyond-toe":
    "Tiefe {found} m liegt weit unter dem, was gebaut werden sollte; erwartet: {expected}. Ist es das richtige Element, und sind die Tiefen in Metern?",
  "formats.depth-reversal":
    "Tiefe {found} nach {other}; erwartet: {expected} innerhalb einer Fahrt. Fahrt und Reihenfolge der Zeilen prüfen.",
  "formats.depth-step": "Die Tiefe geht von {found}; erwartet: {expected}. Ein Messpunkt kann fehlen.",
  "formats.element-unknown": 'Gefunden: "{found}", das die Liste nicht hat; erwartet: {expected}.',
  "formats.element-unusable": "Die Zeile von Element {found} in der Liste hat Fehler; erwartet: {expected}.",
  "formats.encoding":
    "Gefunden: {found}, das ist kein {expected}. Die Datei neu als {expected} speichern; kein Buchstabe wird geraten.",
  "formats.faces-unpaired": "Gefunden: {found}; erwartet: {expected}. Die Kalibrierung wird nicht verwendet.",
  "formats.file-empty": "Gefunden: {found}; erwartet: {expected}.",
  "formats.file-missing": "Gefunden: keine Datei {found}; erwartet: {expected}.",
  "formats.file-too-large":
    "Gefunden: {found} Byte; erwartet: höchstens {expected}. Die Datei wird nicht gelesen.",
  "formats.groove-missing":
    "Gefunden: {found} für die Nut; erwartet: {expected}. Die Messreihe lässt sich nicht berechnen.",
  "formats.gyro-zero-missing":
    "Gefunden: {found} unter den Kalibrierungen; erwartet: {expected}. Die Drift wird allein der Schlussrichtung entnommen.",
  "formats.gyro-zero-rate":
    "Der Kreiselnullpunkt gibt {found} von Drehrate und Aufzeichnung in Ruhe an; erwartet: {expected}. Die Kalibrierung wird nicht verwendet.",
  "formats.id-repeated":
    "{found} steht ein zweites Mal da (zuerst: {other}); erwartet: {expected}. Das erste gilt.",
  "formats.instrument-unknown": "Gefunden: Gerät {found}, das der Auftrag nicht hat; erwartet: {expected}.",
  "formats.json-choice": "Gefunden: {found}; erwartet wird eines von: {expected}.",
  "formats.json-format":
    'Gefunden: Format {found}; erwartet: "{expected}". Das ist kein Auftrag, der gelesen werden kann.',
  "formats.json-key-repeated":
    "Der Schlüssel {found} steht zweimal da; erwartet: {expected}. Der erste gilt.",
  "formats.json-missing": "Gefunden: {found}; erwartet: {expected}.",
  "formats.json-range": "Gefunden: {found}; erwartet: {expected}.",
  "formats.json-syntax":
    "Das ist kein JSON: gefunden {found}; erwartet {expected}. Der Auftrag kann nicht gelesen werden.",
  "formats.json-type": "Gefunden: {found}; erwartet: {expected}.",
  "formats.json-unknown-key":
    'Der Schlüssel "{found}" ist nicht bekannt und wird übergangen; erwartet: {expected}.',
  "formats.kind-unknown":
    'Gefunden: "{found}", keine Art von Element; erwartet: {expected}. Die Zeile wird ausgelassen.',
  "formats.leg-order": 'Gefunden: Fahrt "{found}" an dieser Stelle; erwartet: {expected}.',
  "formats.line-too-long":
    "Gefunden: eine Zeile mit {found} Zeichen; erwartet: höchstens {expected}. Die Datei ist beschädigt und wird nicht gelesen.",
  "formats.local-north-as-true":
    "Gefunden: Netz {found}; erwartet: {expected}. Der Norden des Netzes wurde als geografisch Nord angenommen.",
  "formats.log-condensed":
    "Fortlaufend aufgezeichnet: Aus {found} Zeilen wurden {expected} Messwerte in Ruhe gebildet.",
  "formats.log-no-stop":
    "In den {found} Zeilen der Aufzeichnung ruht die Sonde nie; erwartet: {expected}. Die Tiefe ansehen, oder mit steady mehr zulassen.",
  "formats.no-criteria":
    "Gefunden: {found}; erwartet: {expected}. Verläufe werden berechnet, aber nichts wird beurteilt.",
  "formats.no-rows": "Gefunden: {found}; erwartet: {expected}.",
  "formats.date-from-calibration":
    "Die Messreihe hat {found}; erwartet: {expected}. Die Missweisung gilt für {used}, den Tag ihrer letzten Kalibrierung.",
  "formats.north-without-date":
    "Die Missweisung ändert sich von Jahr zu Jahr, und gefunden wurde {found} zur Messreihe; erwartet: {expected}. Die Messreihe lässt sich nicht ins Netz drehen.",
  "formats.not-text": "Gefunden: {found}; erwartet: {expected}. Die Datei neu als UTF-8 speichern.",
  "formats.not-xlsx": "Gefunden: {found}; erwartet: {expected}.",
  "formats.not-zip": "Das Archiv kann nicht gelesen werden: gefunden {found}; erwartet {expected}.",
  "formats.opening-missing":
    "Gefunden: {found} für den Anfang; erwartet: {expected}. Die Richtung wird aus den anderen Bezügen zurückgerechnet.",
  "formats.place-far":
    "Die Elemente liegen in {crs} um {found}, erwartet aber nahe Breite und Länge {expected}. Koordinatensystem, Breite und Länge prüfen.",
  "formats.position-far":
    "Gefunden: Ort {found}; erwartet: einer {expected}, wo die anderen sind, {distance} m entfernt.",
  "formats.position-repeated": "Den Ort {found} hat auch {other}; erwartet: {expected}.",
  "formats.quote-open":
    "Ein Anführungszeichen ist nicht geschlossen: gefunden {found}; erwartet {expected} am Ende der Zelle.",
  "formats.rake-without-bearing":
    "Das Element ist geneigt, gefunden: {found} für die Richtung; erwartet: {expected}. Die Zeile wird ausgelassen.",
  "formats.readings-shared":
    "Die Messwertdatei {found} gehört auch zu Messreihe {other}; erwartet: {expected}.",
  "formats.readings-unused":
    "Keine Messreihe nennt die Datei {found}; erwartet: {expected}. Sie wird übergangen.",
  "formats.reference-missing":
    "Gefunden: {found} für den Anfang und kein anderer Richtungsbezug; erwartet: {expected}. Ohne einen hat die Messreihe keine Richtung.",
  "formats.reference-not-at-top":
    "Die Zeile dieses Richtungsbezugs, Zeile {line}, steht bei einer Tiefe von {found} m; erwartet: {expected}. Zeilen mit leg open und close einfügen.",
  "formats.reference-unused": "Gefunden: {found}; erwartet: {expected}. Es wird übergangen.",
  "formats.rest-log-gap":
    "Die Aufzeichnung in Ruhe hat einen Schritt von {found}; erwartet: {expected}. Ihr Rauschen wird berechnet, als wären die Zeilen gleichmäßig.",
  "formats.rest-log-jump":
    "Die Drehrate springt hier um {found} Grad/h, insgesamt an {count} Stellen; erwartet: {expected}. Die Sonde wurde berührt; neu aufzeichnen.",
  "formats.rest-log-short":
    "Die Aufzeichnung in Ruhe dauert {found}; erwartet: {expected}. Was den Kreisel in einer Messreihe begrenzt, zeigt sie nicht.",
  "formats.rest-log-too-short":
    "Die Aufzeichnung in Ruhe hat {found}; erwartet: {expected}. Aus ihr wird kein Nullpunkt gebildet.",
  "formats.rest-log-trend":
    "Die Drehrate ändert sich über die Aufzeichnung um {found} Grad/h; erwartet: {expected} Grad/h. Der Kreisel war nicht warm, oder die Sonde ruhte nicht.",
  "formats.schedule-swapped":
    "Ost- und Nordwerte der ganzen Liste scheinen vertauscht: gefunden etwa {found}; erwartet etwa {expected} am Ort des Auftrags.",
  "formats.section-incomplete":
    "Gefunden: {found}; erwartet: {expected}. Der Querschnitt gilt als nicht angegeben.",
  "formats.spiral-order": "Gefunden: Tiefe {found} in der Verdrillung; erwartet: {expected}.",
  "formats.start-with-tube": "Gefunden: {found}; erwartet: {expected}.",
  "formats.station-repeated":
    "Tiefe {found} wurde schon gemessen, in Zeile {other}; erwartet: {expected}. Beide Messwerte werden verwendet; ist einer falsch, ihn zurückstellen.",
  "formats.stop-without-reading":
    "Der Halt von {seconds} s bei {depth} ergibt keinen Messwert: {found}; erwartet: {expected}.",
  "formats.ties-unmatched": "Gefunden: {found}; erwartet: {expected}.",
  "formats.tilts-impossible":
    "Die beiden Neigungen {found} Grad können nicht zusammen vorkommen; erwartet: {expected}.",
  "formats.time-backwards": "Die Zeit liegt {found} als in der Zeile davor; erwartet: {expected}.",
  "formats.time-midnight":
    'Die Uhrzeit fällt auf "{found}"; erwartet: {expected}. Sie gilt als nächster Tag.',
  "formats.time-mixed":
    'Die Zeit "{found}" ist anders geschrieben als in der ersten Zeile; erwartet: {expected}.',
  "formats.time-without-zone": "Gefunden: {found}; erwartet: {expected}. Sie wird als UTC gelesen.",
  "formats.toe-above-head":
    "Die Höhe des Fußes ist {found}; erwartet: {expected}. Sie gilt als nicht angegeben.",
  "formats.too-few-rows": "Gefunden: {found} Zeilen mit Messwerten; erwartet: {expected}.",
  "formats.too-many":
    "{hidden} weitere Befunde dieser Datei sind nicht gezeigt; die ersten {shown} beheben und neu prüfen.",
  "formats.too-many-rows":
    "Gefunden: {found} Zeilen mit {cells} Zellen; erwartet: höchstens {expected} Zeilen. Die Datei wird nicht gelesen.",
  "formats.tube-not-named":
    "Gefunden: {found} in der Messreihe; erwartet: {expected}. Sie gilt als Messung in der eigenen Bohrung des Elements.",
  "formats.tube-unknown": 'Gefunden: Rohr "{found}"; erwartet: {expected}.',
  "formats.tube-unusable":
    "Die Zeile von Rohr {found} hat Fehler; erwartet: {expected}, die gelesen werden kann.",
  "formats.tube-without-position": "Gefunden: {found}; erwartet: {expected}.",
  "formats.two-schedules": "Gefunden: {found}; erwartet: {expected}. Nur elements.csv wird gelesen.",
  "formats.utf16-read":
    "Gefunden: Text in {found}; erwartet: {expected}. Er wurde trotzdem gelesen; neu als UTF-8 speichern.",
  "formats.xlsx-unreadable":
    "Die Arbeitsmappe kann nicht gelesen werden: gefunden {found}; erwartet {expected}.",
  "formats.zero-not-applied":
    "Gefunden: {found}; erwartet: {expected}. Der Neigungsnullpunkt wird nicht noch einmal angewandt.",
  "formats.zip-damaged":
    "Das Archiv ist beschädigt oder falsch: {found} hat nicht die angegebene Größe oder Prüfsumme. Nichts davon wird verwendet.",
  "formats.zip-link": "Das Archiv enthält einen Verweis, {found}. Nichts wird ausgepackt.",
  "formats.zip-name-twice":
    "Das Archiv enthält {found} zweimal, oder unter Namen, die manche Systeme für einen halten. Nichts wird ausgepackt.",
  "formats.zip-overlap":
    "Dateien des Archivs teilen sich dieselben Bytes ({found}), wie in einem Archiv, das Platten füllen soll. Nichts wird ausgepackt.",
  "formats.zip-packing":
    "{found} ist verschlüsselt oder auf eine Art gepackt, die hier nicht gelesen wird. Das Archiv auf die übliche Art packen.",
  "formats.zip-path":
    "Das Archiv enthält {found}, was aus ihm hinausführt; erwartet: {expected}. Nichts wird ausgepackt.",
  "formats.zip-swells":
    "Das Archiv ergäbe {found} Byte in {files} Dateien; gelesen werden höchstens {expected} Byte. Nichts wird ausgepackt.",
  "formats.zip-without-job": "Gefunden: {found} im Archiv; erwartet: {expected}.",
};
