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
  readonly #wrongUnit: ReadonlySet<string>;
  readonly #sign: DecimalSign;

  constructor(table: RawTable, columns: readonly Column[], found: Finder) {
    this.#found = found;
    this.#headingLine = table.headingLine;
    const { placed, wrongUnit } = placeColumns(table, columns, found);
    this.#placed = placed;
    this.#wrongUnit = wrongUnit;
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

  /** Blocks the file unless the column is there. A column under a wrong unit has been told already. */
  require(name: string): void {
    if (this.has(name)) return;
    if (this.#wrongUnit.has(name)) this.#found.blocked = true;
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
    const value = this.#valueOf(cell, column);
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

  #valueOf(cell: Cell, column: PlacedColumn): number | undefined {
    if (standsForMissing(cell, column)) return undefined;
    if (column.kind === "azimuth") return azimuthInCell(cell, this.#sign);
    if (column.kind === "angle" && column.name === "inclination_deg") return degreesInCell(cell, this.#sign);
    const value = numberInCell(cell, this.#sign);
    return value === undefined || column.kind !== "length" ? value : value * column.factor;
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

/**
 * The decimal sign of a file: the one that its number cells show. Both in one file is a clash.
 *
 * In a comma-separated file quoted cells such as "1,024" alone do not tell a decimal comma from a thousands sign.
 */
function decimalSignOf(table: RawTable, columns: readonly PlacedColumn[], found: Finder): DecimalSign {
  const numeric = columns.filter(
    (column) => column.kind !== "text" && column.kind !== "word" && column.kind !== "time",
  );
  let comma: { line: number; field: string; cell: Cell } | undefined;
  let point: { line: number; field: string; cell: Cell } | undefined;
  let onlyThousands = table.separator === ",";
  for (const row of table.rows)
    for (const column of numeric) {
      const cell = row.cells[column.index];
      const use = decimalUse(cell);
      if (use === "comma") {
        comma ??= { line: row.line, field: column.heading, cell };
        onlyThousands = onlyThousands && mayBeThousands(cell);
      }
      if (use === "point") point ??= { line: row.line, field: column.heading, cell };
      if (comma !== undefined && point !== undefined && !onlyThousands) {
        const later = comma.line >= point.line ? comma : point;
        const earlier = later === comma ? point : comma;
        const values = {
          found: excerpt(textOf(later.cell)),
          expected: excerpt(textOf(earlier.cell)),
          other: earlier.line,
        };
        found.block("formats.decimal-clash", { line: later.line, field: later.field }, values);
        return ".";
      }
    }
  if (comma === undefined) return ".";
  if (onlyThousands) {
    const values = { found: excerpt(textOf(comma.cell)), expected: "numbers without a thousands sign" };
    found.block("formats.decimal-ambiguous", { line: comma.line, field: comma.field }, values);
    return ".";
  }
  return ",";
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
