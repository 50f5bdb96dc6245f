import Papa from "papaparse";
import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import type { RawTable, TableRow } from "./table.ts";

const SEPARATORS = [",", ";", "\t"] as const;
type Separator = (typeof SEPARATORS)[number];
/** More rows and cells than any run or schedule has; a file with more is not taken apart at all. */
const MAX_ROWS = 1_000_000;
const MAX_CELLS = 8_000_000;

/**
 * Splits the text of a CSV file into headings and rows; says which line each row begins on, also after quoted line breaks.
 *
 * Blank lines are passed over. A row with more or fewer cells than headings is a finding: its cells cannot be told apart,
 * so it is not used. Empty cells after the last heading do no harm.
 *
 * @param known headings of the contract; the separator that splits the first line into most of them is the file's.
 * @returns the table, or undefined when the file is blocked.
 * Errors: formats.quote-open, formats.cell-count, formats.decimal-comma-separator, formats.too-many-rows.
 */
export function readCsv(text: string, known: ReadonlySet<string>, found: Finder): RawTable | undefined {
  const separator = separatorOf(text, known);
  const rows = splitRows(text, separator, found);
  if (rows === undefined) return undefined;
  const filled = rows.filter((row) =>
    row.cells.some((cell) => cell !== undefined && String(cell).trim() !== ""),
  );
  const [head, ...body] = filled;
  if (head === undefined) {
    found.block("formats.file-empty", { line: 1 }, { found: "no headings", expected: "a line of headings" });
    return undefined;
  }
  const headings = head.cells.map((cell) => String(cell ?? "").trim());
  while (headings.at(-1) === "") headings.pop();
  const matching = body.filter((row) => hasCells(row, headings.length, found));
  if (
    matching.length === 0 &&
    body.length > 0 &&
    separator === "," &&
    looksLikeDecimalCommas(body, headings.length)
  )
    found.block(
      "formats.decimal-comma-separator",
      { line: body[0]!.line },
      { found: excerpt(lineOf(text, body[0]!.line)), expected: "; or tab between cells, or decimal points" },
    );
  return { headings, headingLine: head.line, separator, rows: matching };
}

/**
 * Splits a text into rows of cells, quoted cells too; each row has the line on which it begins.
 *
 * @returns undefined when the file is blocked. Errors: formats.quote-open, formats.too-many-rows.
 */
export function splitRows(text: string, separator: string, found: Finder): TableRow[] | undefined {
  const size = countsOf(text, separator);
  if (size.rows > MAX_ROWS || size.cells > MAX_CELLS) {
    const values = { found: size.rows, cells: size.cells, expected: MAX_ROWS };
    found.block("formats.too-many-rows", {}, values);
    return undefined;
  }
  const parsed = Papa.parse<string[]>(text, { delimiter: separator, newline: "\n", header: false });
  const open = parsed.errors.find((error) => error.type === "Quotes");
  const rows = withLines(parsed.data);
  if (open !== undefined) {
    const line = rows[open.row ?? 0]?.line ?? 1;
    found.block("formats.quote-open", { line }, { found: excerpt(lineOf(text, line)), expected: '"' });
    return undefined;
  }
  return rows;
}

function separatorOf(text: string, known: ReadonlySet<string>): Separator {
  const first = text.split("\n", 50).find((line) => line.trim() !== "") ?? "";
  let best: Separator = ",";
  let bestScore = -1;
  for (const separator of SEPARATORS) {
    const cells = Papa.parse<string[]>(first, { delimiter: separator, newline: "\n" }).data[0] ?? [];
    const recognised = cells.filter((cell) => known.has(cell.trim().toLowerCase())).length;
    const score = recognised * 1000 + cells.length;
    if (score > bestScore) {
      best = separator;
      bestScore = score;
    }
  }
  return best;
}

/** An upper bound: separators and line breaks inside quotes are counted too. */
function countsOf(text: string, separator: string): { rows: number; cells: number } {
  const mark = separator.charCodeAt(0);
  let rows = 1;
  let cells = 1;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === LINE_BREAK) rows += 1;
    if (code === mark || code === LINE_BREAK) cells += 1;
  }
  return { rows, cells };
}

const LINE_BREAK = 10;

function withLines(data: readonly (readonly string[])[]): TableRow[] {
  let line = 1;
  return data.map((cells) => {
    const row = { line, cells };
    line += 1;
    for (const cell of cells) line += cell.split("\n").length - 1;
    return row;
  });
}

function hasCells(row: TableRow, expected: number, found: Finder): boolean {
  const extra = row.cells.slice(expected);
  const tooMany = extra.some((cell) => String(cell ?? "").trim() !== "");
  if (row.cells.length >= expected && !tooMany) return true;
  found.block("formats.cell-count", { line: row.line }, { found: row.cells.length, expected });
  return false;
}

/** Every row is too long by as much as decimal commas between unquoted numbers would make it, and holds nothing but digits. */
function looksLikeDecimalCommas(rows: readonly TableRow[], expected: number): boolean {
  return rows.every(
    (row) =>
      row.cells.length > expected &&
      row.cells.length <= 2 * expected &&
      row.cells.filter((cell) => /^\s*[+-]?\d+\s*$/.test(String(cell))).length > row.cells.length / 2,
  );
}

const lineOf = (text: string, line: number): string => text.split("\n", line)[line - 1] ?? "";
