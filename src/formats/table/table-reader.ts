import { radiansFromDegrees } from "#core";
import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import { azimuthInCell, degreesInCell } from "./angles.ts";
import type { Column, PlacedColumn } from "./column.ts";
import { type DecimalSign, decimalUse, mayBeThousands, numberInCell } from "./numbers.ts";
import { placeColumns } from "./place-columns.ts";
import { type Cell, isEmptyCell, type RawTable, type TableRow } from "./table.ts";

export type Need = "required" | "optional";

/** Reads the cells of one table by the columns of its contract. Angles come back in radians, lengths in metres. */
export class TableReader {
  readonly rows: readonly TableRow[];
  readonly #found: Finder;
  readonly #headingLine: number;
  readonly #placed: ReadonlyMap<string, PlacedColumn>;
  readonly #unreadable: ReadonlySet<string>;
  readonly #sign: DecimalSign;

  constructor(table: RawTable, columns: readonly Column[], found: Finder) {
    this.#found = found;
    this.#headingLine = table.headingLine;
    const { placed, unreadable } = placeColumns(table, columns, found);
    this.#placed = placed;
    this.#unreadable = unreadable;
    this.rows = table.rows;
    this.#sign = decimalSignOf(table, [...placed.values()], found);
  }

  has(name: string): boolean {
    return this.#placed.has(name);
  }

  /** Heading of the column in this file, for findings. */
  heading(name: string): string {
    return this.#placed.get(name)?.heading ?? name;
  }

