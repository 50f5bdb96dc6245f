import type { Words } from "./say.ts";

/**
 * Cautions for those who work at holes. First two after California Title 8 section 1542 (a) (3) and Ohio DOT specification item 524, the others common
 * practice, no source.
 */
export const cautionWords: readonly Words[] = [
  {
    en: "Keep every bore and tube barricaded or securely covered. Never leave an open hole uncovered; protect against falls at its edge.",
    de: "Jede Bohrung und jedes Rohr absperren oder sicher abdecken. Nie ein Loch offen lassen; am Rand gegen Absturz sichern.",
  },
  {
    en: "Never enter a bore to survey it.",
    de: "Nie zum Vermessen in eine Bohrung steigen.",
  },
  {
    en: "Agree an exclusion zone and a stop signal with the plant operator; no survey under hanging loads or within the slewing radius.",
    de: "Sperrbereich und Haltezeichen mit der Geräteführung vereinbaren; nicht unter hängenden Lasten oder im Schwenkbereich messen.",
  },
  {
    en: "Slurry, cement water, brine, liquid nitrogen and ground gas can hurt or suffocate; open capped tubes slowly.",
    de: "Stützflüssigkeit, Zementwasser, Sole, flüssiger Stickstoff und Bodengas können verletzen oder ersticken; verschlossene Rohre langsam öffnen.",
  },
];

/** What a result does not say; every report carries all of them. */
export const disclaimerWords: readonly Words[] = [
  {
    en: "Results describe the tube, casing or bore that was surveyed, at the date and in the state named, and nothing else.",
    de: "Die Ergebnisse beschreiben das vermessene Rohr, die Verrohrung oder die Bohrung zum genannten Zeitpunkt und Zustand, sonst nichts.",
  },
  {
    en: "Statements of conformity hold only for the elements tested, the criteria and the decision rule named; another rule may give another answer.",
    de: "Aussagen zur Einhaltung gelten nur für die gemessenen Bauteile, die genannten Kriterien und die genannte Entscheidungsregel; eine andere Regel kann anders antworten.",
  },
  {
    en: "This report does not design, certify or accept foundations. Structural and geotechnical consequences are for the designer; contract, local codes and law prevail over any value in here.",
    de: "Dieser Bericht bemisst, bescheinigt und nimmt keine Gründung ab. Folgen für Tragwerk und Baugrund beurteilt die Planung; Vertrag, örtliche Normen und Gesetz gehen jedem Wert hierin vor.",
  },
  {
    en: "Limits are those typed for this job. Check them against the current edition of each document.",
    de: "Die Grenzwerte sind die für diesen Auftrag eingegebenen. Sie sind an der gültigen Ausgabe jedes Dokuments zu prüfen.",
  },
  {
    en: "Where law or contract asks for a licensed engineer or surveyor, that person must review and sign.",
    de: "Wo Gesetz oder Vertrag eine zugelassene Fachperson verlangen, muss diese prüfen und unterschreiben.",
  },
  {
    en: "Uncertainties rest on what was declared: calibrations, references, clearances, survey of the heads.",
    de: "Die Unsicherheiten beruhen auf den Angaben: Kalibrierungen, Bezüge, Spiel der Sonde, Einmessung der Köpfe.",
  },
  {
    en: "Values between stations are interpolated and marked; nothing is computed or judged beyond the last station.",
    de: "Werte zwischen Messpunkten sind interpoliert und gekennzeichnet; jenseits des letzten Messpunkts wird nichts berechnet oder beurteilt.",
  },
  {
    en: "Soundness of concrete, bearing capacity and ground are outside of the scope.",
    de: "Betongüte, Tragfähigkeit und Baugrund sind nicht Gegenstand.",
  },
];
