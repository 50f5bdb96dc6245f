import type { Finder } from "../finding/finder.ts";
import { acceptedHeadings, type Column } from "../table/column.ts";
import { readCsv } from "../table/read-csv.ts";
import { TableReader } from "../table/table-reader.ts";
import { decodeText } from "../text/decode-text.ts";

/** Reads a CSV file by the columns of its contract; undefined when no row of it can be read. */
export function readCsvFile(
  bytes: Uint8Array,
  columns: readonly Column[],
  found: Finder,
): TableReader | undefined {
  const text = decodeText(bytes, found);
  if (text === undefined) return undefined;
  const known = new Set(columns.flatMap((column) => acceptedHeadings(column).map((as) => as.heading)));
  const table = readCsv(text, known, found);
  return table === undefined ? undefined : new TableReader(table, columns, found);
}
