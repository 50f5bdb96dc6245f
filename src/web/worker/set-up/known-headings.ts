import { elementHeadings, tubeHeadings } from "#formats";

/** Headings of spreadsheets that can mean one thing only; those without a unit are lengths or levels in metres. Common practice, no source. */
const ALSO: Readonly<Record<string, string>> = {
  pile: "element",
  pileno: "element",
  pileref: "element",
  panel: "element",
  panelno: "element",
  hole: "element",
  holeno: "element",
  ref: "element",
  reference: "element",
  pfahl: "element",
  pfahlnr: "element",
  bauteil: "element",
  bezeichnung: "element",
  type: "kind",
  art: "kind",
  typ: "kind",
  easting: "easting_m",
  eastingm: "easting_m",
  east: "easting_m",
  eastm: "easting_m",
  rechtswert: "easting_m",
  ostwert: "easting_m",
  northing: "northing_m",
  northingm: "northing_m",
  north: "northing_m",
  northm: "northing_m",
  hochwert: "northing_m",
  nordwert: "northing_m",
  headlevel: "head_level_m",
  commencinglevel: "head_level_m",
  platformlevel: "head_level_m",
  arbeitsebene: "head_level_m",
  cutofflevel: "cutoff_level_m",
  cutoff: "cutoff_level_m",
  kappebene: "cutoff_level_m",
  kapphöhe: "cutoff_level_m",
  toelevel: "toe_level_m",
  toe: "toe_level_m",
  fußhöhe: "toe_level_m",
  diameterm: "diameter_m",
  diametermm: "diameter_mm",
  durchmesserm: "diameter_m",
  durchmessermm: "diameter_mm",
  wall: "group",
  wand: "group",
  gruppe: "group",
  no: "sequence",
  order: "sequence",
  reihenfolge: "sequence",
  tubeno: "tube",
  rohr: "tube",
};

const OURS = new Set([...elementHeadings, ...tubeHeadings]);
const bare = (heading: string) => heading.toLowerCase().replaceAll(/[^\p{L}\p{N}]/gu, "");
/** Ours, written with spaces, capitals or brackets: "Head level (m)". */
const ALIKE = new Map([...OURS].map((heading) => [bare(heading), heading]));

export interface NamedTable {
  readonly text: string;
  /** [as written, as read] */
  readonly headings: readonly (readonly [string, string])[];
  /** whether lines are of tubes */
  readonly isTubes: boolean;
}

/** Puts our headings in the place of those that mean the same; lines and cells stay where they are. */
export function nameHeadings(text: string): NamedTable {
  const clean = text.replace(/^\uFEFF/, "");
  const lineEnd = /\r\n|\n|\r/;
  const lines = clean.split(lineEnd);
  const first = lines.findIndex((line) => line.trim() !== "");
  if (first < 0) return { text: clean, headings: [], isTubes: false };
  const separator = separatorOf(lines[first]!);
  const taken: (readonly [string, string])[] = [];
  const cells = lines[first]!.split(separator).map((cell) => {
    const heading = cell.trim().replaceAll(/^"|"$/g, "");
    if (OURS.has(heading)) return heading;
    const ours = ALIKE.get(bare(heading)) ?? ALSO[bare(heading)];
    if (ours === undefined) return cell;
    taken.push([heading, ours]);
    return ours;
  });
  lines[first] = cells.join(separator);
  return { text: lines.join("\n"), headings: taken, isTubes: cells.includes("tube") };
}

/** Adds columns with the same cell in every line, where the table lacks them. */
export function fillColumns(text: string, fill: Readonly<Record<string, string>>): string {
  const lines = text.split("\n");
  const first = lines.findIndex((line) => line.trim() !== "");
  if (first < 0) return text;
  const separator = separatorOf(lines[first]!);
  const held = lines[first]!.split(separator).map((cell) => cell.trim());
  const added = Object.entries(fill).filter(([heading, cell]) => !held.includes(heading) && cell !== "");
  return lines
    .map((line, i) => {
      if (line.trim() === "" || i < first) return line;
      return [line, ...added.map(([heading, cell]) => (i === first ? heading : cell))].join(separator);
    })
    .join("\n");
}

const separatorOf = (line: string): string => ["\t", ";", ","].find((sign) => line.includes(sign)) ?? "\t";
