/** A cell as a file gives it: text of a CSV file, a typed cell of a spreadsheet. "" and undefined are empty. */
export type Cell = string | number | boolean | Date | undefined;

export interface TableRow {
  /** line of the file on which the row begins, from 1; row number in a spreadsheet */
  readonly line: number;
  readonly cells: readonly Cell[];
}

/** A table with headings, not yet understood. */
export interface RawTable {
  readonly headings: readonly string[];
  readonly headingLine: number;
  /** between the cells of a CSV file; undefined for a spreadsheet */
  readonly separator: "," | ";" | "\t" | undefined;
  readonly rows: readonly TableRow[];
}

export const isEmptyCell = (cell: Cell): boolean =>
  cell === undefined || (typeof cell === "string" && cell.trim() === "");
