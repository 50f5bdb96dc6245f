import { radiansFromDegrees } from "#core";
import type { PlacedColumn } from "./column.ts";
import { type DecimalSign, decimalUse } from "./numbers.ts";
import { valueOfCell } from "./table-reader.ts";

/** What is done with one column of a long file. */
export interface ScannedColumn {
  readonly placed: PlacedColumn;
  readonly need: "required" | "optional";
  /**
   * Takes the value of a cell: a number in core units, or the text of a column that holds no numbers.
   *
   * @returns false where the text cannot be meant.
   */
  readonly takeNumber?: (row: number, value: number) => void;
  readonly takeText?: (row: number, text: string, line: number) => boolean;
}

/** Where the rows of a text begin and how they are divided. */
export interface RowLayout {
  /** place of the first letter after the line of headings */
  readonly start: number;
  /** line that begins there */
  readonly line: number;
  readonly separator: "," | ";" | "\t";
  readonly headings: number;
  /** undefined = the first decimal sign that shows is the file's */
  readonly sign: DecimalSign | undefined;
}

/** A row that needs a closer look: what is wrong with it is found by the reader of short files. */
export type OddRow = { readonly line: number; readonly text: string };

const POWERS_OF_TEN = Float64Array.from({ length: 16 }, (_, i) => 10 ** i);
const [NEWLINE, SPACE, PLUS, MINUS, ZERO, NINE] = [10, 32, 43, 45, 48, 57];
/** From here on a whole number may stand for "no reading". */
const MAY_STAND_FOR_MISSING = 999;

/**
 * Reads the rows of a long text in one pass, without making a text of each cell.
 *
 * A row with a cell that is missing, odd or one too many is handed to `onOddRow` and keeps whatever could be read of it.
 *
 * @param columns by their place in the row; none twice. @param onRow is told the line of each row that is not blank.
 * @returns number of rows.
 */
export function scanRows(
  text: string,
  layout: RowLayout,
  columns: readonly ScannedColumn[],
  onRow: (row: number, line: number) => void,
  onOddRow: (odd: OddRow) => void,
): number {
  const separator = layout.separator.charCodeAt(0);
  const byPlace: (ScannedColumn | undefined)[] = new Array(layout.headings).fill(undefined);
  for (const column of columns) byPlace[column.placed.index] = column;
  const reader = new CellReader(text, layout.sign);
  let row = 0;
  let { line } = layout;
  for (let from = layout.start; from < text.length; line++) {
    const newline = text.indexOf("\n", from);
    const to = newline < 0 ? text.length : newline;
    if (isFilled(text, from, to, separator)) {
      onRow(row, line);
      if (!scanRow(text, from, to, separator, byPlace, reader, row, line))
        onOddRow({ line, text: text.slice(from, to) });
      row++;
    }
    from = to + 1;
  }
  return row;
}

/** Lines of a text from a place on: as many rows as it can have at most. */
export function countLines(text: string, start: number): number {
  let lines = 0;
  for (let i = start; i < text.length; i++) if (text.charCodeAt(i) === NEWLINE) lines++;
  return text.length > start && text.charCodeAt(text.length - 1) !== NEWLINE ? lines + 1 : lines;
}

function isFilled(text: string, from: number, to: number, separator: number): boolean {
  for (let i = from; i < to; i++) {
    const code = text.charCodeAt(i);
    if (code !== separator && code > SPACE) return true;
  }
  return false;
}

/** @returns false where the row is odd. */
function scanRow(
  text: string,
  from: number,
  to: number,
  separator: number,
  byPlace: readonly (ScannedColumn | undefined)[],
  reader: CellReader,
  row: number,
  line: number,
): boolean {
  let isPlain = true;
  let place = 0;
  for (let start = from; start <= to; place++) {
    let end = start;
    while (end < to && text.charCodeAt(end) !== separator) end++;
    if (place >= byPlace.length) {
      if (reader.isFilled(start, end)) isPlain = false;
    } else {
      const column = byPlace[place];
      if (column !== undefined && !reader.read(column, start, end, row, line)) isPlain = false;
    }
    start = end + 1;
  }
  return isPlain && place >= byPlace.length;
}

class CellReader {
  readonly #text: string;
  #sign: DecimalSign | undefined;
  #signCode: number;

  constructor(text: string, sign: DecimalSign | undefined) {
    this.#text = text;
    this.#sign = sign;
    this.#signCode = sign?.charCodeAt(0) ?? -1;
  }

  isFilled(start: number, end: number): boolean {
    for (let i = start; i < end; i++) if (this.#text.charCodeAt(i) > SPACE) return true;
    return false;
  }

  read(column: ScannedColumn, cellStart: number, cellEnd: number, row: number, line: number): boolean {
    let [start, end] = [cellStart, cellEnd];
    while (start < end && this.#text.charCodeAt(start) <= SPACE) start++;
    while (end > start && this.#text.charCodeAt(end - 1) <= SPACE) end--;
    if (start === end) return column.need === "optional";
    if (column.takeText !== undefined) return column.takeText(row, this.#text.slice(start, end), line);
    const plain = this.#plainNumber(start, end);
    const { placed } = column;
    const value =
      Number.isNaN(plain) || Math.abs(plain) > MAY_STAND_FOR_MISSING
        ? this.#anyNumber(this.#text.slice(start, end), placed)
        : placed.kind === "length"
          ? plain * placed.factor
          : plain;
    const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = placed;
    if (!(value >= min && value <= max)) return false;
    column.takeNumber?.(row, placed.kind === "angle" ? radiansFromDegrees(value) : value);
    return true;
  }

  /** Digits with at most one decimal sign, up to 15 of them: exact, and rounded once by the division. NaN for anything else. */
  #plainNumber(start: number, end: number): number {
    const first = this.#text.charCodeAt(start);
    let mantissa = 0;
    let digits = 0;
    let decimals = -1;
    for (let i = first === MINUS || first === PLUS ? start + 1 : start; i < end; i++) {
      const code = this.#text.charCodeAt(i);
      if (code >= ZERO && code <= NINE) {
        mantissa = mantissa * 10 + (code - ZERO);
        digits++;
        if (decimals >= 0) decimals++;
      } else if (code === this.#signCode && decimals < 0) decimals = 0;
      else return Number.NaN;
    }
    if (digits === 0 || digits > 15) return Number.NaN;
    const size = decimals > 0 ? mantissa / POWERS_OF_TEN[decimals]! : mantissa;
    return first === MINUS ? -size : size;
  }

  /** Numbers written in another way, by the rules of short files. */
  #anyNumber(cell: string, placed: PlacedColumn): number {
    if (this.#sign === undefined) {
      const use = decimalUse(cell);
      if (use !== "neither") this.#sign = use === "comma" ? "," : ".";
      this.#signCode = this.#sign?.charCodeAt(0) ?? -1;
    }
    return valueOfCell(cell, placed, this.#sign ?? ".") ?? Number.NaN;
  }
}
