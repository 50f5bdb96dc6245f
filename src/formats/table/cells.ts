import { Finder } from "../finding/finder.ts";
import { type Column, type PlacedColumn, stemOf } from "./column.ts";
import { placeColumns } from "./place-columns.ts";
import { type Cell, isEmptyCell, type RawTable } from "./table.ts";
import { decimalSignOf, valueOfCell } from "./table-reader.ts";

/** A cell as it is written down for good: a number, what stood there, or nothing. */
export type CellValue = number | string | null;

/** A table column by column, under the headings of the contract where they are known, else under its own. */
export interface CellTable {
  readonly headings: readonly string[];
  /** by heading, in the same order; all of length `count` */
  readonly columns: readonly (readonly CellValue[])[];
  readonly count: number;
}

/**
 * The cells of a table with nothing left out: numbers in the unit of the contract's heading, bit for bit those that the reader
 * of the table would use, and as text whatever is no number that can be meant. Written out again, with decimal points, the same
 * cells are read as before.
 *
 * @returns undefined where headings or decimal signs leave it open what the cells are; the finder says why.
 */
export function cellsOf(table: RawTable, columns: readonly Column[], found: Finder): CellTable | undefined {
  const heard = new Finder("");
  const { placed } = placeColumns(table, columns, heard);
  const places = new Map([...placed.values()].map((column) => [column.index, column]));
  const sign = decimalSignOf(table, [...placed.values()], heard);
  // a heading in another unit is kept as it is; one that is there twice, or two decimal signs, is not to be made out
  const serious = heard.issues.filter(
    ({ severity, code }) => severity === "error" && code !== "formats.column-unit",
  );
  for (const { code, place, values } of serious) found.block(code, place, values);
  if (serious.length > 0) return undefined;
  const headings: string[] = [];
  const cells: CellValue[][] = [];
  for (const [index, written] of table.headings.entries()) {
    const column = places.get(index);
    const asUnit = column === undefined ? undefined : unitOf(column);
    const values = table.rows.map(({ cells: row }) => {
      const cell = row[index];
      if (isEmptyCell(cell)) return null;
      return column === undefined ? plainValue(cell) : knownValue(cell, column, asUnit!, sign);
    });
    if (written === "" && values.every((value) => value === null)) continue;
    headings.push(headingOf(column, asUnit, written, index));
    cells.push(values);
  }
  return { headings, columns: cells, count: table.rows.length };
}

/** Whether numbers stay as they are, become metres, or stay under the heading of the file because no exact step leads to the contract's. */
type UnitStep = "same" | "to-metres" | "as-written";

function unitOf(column: PlacedColumn): UnitStep {
  if (column.kind !== "length") return "same";
  const factor = column.name.endsWith("_mm") ? 0.001 : 1;
  if (column.factor === factor) return "same";
  return factor === 1 ? "to-metres" : "as-written";
}

function headingOf(
  column: PlacedColumn | undefined,
  unit: UnitStep | undefined,
  written: string,
  index: number,
): string {
  if (column === undefined) return written === "" ? `column ${index + 1}` : written;
  return unit === "as-written" ? `${stemOf(column)}_m` : column.name;
}

function knownValue(cell: Cell, column: PlacedColumn, unit: UnitStep, sign: "." | ","): CellValue {
  const { kind } = column;
  if (kind === "text" || kind === "word") return textOf(cell);
  if (kind === "time") return plainValue(typeof cell === "string" ? cell.trim() : cell);
  // the reader of a face takes 1 and 2 and nothing that only equals them
  if (column.name === "face") return plainValue(typeof cell === "string" ? cell.trim() : cell);
  const inMetres = valueOfCell(cell, column, sign);
  const value = inMetres === undefined || unit === "to-metres" ? inMetres : asShown(cell, column, sign);
  // JSON knows no negative zero; as a text it keeps its sign
  if (Object.is(value, -0)) return "-0";
  return value ?? textOf(cell);
}

/** The number of a cell before its unit is turned. */
const asShown = (cell: Cell, column: PlacedColumn, sign: "." | ","): number | undefined =>
  column.kind === "length"
    ? valueOfCell(cell, { ...column, factor: 1 }, sign)
    : valueOfCell(cell, column, sign);

/** A number only where it prints as it stands there. */
function plainValue(cell: Cell): CellValue {
  if (typeof cell === "number") return Number.isFinite(cell) && !Object.is(cell, -0) ? cell : String(cell);
  const text = textOf(cell);
  const number = Number(text);
  return Number.isFinite(number) && String(number) === text ? number : text;
}

const textOf = (cell: Cell): string => {
  if (cell instanceof Date) return cell.toISOString();
  return typeof cell === "string" ? cell.trim() : String(cell ?? "");
};
