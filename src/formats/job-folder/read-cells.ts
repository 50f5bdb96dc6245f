import { fail, type Issue, ok, type Result } from "#core";
import { excerpt } from "../finding/excerpt.ts";
import { Finder } from "../finding/finder.ts";
import { parseJson } from "../json/parse-json.ts";
import { type CellTable, cellsOf } from "../table/cells.ts";
import { acceptedHeadings, type Column } from "../table/column.ts";
import { readCsv } from "../table/read-csv.ts";
import { readXlsx } from "../table/read-xlsx.ts";
import { decodeText } from "../text/decode-text.ts";
import type { FolderReader } from "./folder.ts";
import { ELEMENT_COLUMNS } from "./read-elements.ts";
import { MAX_SETTINGS_BYTES } from "./read-job-folder.ts";
import { TUBE_COLUMNS, TUBES_FILE } from "./read-tubes.ts";
import { READINGS_COLUMNS } from "./readings-columns.ts";
import { JOB_FORMAT } from "./schema/job-schema.ts";

const SETTINGS_FILE = "job.json";

/**
 * job.json as it stands there, not held against its schema.
 *
 * Errors: formats.file-missing, formats.json-syntax, formats.json-key-repeated, formats.json-format, and those of decodeText.
 */
export function readSettingsJson(
  folder: FolderReader,
): Result<Readonly<Record<string, unknown>>, readonly Issue[]> {
  const found = new Finder(SETTINGS_FILE);
  const bytes = folder.read(SETTINGS_FILE);
  if (bytes === undefined)
    found.block("formats.file-missing", {}, { found: "no such file", expected: SETTINGS_FILE });
  const text = bytes === undefined ? undefined : decodeText(bytes, found, MAX_SETTINGS_BYTES);
  if (text === undefined) return fail(found.issues);
  const parsed = parseJson(text);
  if (!parsed.ok) {
    const { line, ...values } = parsed.error;
    found.block("formats.json-syntax", { line }, values);
    return fail(found.issues);
  }
  const { value, repeatedKeys } = parsed.value;
  for (const { path, line } of repeatedKeys)
    found.block(
      "formats.json-key-repeated",
      { line, field: path },
      { found: path, expected: "each key once" },
    );
  const settings = value as Readonly<Record<string, unknown>> | null;
  if (typeof settings !== "object" || settings?.["format"] !== JOB_FORMAT)
    found.block("formats.json-format", { field: "format" }, { found: excerpt(value), expected: JOB_FORMAT });
  return found.blocked ? fail(found.issues) : ok(settings!);
}

const namesOf = (columns: readonly Column[]): readonly string[] => columns.map(({ name }) => name);

/** Headings of the schedule, of the tubes and of readings, as the contract orders them. */
export const elementHeadings = namesOf(ELEMENT_COLUMNS);
export const tubeHeadings = namesOf(TUBE_COLUMNS);
export const readingsHeadings = namesOf(READINGS_COLUMNS);

/**
 * Every cell of the schedule, as `cellsOf` gives them.
 *
 * @returns undefined where there is no schedule. Errors: those of the readers of tables.
 */
export async function readElementCells(
  folder: FolderReader,
): Promise<Result<CellTable | undefined, readonly Issue[]>> {
  const csv = folder.read("elements.csv");
  if (csv !== undefined) return csvCells(csv, "elements.csv", ELEMENT_COLUMNS);
  const xlsx = folder.read("elements.xlsx");
  if (xlsx === undefined) return ok(undefined);
  const found = new Finder("elements.xlsx");
  const table = await readXlsx(xlsx, found);
  const cells = table === undefined ? undefined : cellsOf(table, ELEMENT_COLUMNS, found);
  return cells === undefined ? fail(found.issues) : ok(cells);
}

/** Every cell of tubes.csv; undefined where there is none. Errors: those of the readers of tables. */
export function readTubeCells(folder: FolderReader): Result<CellTable | undefined, readonly Issue[]> {
  const bytes = folder.read(TUBES_FILE);
  return bytes === undefined ? ok(undefined) : csvCells(bytes, TUBES_FILE, TUBE_COLUMNS);
}

/** Every cell of a readings file. Errors: those of the readers of tables. */
export const readReadingsCells = (bytes: Uint8Array, file: string): Result<CellTable, readonly Issue[]> =>
  csvCells(bytes, file, READINGS_COLUMNS);

function csvCells(
  bytes: Uint8Array,
  file: string,
  columns: readonly Column[],
): Result<CellTable, readonly Issue[]> {
  const found = new Finder(file);
  const text = decodeText(bytes, found);
  const known = new Set(columns.flatMap((column) => acceptedHeadings(column).map((as) => as.heading)));
  const table = text === undefined ? undefined : readCsv(text, known, found);
  const cells = table === undefined || found.blocked ? undefined : cellsOf(table, columns, found);
  return cells === undefined ? fail(found.issues) : ok(cells);
}
