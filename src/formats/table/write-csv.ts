import type { CellValue } from "./cells.ts";

/**
 * Text of a CSV file: comma, decimal point, a line for each row. Every digit of a number is written, and no cell is changed, so
 * that the file is read back as the same cells.
 *
 * @param columns by heading; all of one length.
 */
export function writeCsv(
  headings: readonly string[],
  columns: readonly (readonly (CellValue | undefined)[])[],
): string {
  const lines = [headings.map(cellText).join(",")];
  const count = columns[0]?.length ?? 0;
  for (let row = 0; row < count; row++) lines.push(columns.map((column) => cellText(column[row])).join(","));
  return `${lines.join("\n")}\n`;
}

function cellText(cell: CellValue | undefined): string {
  if (cell === null || cell === undefined) return "";
  if (typeof cell === "number") return String(cell);
  return /[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
