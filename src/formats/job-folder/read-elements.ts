import { type DesignElement, elementKind, elementKinds, type NorthEastDown, ned, type Section } from "#core";
import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import { nearestWord } from "../finding/nearest-word.ts";
import type { Column } from "../table/column.ts";
import { readXlsx } from "../table/read-xlsx.ts";
import type { TableRow } from "../table/table.ts";
import { TableReader } from "../table/table-reader.ts";
import type { FolderReader } from "./folder.ts";
import { readCsvFile } from "./read-table-file.ts";

const LEVEL = { kind: "length", min: -15_000, max: 9_000 } as const;
const SIZE = { kind: "length", min: 0.01, max: 100 } as const;
const COORDINATE = { kind: "length", min: -1e8, max: 1e8 } as const;

export const ELEMENT_COLUMNS: readonly Column[] = [
  { name: "element", kind: "text" },
  { name: "kind", kind: "text" },
  { name: "diameter_m", ...SIZE },
  { name: "length_m", ...SIZE },
  { name: "width_m", ...SIZE },
  { name: "orientation_deg", kind: "azimuth", min: -360, max: 360 },
  { name: "easting_m", ...COORDINATE, anyNumber: true },
  { name: "northing_m", ...COORDINATE, anyNumber: true },
  { name: "head_level_m", ...LEVEL },
  { name: "cutoff_level_m", ...LEVEL },
  { name: "toe_level_m", ...LEVEL },
  { name: "rake_deg", kind: "angle", min: 0, max: 90 },
  { name: "rake_bearing_deg", kind: "azimuth", min: -360, max: 360 },
  { name: "group", kind: "text" },
  { name: "sequence", kind: "number", min: -1e9, max: 1e9, anyNumber: true },
  { name: "role", kind: "text" },
  { name: "load_kn", kind: "number", min: 0, max: 1e7, anyNumber: true },
];

export interface ElementsRead {
  readonly elements: readonly DesignElement[];
  /** references that stand in the schedule but whose line cannot be used */
  readonly badIds: ReadonlySet<string>;
}

/**
 * Reads the schedule of the elements, `elements.csv` or the first sheet of `elements.xlsx`.
 *
 * A line whose reference, kind, position, head level or lean cannot be read is told and left out. A level or a section
 * that cannot be right is told and counts as missing.
 *
 * @param finderFor makes the finder of a file.
 * @returns undefined when there is no schedule that can be read.
 * Frame: site NED, metres, radians.
 */
export async function readElements(
  folder: FolderReader,
  finderFor: (file: string) => Finder,
): Promise<ElementsRead | undefined> {
  const csv = folder.read("elements.csv");
  const xlsx = folder.read("elements.xlsx");
  const file = csv === undefined && xlsx !== undefined ? "elements.xlsx" : "elements.csv";
  const found = finderFor(file);
  if (csv === undefined && xlsx === undefined) {
    found.block(
      "formats.file-missing",
      {},
      { found: "no such file", expected: "elements.csv or elements.xlsx" },
    );
    return undefined;
  }
  if (csv !== undefined && xlsx !== undefined)
    found.warning(
      "formats.two-schedules",
      {},
      { found: "elements.csv and elements.xlsx", expected: "one of them" },
    );
  const table = csv === undefined ? await xlsxTable(xlsx!, found) : readCsvFile(csv, ELEMENT_COLUMNS, found);
  if (table === undefined) return undefined;
  const required = ["element", "kind", "easting_m", "northing_m", "head_level_m"];
  for (const name of required) table.require(name);
  if (!required.every((name) => table.has(name))) return undefined;
  if (table.rows.length === 0) {
    found.block(
      "formats.no-rows",
      { line: 1 },
      { found: "headings only", expected: "a line for each element" },
    );
    return undefined;
  }
  return readRows(table, file, found);
}

async function xlsxTable(bytes: Uint8Array, found: Finder): Promise<TableReader | undefined> {
  const sheet = await readXlsx(bytes, found);
  return sheet === undefined ? undefined : new TableReader(sheet, ELEMENT_COLUMNS, found);
}

function readRows(table: TableReader, file: string, found: Finder): ElementsRead {
  const elements: DesignElement[] = [];
  const badIds = new Set<string>();
  const lines = new Map<string, number>();
  for (const row of table.rows) {
    const id = table.text(row, "element", "required");
    if (id === undefined) continue;
    const first = lines.get(id);
    if (first !== undefined) {
      const values = { found: excerpt(id), expected: "another reference", other: `line ${first}` };
      found.error("formats.id-repeated", { line: row.line, field: table.heading("element") }, values);
      continue;
    }
    lines.set(id, row.line);
    const element = readElement(table, row, id, file, found);
    if (element === undefined) badIds.add(id);
    else elements.push(element);
  }
  return { elements, badIds };
}

function readElement(
  table: TableReader,
  row: TableRow,
  id: string,
  file: string,
  found: Finder,
): DesignElement | undefined {
  const kind = readKind(table, row, found);
  const easting = table.number(row, "easting_m", "required");
  const northing = table.number(row, "northing_m", "required");
  const headLevel = table.number(row, "head_level_m", "required");
  const lean = readLean(table, row, found);
  const section = readSection(table, row, kind, found);
  const levels = readLevels(table, row, headLevel, found);
  const rest = {
    group: table.text(row, "group", "optional"),
    sequence: orUndefined(table.number(row, "sequence", "optional")),
    role: table.text(row, "role", "optional"),
    loadKn: orUndefined(table.number(row, "load_kn", "optional")),
    place: { file, line: row.line },
  };
  const head: NorthEastDown = ned(northing, easting, -headLevel);
  const usable = [easting, northing, headLevel].every(Number.isFinite);
  if (kind === undefined || lean === undefined || !usable) return undefined;
  return { id, kind, section, head, ...levels, ...lean, ...rest };
}

