/** One cell as CSV: in quotes where it holds a comma, a quote or a line break. */
export function csvCell(value: string | number | undefined): string {
  if (value === undefined || (typeof value === "number" && !Number.isFinite(value))) return "";
  const text = String(value);
  // a spreadsheet runs a cell that begins like a formula; a plain number is none
  const isFormula = /^[=+\-@\t\r]/.test(text) && !/^[+-]?[\d.]+(e[+-]?\d+)?$/i.test(text);
  const safe = isFormula ? `'${text}` : text;
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** Lines of CSV with a heading line, each ended by a line break. */
export const csv = (
  headings: readonly string[],
  rows: Iterable<readonly (string | number | undefined)[]>,
): string => [headings, ...rows].map((row) => `${row.map(csvCell).join(",")}\n`).join("");
