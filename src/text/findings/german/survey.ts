import type { Sentences } from "../sentences.ts";

export const surveySentences: Sentences = {
  "survey.no-depth-scale":
    "Messreihe {run} gibt Tiefen als Zählwerte an, nennt aber keine Kalibrierung des Tiefenmaßes; ihre Tiefen sind nicht bekannt.",
  "survey.depth-return":
    "Messreihe {run}: Die Tiefenmessung zeigt am Ende {misclosure_m} m mehr als am Anfang, beide Male oben (Grenze {limit_m} m). Der Unterschied wurde über den Weg verteilt; auf Schlupf prüfen.",
  "survey.upside-down":
    "Messreihe {run}: Die Beschleunigung längs der Bohrung zeigt hier in die falsche Richtung. Der Sensor zeigt die Schwerkraft statt der Gegenkraft, oder die Sonde stand auf dem Kopf. Die Zeile wurde ausgelassen.",
  "survey.magnitude":
    "Messreihe {run}: Die gesamte Beschleunigung schwankt um {spread_percent} % (Grenze {limit_percent} %). Eine ruhende Sonde zeigt in jeder Lage dieselbe; sie hat sich bewegt, oder ein Sensor ist gestört.",
  "survey.zeroed-by-instrument":
    "Messreihe {run} sagt, ihre Neigungen seien schon auf null gesetzt; Kalibrierung {calibration} wurde nicht noch einmal angewandt.",
  "survey.accelerometer-undetermined":
    "Kalibrierung {calibration} hat {positions} Lagen, die die Beschleunigungsmesser nicht bestimmen; mindestens sechs verschiedene sind nötig. Die Messwerte wurden unverändert verwendet.",
  "survey.no-groove-bearing":
    "Messreihe {run} lief in einer Nut, aber es ist keine Richtung der Nut angegeben; ihre Richtungen sind nicht bekannt.",
  "survey.spiral-short":
    "Die Verdrillung von Messreihe {run} ist bis {spiral_to_m} m angegeben, gemessen wurde bis {read_to_m} m. Darunter wurde der letzte Wert beibehalten.",
  "survey.no-heading":
    "Messreihe {run} hat weder eine Anfangs- noch eine Schlussrichtung; ihre Richtungen sind nicht bekannt.",
  "survey.no-latitude":
    "Messreihe {run} trägt ihre Richtung mit einem Kreisel, aber die geografische Breite der Baustelle fehlt; die Erddrehung kann nicht abgezogen werden.",
  "survey.reference-row-unusable":
    "Messreihe {run}: In dieser Zeile ist eine Richtung bekannt, aber Neigung, Tiefe, Zeit oder Drehung der Zeile ist nicht brauchbar.",
  "survey.heading-open":
    "Messreihe {run} hat nur eine bekannte Richtung; eine Drift des Kreisels während der Messung zeigt sich nicht und wurde nicht abgezogen.",
  "survey.closure-model":
    "Messreihe {run} verlangt den Abschluss {asked}; stattdessen wurde {used} verwendet ({why}).",
  "survey.misclosure":
    "Messreihe {run}: Die Schlussrichtung weicht um {misclosure_deg} Grad ab, Grenze {limit_deg} Grad. Der Verlauf ist berechnet, aber danach wird nichts beurteilt.",
  "survey.no-direction":
    "Messreihe {run}: Bei {depth_m} m lässt sich keine Richtung berechnen (Neigung, Drehung oder Azimut fehlt oder ist unmöglich). Der Messwert wurde ausgelassen.",
  "survey.too-few-stations":
    "Messreihe {run} hat {stations} brauchbare Messpunkte; ein Verlauf braucht zwei oder mehr.",
  "survey.face-sum":
    "Messreihe {run}: Bei {depth_m} m weicht die Summe der beiden Lagen um {departure_deg} Grad von der üblichen ab (Streuung {scatter_deg} Grad). Diesen Halt wiederholen.",
  "survey.passes-disagree":
    "Messreihe {run}: Ihre Durchgänge unterscheiden sich stärker, als ihr Rauschen erklärt (Chi-Quadrat {chi_square} bei {degrees_of_freedom}); am meisten bei {depth_m} m, Durchgang {pass}, {largest} Standardabweichungen.",
  "survey.runs-disagree":
    "Messreihen an {element} unterscheiden sich stärker, als ihr Rauschen erklärt (Chi-Quadrat {chi_square} bei {degrees_of_freedom}); am meisten bei {depth_m} m in Messreihe {pass}, {largest} Standardabweichungen.",
  "survey.reversed":
    "Messreihe {run}: Die Richtung dreht sich zwischen {from_m} m und {to_m} m um {dogleg_deg} Grad. Das tut keine Bohrung; ein Messwert, eine Lage oder eine Achse ist falsch.",
  "survey.sharp-turn":
    "Messreihe {run}: Die Richtung dreht sich zwischen {from_m} m und {to_m} m um {dogleg_deg} Grad, stärker, als Bohrungen sich biegen. Die Messwerte dort ansehen.",
  "survey.top-unread":
    "Messreihe {run}: Der erste Messpunkt liegt bei {first_m} m. Von oben bis dorthin wurde die erste Richtung nach oben fortgesetzt.",
  "survey.above-top": "Messreihe {run}: Der erste Messpunkt liegt {first_m} m über dem oberen Bezug.",
  "survey.gap":
    "Messreihe {run}: Zwischen {from_m} m und {to_m} m wurde nichts gemessen (Grenze {limit_m} m). Der Verlauf ist dort durchgezogen, nicht gemessen.",
  "survey.leans-opposite":
    "{element} neigt sich um {lean_deg} Grad nach {bearing_deg} Grad, entgegen der Sollrichtung {design_bearing_deg} Grad. Lagen, Achsen oder die Richtung der Nut können verwechselt sein, oder es ist eine andere Bohrung.",
  "survey.no-run": "Nicht vermessen.",
  "survey.no-usable-run": "Keine Messreihe ließ sich berechnen.",
  "survey.run-blocked": "Der Richtungsabschluss von Messreihe {run} liegt über seiner Grenze.",
};
