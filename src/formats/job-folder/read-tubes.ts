import { type AccessTube, type DesignElement, designDirection, ned } from "#core";
import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import type { Column } from "../table/column.ts";
import type { TableRow } from "../table/table.ts";
import type { TableReader } from "../table/table-reader.ts";
import type { FolderReader } from "./folder.ts";
import type { ElementsRead } from "./read-elements.ts";
import { readCsvFile } from "./read-table-file.ts";

export const TUBES_FILE = "tubes.csv";

export const TUBE_COLUMNS: readonly Column[] = [
  { name: "element", kind: "text" },
  { name: "tube", kind: "text" },
  { name: "easting_m", kind: "length", min: -1e8, max: 1e8, anyNumber: true },
  { name: "northing_m", kind: "length", min: -1e8, max: 1e8, anyNumber: true },
  { name: "offset_east_m", kind: "length", min: -100, max: 100 },
  { name: "offset_north_m", kind: "length", min: -100, max: 100 },
  { name: "top_level_m", kind: "length", min: -15_000, max: 9_000 },
  { name: "inner_diameter_mm", kind: "length", min: 0.005, max: 10 },
  { name: "length_m", kind: "length", min: 0.01, max: 15_000 },
];

export interface TubesRead {
  readonly tubes: readonly AccessTube[];
  /** `tubeKey` of tubes that stand in the file but whose line cannot be used */
  readonly badKeys: ReadonlySet<string>;
  /** the file is there but no line of it could be read */
  readonly unreadable: boolean;
}

/** One text for an element and a tube of it. */
export const tubeKey = (elementId: string, tubeId: string): string => JSON.stringify([elementId, tubeId]);

/**
 * Reads `tubes.csv`, if there is one: the as-built heads of the access tubes.
 *
 * A head is given by coordinates, or by its offset from the element's design axis at the tube's top level.
 *
 * Frame: site NED, metres.
 */
export function readTubes(folder: FolderReader, schedule: ElementsRead, found: Finder): TubesRead {
  const bytes = folder.read(TUBES_FILE);
  if (bytes === undefined) return { tubes: [], badKeys: new Set(), unreadable: false };
  const table = readCsvFile(bytes, TUBE_COLUMNS, found);
  const required = ["element", "tube"];
  for (const name of required) table?.require(name);
  if (table === undefined || !required.every((name) => table.has(name)))
    return { tubes: [], badKeys: new Set(), unreadable: true };
  const elements = new Map(schedule.elements.map((element) => [element.id, element]));
  const tubes: AccessTube[] = [];
  const badKeys = new Set<string>();
  const lines = new Map<string, number>();
  for (const row of table.rows) {
    const elementId = table.text(row, "element", "required");
    const id = table.text(row, "tube", "required");
    if (elementId === undefined || id === undefined) continue;
    const key = tubeKey(elementId, id);
    const first = lines.get(key);
    if (first !== undefined) {
      const values = {
        found: excerpt(`${elementId} ${id}`),
        expected: "another reference",
        other: `line ${first}`,
      };
      found.error("formats.id-repeated", { line: row.line, field: table.heading("tube") }, values);
      continue;
    }
    lines.set(key, row.line);
    const tube = readTube(table, row, elementId, id, elements, schedule, found);
    if (tube === undefined) badKeys.add(key);
    else tubes.push(tube);
  }
  return { tubes, badKeys, unreadable: false };
}

function readTube(
  table: TableReader,
  row: TableRow,
  elementId: string,
  id: string,
  elements: ReadonlyMap<string, DesignElement>,
  schedule: ElementsRead,
  found: Finder,
): AccessTube | undefined {
  const element = elements.get(elementId);
  if (element === undefined && !schedule.badIds.has(elementId)) {
    const values = { found: excerpt(elementId), expected: "an element of the schedule" };
    found.error("formats.element-unknown", { line: row.line, field: table.heading("element") }, values);
  }
  const inner = table.number(row, "inner_diameter_mm", "optional");
  const length = table.number(row, "length_m", "optional");
  const absolute = readPair(table, row, "easting_m", "northing_m", found);
  const offset = readPair(table, row, "offset_east_m", "offset_north_m", found);
  if (absolute === undefined && offset === undefined && !hasBadPair(table, row)) {
    const values = {
      found: "neither",
      expected: "easting_m and northing_m, or offset_east_m and offset_north_m",
    };
    found.error(
      "formats.tube-without-position",
      { line: row.line, field: table.heading("easting_m") },
      values,
    );
  }
  // a tube placed by its offset starts at the commencing surface unless its own top level is given
  const given = table.number(row, "top_level_m", absolute === undefined ? "optional" : "required");
  const topLevel =
    Number.isNaN(given) && absolute === undefined && element !== undefined ? -element.head.down : given;
  if (element === undefined || Number.isNaN(topLevel)) return undefined;
  const axis = axisAtLevel(element, topLevel);
  const east = absolute?.east ?? axis.east + (offset?.east ?? Number.NaN);
  const north = absolute?.north ?? axis.north + (offset?.north ?? Number.NaN);
  if (!(Number.isFinite(east) && Number.isFinite(north))) return undefined;
  return {
    elementId,
    id,
    head: ned(north, east, -topLevel),
    // coordinates say where the tube is, not where it stands in the element
    offsetInElement: offset,
    innerDiameterM: Number.isNaN(inner) ? undefined : inner,
    lengthM: Number.isNaN(length) ? undefined : length,
    place: { file: TUBES_FILE, line: row.line },
  };
}

/** Both of a pair of columns, or neither. */
function readPair(
  table: TableReader,
  row: TableRow,
  eastName: string,
  northName: string,
  found: Finder,
): { east: number; north: number } | undefined {
  const east = table.number(row, eastName, "optional");
  const north = table.number(row, northName, "optional");
  const eastFilled = table.isFilled(row, eastName);
  if (eastFilled !== table.isFilled(row, northName)) {
    const lacking = eastFilled ? northName : eastName;
    const values = { found: "an empty cell", expected: `${eastName} and ${northName}` };
    found.error("formats.cell-empty", { line: row.line, field: lacking }, values);
  }
  return Number.isFinite(east) && Number.isFinite(north) ? { east, north } : undefined;
}

const hasBadPair = (table: TableReader, row: TableRow): boolean =>
  ["easting_m", "northing_m", "offset_east_m", "offset_north_m"].some((name) => table.isFilled(row, name));

/** Point of the design axis, also above its head, at a level; the head itself for a level axis, which has no such point. */
function axisAtLevel(element: DesignElement, level: number): { north: number; east: number } {
  const direction = designDirection(element);
  if (direction.down < 1e-6) return element.head;
  const along = (-level - element.head.down) / direction.down;
  return {
    north: element.head.north + along * direction.north,
    east: element.head.east + along * direction.east,
  };
}