  /** Blocks the file unless the column is there. One that cannot be read has been told already. */
  require(name: string): void {
    if (this.has(name)) return;
    if (this.#unreadable.has(name)) this.#found.blocked = true;
    else {
      const at = { line: this.#headingLine, field: name };
      this.#found.block("formats.column-missing", at, { found: "no such heading", expected: name });
    }
  }

  /** True where the column is there and the cell is filled. */
  isFilled(row: TableRow, name: string): boolean {
    return !isEmptyCell(this.#cell(row, name));
  }

  /** Value in core units; NaN for an empty optional cell, an absent column and, with a finding, a bad cell. */
  number(row: TableRow, name: string, need: Need): number {
    const column = this.#placed.get(name);
    if (column === undefined) return Number.NaN;
    const cell = row.cells[column.index];
    if (isEmptyCell(cell)) {
      if (need === "required") this.#bad(row, column, need, "formats.cell-empty", cell, expectedIn(column));
      return Number.NaN;
    }
    const value = valueOfCell(cell, column, this.#sign);
    if (value === undefined) {
      const code = standsForMissing(cell, column) ? "formats.cell-not-a-reading" : codeFor(column);
      this.#bad(row, column, need, code, cell, expectedIn(column));
      return Number.NaN;
    }
    const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = column;
    if (!(value >= min && value <= max)) {
      this.#bad(row, column, need, "formats.cell-range", cell, `${min} to ${max}${unitShown(column)}`);
      return Number.NaN;
    }
    return column.kind === "angle" || column.kind === "azimuth" ? radiansFromDegrees(value) : value;
  }

  /** Text of the cell without outer spaces; undefined where empty. */
  text(row: TableRow, name: string, need: Need): string | undefined {
    const column = this.#placed.get(name);
    if (column === undefined) return undefined;
    const cell = row.cells[column.index];
    if (isEmptyCell(cell)) {
      if (need === "required") this.#bad(row, column, need, "formats.cell-empty", cell, expectedIn(column));
      return undefined;
    }
    return textOf(cell);
  }

  /** One of the words of the column, in lower case; undefined where empty or, with a finding, another word. */
  word(row: TableRow, name: string, need: Need): string | undefined {
    const text = this.text(row, name, need)?.toLowerCase();
    const column = this.#placed.get(name);
    if (text === undefined || column?.words === undefined || column.words.includes(text)) return text;
    this.#bad(row, column, "required", "formats.cell-choice", text, column.words.join(", "));
    return undefined;
  }

  #cell(row: TableRow, name: string): Cell {
    const column = this.#placed.get(name);
    return column === undefined ? undefined : row.cells[column.index];
  }

  #bad(row: TableRow, column: PlacedColumn, need: Need, code: string, cell: Cell, expected: string): void {
    const at = { line: row.line, field: column.heading };
    const values = { found: isEmptyCell(cell) ? "an empty cell" : excerpt(textOf(cell)), expected };
    if (need === "required") this.#found.block(code, at, values);
    else this.#found.error(code, at, values);
  }
}

/** Value of a filled cell in the unit of the contract's heading; undefined where it is no number that can be meant. */
export function valueOfCell(cell: Cell, column: PlacedColumn, sign: DecimalSign): number | undefined {
  if (standsForMissing(cell, column)) return undefined;
  if (column.kind === "azimuth") return azimuthInCell(cell, sign);
  if (column.kind === "angle" && column.name === "inclination_deg") return degreesInCell(cell, sign);
  const value = numberInCell(cell, sign);
  return value === undefined || column.kind !== "length" ? value : value * column.factor;
}

/** One number cell that shows a decimal sign. */
interface Shown {
  readonly line: number;
  readonly field: string;
  readonly text: string;
}

/**
 * The decimal sign of a file: the one that most of its number cells show.
 *
 * Both in one file is a clash: it is told at the first cell of the rarer kind, and all cells of that kind are bad cells.
 * In a comma-separated file quoted cells such as "1,024" alone do not tell a decimal comma from a thousands sign.
 */
export function decimalSignOf(table: RawTable, columns: readonly PlacedColumn[], found: Finder): DecimalSign {
  const { commas, points } = decimalsOf(table, columns);
  const [comma, point] = [commas[0], points[0]];
  if (comma === undefined) return ".";
  if (table.separator === "," && commas.every(({ text }) => mayBeThousands(text))) {
    const values = { found: excerpt(comma.text), expected: "numbers without a thousands sign" };
    found.block("formats.decimal-ambiguous", { line: comma.line, field: comma.field }, values);
    return ".";
  }
  if (point === undefined) return ",";
  const [rare, usual] = commas.length > points.length ? [point, comma] : [comma, point];
  const values = { found: excerpt(rare.text), expected: excerpt(usual.text), other: usual.line };
  found.error("formats.decimal-clash", { line: rare.line, field: rare.field }, values);
  return rare === comma ? "." : ",";
}

function decimalsOf(table: RawTable, columns: readonly PlacedColumn[]): { commas: Shown[]; points: Shown[] } {
  const commas: Shown[] = [];
  const points: Shown[] = [];
  const numeric = columns.filter(({ kind }) => kind !== "text" && kind !== "word" && kind !== "time");
  for (const row of table.rows)
    for (const { index, heading } of numeric) {
      const cell = row.cells[index];
      const use = decimalUse(cell);
      if (use === "neither") continue;
      (use === "comma" ? commas : points).push({ line: row.line, field: heading, text: textOf(cell) });
    }
  return { commas, points };
}

const textOf = (cell: Cell): string =>
  cell instanceof Date ? cell.toISOString() : String(cell ?? "").trim();

const MISSING_WORDS =
  /^(nan|n\/a|na|null|none|-+|\*+|#n\/a|#value!|inf|-inf|infinity|[+-]?9999(?:9)*(?:[.,]0*)?|-999[.,]25)$/i;

/** Marks and numbers that programs write for "no reading". They are never taken for one. */
function standsForMissing(cell: Cell, column: Column): boolean {
  const text = textOf(cell);
  if (!MISSING_WORDS.test(text)) return false;
  return !(column.anyNumber === true && /\d/.test(text));
}

function codeFor(column: Column): string {
  return column.kind === "azimuth" || column.name === "inclination_deg"
    ? "formats.cell-angle"
    : "formats.cell-number";
}

function expectedIn(column: Column): string {
  if (column.kind === "azimuth") return "degrees, degrees and minutes, or a bearing such as N 45 30 E";
  if (column.name === "inclination_deg") return "degrees, or degrees and minutes";
  if (column.kind === "text") return "a text";
  if (column.kind === "time") return "a date with time, a time of day, or seconds";
  return column.words === undefined ? "a number" : column.words.join(", ");
}

function unitShown(column: Column): string {
  if (column.kind === "length") return " m";
  return column.kind === "angle" || column.kind === "azimuth" ? " degrees" : "";
}
