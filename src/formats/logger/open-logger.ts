import type { Issue } from "#core";
import { Finder, gatherFindings } from "../finding/finder.ts";
import { readXlsxRows } from "../table/read-xlsx.ts";
import { isEmptyCell, type TableRow } from "../table/table.ts";
import { decodeLogger } from "./decode-logger.ts";
import { findTable, isDataRow } from "./find-table.ts";
import { guessColumns } from "./guess-columns.ts";
import { type GuessedConventions, guessConventions } from "./guess-conventions.ts";
import { numberFormOf } from "./logger-numbers.ts";
import { dateOrderOf } from "./logger-times.ts";
import { readSentences } from "./sentences.ts";
import {
  type CellSeparator,
  type Encoding,
  type GivenSettings,
  type Guess,
  givenOr,
  guess,
  type LoggerConventions,
  type LoggerLayout,
  type LoggerSettings,
  type Reason,
} from "./settings.ts";
import { separatorOf, splitText } from "./split-cells.ts";

/** A line above the table, such as "Serial: 0001". */
export interface PreambleLine {
  readonly line: number;
  readonly text: string;
}

/** A logger's file, taken apart: settings with their reasons, and the rows as they stand there. */
export interface LoggerFile {
  readonly name: string;
  readonly settings: LoggerSettings;
  /** by name of the setting: "layout.decimal", "column.0.role", "conventions.ySense" */
  readonly reasons: Readonly<Record<string, Reason>>;
  /** units as the file writes them, by column */
  readonly writtenUnits: readonly string[];
  readonly preamble: readonly PreambleLine[];
  /** rows from the first to the last reading, those between that are none too; no blank ones */
  readonly rows: readonly TableRow[];
  /** lines whose checksum does not fit */
  readonly badLines: readonly number[];
  readonly findings: readonly Issue[];
}

export type OpenedLogger =
  | { readonly ok: true; readonly file: LoggerFile }
  | { readonly ok: false; readonly findings: readonly Issue[] };

interface Split {
  readonly encoding: Guess<Encoding>;
  readonly separator: Guess<CellSeparator>;
  readonly rows: readonly TableRow[];
  /** headings and units that do not stand in a line of their own */
  readonly heads?: { readonly headings: readonly string[]; readonly units: readonly string[] };
  readonly badLines: readonly number[];
}

/**
 * Takes a logger's file apart (CSV, text, .xlsx, sentences with checksum), and guesses what was not given.
 *
 * Every guess comes with how sure it is and why. Nothing is converted yet: `convertLogger` does that.
 *
 * Errors: those of the readers of text and tables; logger.encoding, logger.binary, logger.no-readings.
 */
export async function openLogger(
  bytes: Uint8Array,
  name: string,
  given: GivenSettings = {},
): Promise<OpenedLogger> {
  const found = new Finder(name);
  const split = await splitFile(bytes, given, found);
  const file = split === undefined ? undefined : understand(name, split, given, found);
  return file === undefined ? { ok: false, findings: gatherFindings([found]) } : { ok: true, file };
}

const isWorkbook = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;

async function splitFile(bytes: Uint8Array, given: GivenSettings, found: Finder): Promise<Split | undefined> {
  if (isWorkbook(bytes)) {
    const rows = await readXlsxRows(bytes, found);
    return (
      rows && {
        encoding: guess("workbook", "certain", "logger.why-workbook"),
        separator: guess("workbook", "certain", "logger.why-workbook"),
        rows,
        badLines: [],
      }
    );
  }
  const wanted = given.layout?.encoding === "workbook" ? undefined : given.layout?.encoding;
  const decoded = decodeLogger(bytes, wanted, found);
  if (decoded === undefined) return undefined;
  const { text, encoding } = decoded;
  const asked = given.layout?.separator === "workbook" ? undefined : given.layout?.separator;
  const separator = givenOr(asked, () => separatorOf(text));
  if (separator.value === "sentences") {
    const { headings, units, rows, badLines } = readSentences(text.split("\n"), found);
    return { encoding, separator, rows, heads: { headings, units }, badLines };
  }
  const rows = splitText(text, separator.value, found);
  return rows && { encoding, separator, rows, badLines: [] };
}

