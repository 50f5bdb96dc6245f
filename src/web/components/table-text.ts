/** What is needed of a column to write it as text. */
interface WrittenColumn<Row> {
  readonly title: string;
  readonly unit?: string;
  readonly text: (row: Row) => string;
}

/** A table as text for a spreadsheet: tab between cells, units in the heads, one line a row. */
export function tableText<Row>(columns: readonly WrittenColumn<Row>[], rows: readonly Row[]): string {
  const heads = columns.map(({ title, unit }) => (unit === undefined ? title : `${title} (${unit})`));
  const lines = rows.map((row) => columns.map(({ text }) => cellText(text(row))));
  return [heads, ...lines].map((cells) => cells.join("\t")).join("\n");
}

/** One line, no tabs; a true minus becomes the one that spreadsheets read; text is never taken for a formula. */
function cellText(text: string): string {
  const plain = text.replaceAll(/[\t\r\n]+/g, " ").replace(/^−(?=[\d.,])/, "-");
  return /^[=+@]/.test(plain) || /^-(?![\d.,])/.test(plain) ? `'${plain}` : plain;
}
