import type { Issue } from "#core";
import { Finder, MAX_FINDINGS_PER_FILE } from "../finding/finder.ts";
import { decodeText } from "../text/decode-text.ts";
import { acceptedHeadings, type Column } from "./column.ts";
import { type DecimalSign, decimalUse } from "./numbers.ts";
import { placeColumns } from "./place-columns.ts";
import { readCsv } from "./read-csv.ts";
import { countLines, type OddRow, scanRows } from "./scan-rows.ts";
import type { RawTable, TableRow } from "./table.ts";
import { type Need, TableReader } from "./table-reader.ts";

/** Lines from which headings, separator and decimal sign of a long file are told. */
const SAMPLE_LINES = 200;
/** Odd rows that are looked at in detail: each makes at least one finding. */
const ODD_ROWS = MAX_FINDINGS_PER_FILE;

/** What is done with one column. */
export interface LongColumn {
  readonly name: string;
  readonly need: Need;
  /** takes a number in core units */
  readonly takeNumber?: (row: number, value: number) => void;
  /** takes the text of a column without numbers; false where it cannot be meant */
  readonly takeText?: (row: number, text: string, line: number) => boolean;
  /** for a column of texts: makes the finding for a cell that cannot be meant */
  readonly check?: (table: TableReader, row: TableRow, found: Finder) => void;
}

/** A CSV file of many rows: its headings are known, its rows can be gone through. */
export interface LongCsv {
  /** headings only: to ask which columns there are */
  readonly head: TableReader;
  readonly rowsAtMost: number;
  /** Goes through the rows once. @returns how many there are. */
  scan(columns: readonly LongColumn[], onRow: (row: number, line: number) => void): number;
}

/**
 * Opens a CSV file of up to millions of rows, by the same rules as a short one, in time and memory that grow in proportion.
 *
 * Rows are never held as texts: each number goes straight to where it is wanted. Rows in which something is odd are read
 * again by the reader of short files, which makes the findings. A file with double quotes is left to that reader as a whole.
 *
 * @returns undefined when no row of it can be read.
 */
export function readLongCsv(
  bytes: Uint8Array,
  columns: readonly Column[],
  found: Finder,
): LongCsv | undefined {
  const text = decodeText(bytes, found);
  if (text === undefined) return undefined;
  const known = new Set(columns.flatMap((column) => acceptedHeadings(column).map((as) => as.heading)));
  if (text.includes('"')) {
    const table = readCsv(text, known, found);
    return table === undefined ? undefined : fromShortReader(table, columns, found);
  }
  const headEnd = endOfLines(text, SAMPLE_LINES);
  const sample = readCsv(text.slice(0, headEnd), known, new Finder(""));
  if (sample === undefined) {
    // only a file without headings comes here: told once more, where it is heard
    readCsv(text.slice(0, headEnd), known, found);
    return undefined;
  }
  return fromScanner(text, sample, columns, known, found);
}

function fromShortReader(table: RawTable, columns: readonly Column[], found: Finder): LongCsv {
  const head = new TableReader(table, columns, found);
  return {
    head,
    rowsAtMost: table.rows.length,
    scan(wanted, onRow) {
      for (const [index, row] of table.rows.entries()) {
        onRow(index, row.line);
        for (const column of wanted) readWithFindings(head, row, column, found, index);
      }
      return table.rows.length;
    },
  };
}

/** Reads one cell by the rules of short files; with `index`, its value is taken. */
function readWithFindings(
  table: TableReader,
  row: TableRow,
  column: LongColumn,
  found: Finder,
  index?: number,
): void {
  const { name, need, takeNumber, takeText, check } = column;
  if (takeText === undefined) {
    const value = table.number(row, name, need);
    if (index !== undefined && !Number.isNaN(value)) takeNumber?.(index, value);
    return;
  }
  const text = table.text(row, name, need);
  if (text === undefined) return;
  if (index === undefined || !takeText(index, text, row.line)) check?.(table, row, found);
}

