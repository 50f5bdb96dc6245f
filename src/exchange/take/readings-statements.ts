import type { CellTable, CellValue } from "#formats";
import { type JsonObject, utf8 } from "#records";

/** What the columns of one entry may have at most; the rest of the 200,000 bytes is for the envelope and the headings. */
const COLUMN_BYTES = 180_000;
/** So many rows can be set aside with one entry, and a device can show them. */
const MOST_ROWS = 5000;
/** No number takes more as ECMAScript prints it, with the comma after it. */
const NUMBER_BYTES = 26;

/**
 * Bodies of `readings` for rows of a table, in as many entries as are needed for none to be too large.
 *
 * @param from first row that is meant, from 0.
 */
export function readingsBodies(
  run: string,
  { headings, columns, count }: CellTable,
  from = 0,
): readonly JsonObject[] {
  const bodies: JsonObject[] = [];
  let start = from;
  let bytes = 0;
  const cut = (end: number) => {
    if (end > start)
      bodies.push({
        run,
        columns: Object.fromEntries(headings.map((heading, i) => [heading, columns[i]!.slice(start, end)])),
      });
    start = end;
    bytes = 0;
  };
  for (let row = from; row < count; row++) {
    let size = 0;
    for (const column of columns) size += bytesOf(column[row]!);
    if (bytes + size > COLUMN_BYTES || row - start >= MOST_ROWS) cut(row);
    bytes += size;
  }
  cut(count);
  return bodies;
}

function bytesOf(cell: CellValue): number {
  if (cell === null) return 5;
  return typeof cell === "number" ? NUMBER_BYTES : utf8(JSON.stringify(cell)).length + 1;
}