function understand(name: string, split: Split, given: GivenSettings, found: Finder): LoggerFile | undefined {
  const table = findTable(split.rows, given.layout);
  if (table === undefined) {
    found.block("logger.no-readings", {}, { found: "no row of numbers", expected: "rows of readings" });
    return undefined;
  }
  const rowAt = (line: number) => split.rows.find((row) => row.line === line);
  const rows = split.rows.filter(
    (row) =>
      row.line >= table.firstLine.value &&
      row.line <= table.lastLine.value &&
      row.cells.some((cell) => !isEmptyCell(cell)),
  );
  const data = rows.filter(isDataRow);
  const numbers = numberFormOf(data, split.separator.value);
  const decimal = givenOr(given.layout?.decimal, () => numbers.decimal);
  const thousands = givenOr(given.layout?.thousands, () => numbers.thousands);
  const dateOrder = givenOr(given.layout?.dateOrder, () => dateOrderOf(data));
  const form = { decimal: decimal.value, thousands: thousands.value, dateOrder: dateOrder.value };
  const headings = split.heads?.headings ?? rowAt(table.headingLine.value)?.cells ?? [];
  const units = split.heads?.units ?? rowAt(table.unitsLine.value)?.cells ?? [];
  const columns = guessColumns(headings, units, data, form, given.columns);
  const conventions = guessConventions(columns, data, form, given.conventions);
  tellRowsAbove(split.rows, table.firstLine.value, found);
  tellFooter(split.rows, table.lastLine.value, found);
  const layout = {
    ...table,
    encoding: split.encoding,
    separator: split.separator,
    decimal,
    thousands,
    dateOrder,
  };
  const reasons: Record<string, Reason> = {};
  for (const [key, { sure, why }] of Object.entries(layout)) reasons[`layout.${key}`] = { sure, why };
  for (const [key, { sure, why }] of Object.entries(conventions))
    reasons[`conventions.${key}`] = { sure, why };
  for (const [index, { role, unit }] of columns.entries()) {
    reasons[`column.${index}.role`] = { sure: role.sure, why: role.why };
    reasons[`column.${index}.unit`] = { sure: unit.sure, why: unit.why };
  }
  return {
    name,
    settings: {
      layout: valuesOf(layout) as unknown as LoggerLayout,
      columns: columns.map(({ heading, role, unit }) => ({ heading, role: role.value, unit: unit.value })),
      conventions: valuesOf<GuessedConventions>(conventions) as unknown as LoggerConventions,
    },
    reasons: given.template === undefined ? reasons : fromTemplate(reasons, given.template),
    writtenUnits: columns.map(({ writtenUnit }) => writtenUnit),
    preamble: preambleOf(split.rows, table.firstLine.value, [table.headingLine.value, table.unitsLine.value]),
    rows,
    badLines: split.badLines,
    findings: gatherFindings([found]),
  };
}

/** What was given came with a template. */
const fromTemplate = (reasons: Readonly<Record<string, Reason>>, name: string): Record<string, Reason> =>
  Object.fromEntries(
    Object.entries(reasons).map(([key, reason]) => [
      key,
      reason.why.code === "logger.why-given"
        ? { ...reason, why: { ...reason.why, code: "logger.why-template", values: { found: name } } }
        : reason,
    ]),
  );

const valuesOf = <T extends object>(guesses: T): Record<string, unknown> =>
  Object.fromEntries(Object.entries(guesses).map(([key, { value }]) => [key, value]));

function preambleOf(
  rows: readonly TableRow[],
  firstLine: number,
  heads: readonly number[],
): readonly PreambleLine[] {
  return rows
    .filter(
      ({ line, cells }) =>
        line < firstLine && !heads.includes(line) && cells.some((cell) => !isEmptyCell(cell)),
    )
    .slice(0, 50)
    .map(({ line, cells }) => ({
      line,
      text: cells
        .map((cell) => String(cell ?? ""))
        .join(" ")
        .trim(),
    }));
}

/** Rows of numbers above the headings may be readings: nothing is passed over in silence. */
function tellRowsAbove(rows: readonly TableRow[], firstLine: number, found: Finder): void {
  const width = rows.find(({ line }) => line === firstLine)?.cells.length;
  const above = rows.filter((row) => row.line < firstLine && row.cells.length === width && isDataRow(row));
  const [first] = above;
  if (first !== undefined)
    found.warning("logger.rows-above", { line: first.line }, { found: above.length, expected: firstLine });
}

function tellFooter(rows: readonly TableRow[], lastLine: number, found: Finder): void {
  const below = rows.filter(({ line, cells }) => line > lastLine && cells.some((cell) => !isEmptyCell(cell)));
  const [first] = below;
  if (first === undefined) return;
  const values = { found: below.length, expected: String(first.cells[0] ?? "").slice(0, 60) };
  found.note("logger.footer", { line: first.line }, values);
}