function fromScanner(
  text: string,
  sample: RawTable,
  columns: readonly Column[],
  known: ReadonlySet<string>,
  found: Finder,
): LongCsv {
  const head = new TableReader({ ...sample, rows: [] }, columns, found);
  const { placed } = placeColumns(sample, columns, new Finder(""));
  const start = endOfLines(text, sample.headingLine);
  const layout = {
    start,
    line: sample.headingLine + 1,
    separator: sample.separator!,
    headings: sample.headings.length,
    sign: usualSign(sample, [...placed.values()]),
  };
  return {
    head,
    rowsAtMost: countLines(text, start),
    scan(wanted, onRow) {
      const odd: OddRow[] = [];
      let more = 0;
      const scanned = wanted.flatMap((column) => {
        const place = placed.get(column.name);
        return place === undefined ? [] : [{ ...column, placed: place }];
      });
      const rows = scanRows(text, layout, scanned, onRow, (row) => {
        if (odd.length < ODD_ROWS) odd.push(row);
        else more += 1;
      });
      if (odd.length > 0) tellOddRows(text, sample, odd, columns, wanted, known, found);
      found.hidden += more;
      if (more > 0) found.hiddenSeverity = "error";
      return rows;
    },
  };
}

/** Reads the odd rows below a sample of usual ones, so that what is usual for the file is known, and tells where they really stand. */
function tellOddRows(
  text: string,
  sample: RawTable,
  odd: readonly OddRow[],
  columns: readonly Column[],
  wanted: readonly LongColumn[],
  known: ReadonlySet<string>,
  found: Finder,
): void {
  const oddLines = new Set(odd.map(({ line }) => line));
  const lines = text.slice(0, endOfLines(text, SAMPLE_LINES)).split("\n");
  const usual = lines.map((content, i) => ({ line: i + 1, text: content }));
  const heading = usual[sample.headingLine - 1]!;
  const before = usual.filter(({ line }) => line > sample.headingLine && !oddLines.has(line));
  const shown = [heading, ...before, ...odd];
  const mine = new Finder("");
  const table = readCsv(shown.map((row) => row.text).join("\n"), known, mine);
  if (table !== undefined) {
    const reader = new TableReader(table, columns, mine);
    for (const row of table.rows)
      if (oddLines.has(shown[row.line - 1]!.line))
        for (const column of wanted) readWithFindings(reader, row, column, mine);
  }
  for (const issue of mine.issues) pass(issue, shown, found);
  if (mine.blocked) found.blocked = true;
  found.hidden += mine.hidden;
}

/** Findings of the headings were made when the file was opened. */
function pass(issue: Issue, shown: readonly { readonly line: number }[], found: Finder): void {
  const { line, field } = issue.place;
  if (line === undefined || line === 1) return;
  const at = { line: shown[line - 1]!.line, ...(field === undefined ? {} : { field }) };
  const { other } = issue.values;
  const values =
    typeof other === "number" ? { ...issue.values, other: shown[other - 1]?.line ?? other } : issue.values;
  if (issue.severity === "error") found.error(issue.code, at, values);
  else if (issue.severity === "warning") found.warning(issue.code, at, values);
  else found.note(issue.code, at, values);
}

/** Decimal sign that most number cells of the first rows show; undefined where none shows any. */
function usualSign(
  sample: RawTable,
  placed: readonly { readonly index: number; readonly kind: Column["kind"] }[],
): DecimalSign | undefined {
  const numeric = placed.filter(({ kind }) => kind !== "text" && kind !== "word" && kind !== "time");
  let [commas, points] = [0, 0];
  for (const { cells } of sample.rows)
    for (const { index } of numeric) {
      const use = decimalUse(cells[index]);
      if (use === "comma") commas += 1;
      if (use === "point") points += 1;
    }
  if (commas + points === 0) return sample.separator === "," ? "." : undefined;
  return commas > points ? "," : ".";
}

/** Place after so many line ends. */
function endOfLines(text: string, count: number): number {
  let end = 0;
  for (let line = 0; line < count; line++) {
    const newline = text.indexOf("\n", end);
    if (newline < 0) return text.length;
    end = newline + 1;
  }
  return end;
}
