import type { Sentences } from "../sentences.ts";

export const criteriaSentences: Sentences = {
  "criteria.no-path": "Es wurde nichts vermessen, das beurteilt werden kann.",
  "criteria.nothing-read": "Unterhalb der Ansatzfläche wurde kein Teil des Elements gemessen.",
  "criteria.unread-station":
    "Messpunkt {station} hat keinen brauchbaren Messwert; was davon abhängt, kann nicht beurteilt werden.",
  "criteria.depth-order": "Messpunkt {station} liegt nicht tiefer als der vorige.",
  "criteria.design-incomplete":
    "Das Soll von {element} ist unvollständig: In der Liste fehlt die Lage des Kopfes oder die Richtung der Neigung.",
  "criteria.no-cutoff": "Die Liste gibt keine Kappebene an, die diese Regel braucht.",
  "criteria.no-toe":
    "Die Liste gibt keine Höhe des Fußes an; die Länge, die diese Regel braucht, ist nicht bekannt.",
  "criteria.no-section": "Die Liste gibt weder Durchmesser noch Breite an, die diese Regel braucht.",
  "criteria.no-step":
    "Die Tabelle der Regel hat keine Zeile für dieses Element: {measure} ist {found}, die letzte Zeile endet bei {last}.",
  "criteria.no-limit": "Die Regel gibt keine Grenze an.",
  "criteria.level-not-read": "Höhe {level_m} m wurde nicht gemessen.",
  "criteria.toe-not-read": "Die Messwerte enden zu weit über dem Fuß.",
  "criteria.own-line-not-read":
    "Das Element wurde nicht von Ende zu Ende gemessen; seine eigene Gerade ist nicht bekannt.",
  "criteria.too-short": "Nur {read_m} m wurden gemessen; die Regel braucht {needed_m} m.",
  "criteria.not-downward": "Der Verlauf führt nicht abwärts zur Höhe {level_m} m; dort hat er keine Neigung.",
  "criteria.not-a-number": "Eine Zahl, die das Urteil braucht, fehlt.",
  "criteria.unknown-kind": "Es gibt kein Kriterium namens {kind}.",
  "criteria.no-probability":
    "Zu diesem Wert ist keine Unsicherheit bekannt; er wurde unverändert mit seiner Grenze verglichen statt nach der Regel {rule}.",
  "criteria.neither-shown":
    "Die Wahrscheinlichkeit, eingehalten zu sein, ist {probability}: zu wenig für eingehalten und zu viel für überschritten bei {asked}.",
  "criteria.within-not-shown":
    "Die Wahrscheinlichkeit, eingehalten zu sein, ist {probability}; die vorher vereinbarte Regel verlangt {asked}.",
  "criteria.outside-on-part": "Nur ein Teil wurde gemessen, und schon dieser überschreitet die Grenze.",
  "criteria.only-part-read":
    "Nur ein Teil wurde gemessen; was gemessen wurde, ist eingehalten, das Übrige ist nicht bekannt.",
  "criteria.on-along": "Der Wert ist der Anteil längs.",
  "criteria.on-across": "Der Wert ist der Anteil quer.",
  "criteria.on-rake": "Der Wert ist der Unterschied der Neigung.",
  "criteria.on-bearing": "Der Wert ist der Unterschied der Richtung.",
  "criteria.on-tube": "Der Wert ist der von Rohr {tube}.",
  "criteria.plumb": "Das Element ist lotrecht geplant; es gibt keine Neigung zu beurteilen.",
  "criteria.no-bearing": "Das Element steht lotrecht; es hat keine Richtung zum Vergleich.",
  "criteria.no-tube": "Kein Rohr des Elements wurde vermessen.",
  "criteria.no-probe-length": "Weder die Regel noch das Gerät gibt die Länge der Sonde an.",
  "criteria.no-probe-diameter": "Weder die Regel noch das Gerät gibt den Durchmesser der Sonde an.",
  "criteria.no-inner-diameter":
    "Rohr {tube} hat in der Liste der Rohre keinen Innendurchmesser, und die Regel gibt keinen an.",
  "criteria.clause-from-memory":
    "Der Abschnitt muss vor Gebrauch bestätigt werden: Wert aus dem Gedächtnis ({document}, {clause}).",
};
