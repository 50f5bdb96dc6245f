import type { Language } from "#core";

/** Words that stand on drawings. `{name}` is replaced by the value of that name, see `fillIn`. */
const english = {
  plan: "Plan",
  section: "Section",
  asBuilt: "As-built axis",
  asBuiltStations: "As-built axis with stations",
  designAxis: "Design axis",
  gap: "Not read: line assumed",
  notRead: "Not read",
  head: "Head",
  firstReading: "First reading",
  cutoff: "Cut-off",
  toe: "Toe",
  lowestReading: "Lowest reading",
  worst: "Worst",
  alsoWorst: "{place}, worst",
  allowance: "Allowance",
  outsideFrame: "beyond the frame",
  gridNorth: "Grid north",
  offsetEast: "Offset east",
  offsetNorth: "Offset north",
  level: "Level",
  east: "East",
  west: "West",
  north: "North",
  south: "South",
  along: "Along",
  across: "Across",
  towards: "towards {bearing}",
  atLevel: "at level {level}",
  outlineDesign: "Outline, design",
  outlineAsBuilt: "Outline, {place}",
  seenDown: "Seen down the design axis. Offsets are square to it.",
  seenPlumb: "Seen from above. Offsets from the design axis, each at its own level.",
  offsetsDrawn: "Offsets drawn {factor} times larger than levels.",
  offsetsDrawnSmaller: "Offsets drawn {factor} times smaller than levels.",
  offsetsDrawnTrue: "Offsets and levels drawn to one scale.",
  plumb: "plumb",
  rake: "rake {rake} towards {bearing}",
  against: "{value} against {limit} allowed",
  edition: "edition {edition}",
  clause: "clause {clause}",
  confirmClause: "limit from memory, clause to be confirmed",
  noPath: "No readings that can be drawn",
  noCriterion: "No criterion applies",
  diameter: "diameter {value}",
  panelSize: "{length} × {width}, long side at {bearing}",
} as const;

export type FigureWord = keyof typeof english;

const german: Readonly<Record<FigureWord, string>> = {
  plan: "Grundriss",
  section: "Schnitt",
  asBuilt: "Hergestellte Achse",
  asBuiltStations: "Hergestellte Achse mit Messpunkten",
  designAxis: "Sollachse",
  gap: "Nicht gemessen: Verlauf angenommen",
  notRead: "Nicht gemessen",
  head: "Kopf",
  firstReading: "Erster Messpunkt",
  cutoff: "Kappebene",
  toe: "Fuß",
  lowestReading: "Tiefster Messpunkt",
  worst: "Größte Abweichung",
  alsoWorst: "{place}, größte Abweichung",
  allowance: "Zulässig",
  outsideFrame: "außerhalb des Bildes",
  gridNorth: "Gitternord",
  offsetEast: "Abweichung Ost",
  offsetNorth: "Abweichung Nord",
  level: "Höhe",
  east: "Ost",
  west: "West",
  north: "Nord",
  south: "Süd",
  along: "Längs",
  across: "Quer",
  towards: "Richtung {bearing}",
  atLevel: "auf Höhe {level}",
  outlineDesign: "Umriss, Soll",
  outlineAsBuilt: "Umriss, {place}",
  seenDown: "Blick entlang der Sollachse. Abweichungen rechtwinklig dazu.",
  seenPlumb: "Blick von oben. Abweichungen von der Sollachse auf gleicher Höhe.",
  offsetsDrawn: "Abweichungen {factor}-fach größer gezeichnet als Höhen.",
  offsetsDrawnSmaller: "Abweichungen {factor}-fach kleiner gezeichnet als Höhen.",
  offsetsDrawnTrue: "Abweichungen und Höhen im gleichen Maßstab.",
  plumb: "lotrecht",
  rake: "Neigung {rake} Richtung {bearing}",
  against: "{value}, zulässig {limit}",
  edition: "Ausgabe {edition}",
  clause: "Abschnitt {clause}",
  confirmClause: "Grenzwert aus dem Gedächtnis, Abschnitt zu bestätigen",
  noPath: "Keine darstellbaren Messwerte",
  noCriterion: "Kein Kriterium gilt",
  diameter: "Durchmesser {value}",
  panelSize: "{length} × {width}, lange Seite {bearing}",
};

const figureWords = { en: english, de: german } as const satisfies Record<
  Language,
  Record<FigureWord, string>
>;

/** A word or phrase of a drawing, with its values put in. */
export function figureWord(
  word: FigureWord,
  language: Language,
  values: Readonly<Record<string, string>> = {},
): string {
  return fillIn(figureWords[language][word], values);
}

/** Puts values into the `{name}` places of a phrase; a place without a value stays as it is. */
export function fillIn(phrase: string, values: Readonly<Record<string, string | number>>): string {
  return phrase.replaceAll(/\{(\w+)\}/g, (hole, name: string) => String(values[name] ?? hole));
}