const orUndefined = (value: number): number | undefined => (Number.isNaN(value) ? undefined : value);

function readKind(table: TableReader, row: TableRow, found: Finder): string | undefined {
  const kind = table.text(row, "kind", "required")?.toLowerCase();
  if (kind === undefined || elementKind(kind) !== undefined) return kind;
  const known = elementKinds.map((each) => each.id);
  const expected = nearestWord(kind, known) ?? known.join(", ");
  found.error(
    "formats.kind-unknown",
    { line: row.line, field: table.heading("kind") },
    { found: excerpt(kind), expected },
  );
  return undefined;
}

/** Lean and bearing; undefined where the design axis is not known for certain. */
function readLean(
  table: TableReader,
  row: TableRow,
  found: Finder,
): Pick<DesignElement, "rakeRad" | "rakeBearingRad"> | undefined {
  const given = table.isFilled(row, "rake_deg");
  const rake = table.number(row, "rake_deg", "optional");
  const bearing = table.number(row, "rake_bearing_deg", "optional");
  const bearingGiven = table.isFilled(row, "rake_bearing_deg");
  if ((given && Number.isNaN(rake)) || (bearingGiven && Number.isNaN(bearing))) return undefined;
  if (given && rake > 0 && !bearingGiven) {
    const values = { found: "an empty cell", expected: "the bearing towards which the toe goes" };
    found.error("formats.rake-without-bearing", { line: row.line, field: "rake_bearing_deg" }, values);
    return undefined;
  }
  if (!given && bearingGiven) {
    const values = { found: "a bearing without a lean", expected: "rake_deg filled, or neither" };
    found.warning(
      "formats.bearing-without-rake",
      { line: row.line, field: table.heading("rake_bearing_deg") },
      values,
    );
  }
  const leans = given && rake > 0;
  return { rakeRad: leans ? rake : 0, rakeBearingRad: leans ? bearing : undefined };
}

function readSection(
  table: TableReader,
  row: TableRow,
  kindId: string | undefined,
  found: Finder,
): Section | undefined {
  const diameterM = table.number(row, "diameter_m", "optional");
  const lengthM = table.number(row, "length_m", "optional");
  const widthM = table.number(row, "width_m", "optional");
  const orientationRad = table.number(row, "orientation_deg", "optional");
  const sides = ["length_m", "width_m", "orientation_deg"];
  const filled = sides.filter((name) => table.isFilled(row, name));
  const round = table.isFilled(row, "diameter_m");
  const kind = kindId === undefined ? undefined : elementKind(kindId);
  if (!round && filled.length === 0) {
    if (kind?.needsSection === true)
      tellSection(row, "diameter_m", "no section", kind.sections.join(" or "), found);
    return undefined;
  }
  if (round && filled.some((name) => name !== "orientation_deg")) {
    tellSection(row, table.heading("diameter_m"), "a diameter and sides", "one kind of section", found);
    return undefined;
  }
  if (!round && filled.length < sides.length) {
    const lacking = sides.filter((name) => !filled.includes(name));
    tellSection(row, lacking[0]!, `${filled.join(", ")} only`, `${lacking.join(", ")} too`, found);
    return undefined;
  }
  const shape = round ? "round" : "rectangle";
  if (kind !== undefined && !kind.sections.includes(shape)) {
    tellSection(
      row,
      table.heading(round ? "diameter_m" : "length_m"),
      shape,
      kind.sections.join(" or "),
      found,
    );
    return undefined;
  }
  const values = round ? [diameterM] : [lengthM, widthM, orientationRad];
  if (!values.every(Number.isFinite)) return undefined;
  return round ? { shape: "round", diameterM } : { shape: "rectangle", lengthM, widthM, orientationRad };
}

function tellSection(row: TableRow, field: string, what: string, expected: string, found: Finder): void {
  found.error("formats.section-incomplete", { line: row.line, field }, { found: what, expected });
}

/** Levels of cut-off and toe, as depths; a level on the wrong side of another counts as missing. */
function readLevels(
  table: TableReader,
  row: TableRow,
  headLevel: number,
  found: Finder,
): Pick<DesignElement, "cutoffDownM" | "toeDownM"> {
  const cutoff = table.number(row, "cutoff_level_m", "optional");
  const toe = table.number(row, "toe_level_m", "optional");
  const toeWrong = toe >= headLevel;
  if (toeWrong) {
    const values = { found: toe, expected: `below the head at ${headLevel}` };
    found.error("formats.toe-above-head", { line: row.line, field: table.heading("toe_level_m") }, values);
  }
  const cutoffWrong = cutoff > headLevel || (cutoff < toe && !toeWrong);
  if (cutoffWrong) {
    const values = { found: cutoff, expected: `between the head at ${headLevel} and the toe` };
    found.error("formats.cutoff-outside", { line: row.line, field: table.heading("cutoff_level_m") }, values);
  }
  return {
    cutoffDownM: Number.isNaN(cutoff) || cutoffWrong ? undefined : -cutoff,
    toeDownM: Number.isNaN(toe) || toeWrong ? undefined : -toe,
  };
}
