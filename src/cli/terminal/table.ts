export interface Column<Row> {
  readonly heading: string;
  readonly align?: "left" | "right";
  readonly cell: (row: Row) => string;
  /** colour put on after the cell has been padded */
  readonly paint?: (row: Row, text: string) => string;
}

/** Length as a person sees it: combined signs count once. */
const widthOf = (text: string): number => [...text.normalize("NFC")].length;

function pad(text: string, width: number, align: "left" | "right"): string {
  const space = " ".repeat(Math.max(0, width - widthOf(text)));
  return align === "right" ? space + text : text + space;
}

/**
 * Rows as lines of text, each column as wide as its widest cell, two spaces between columns.
 *
 * @returns the line of headings first, then one line a row; no space at the end of a line.
 */
export function tableLines<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): string[] {
  const cells = rows.map((row) => columns.map((column) => column.cell(row)));
  const widths = columns.map((column, c) =>
    cells.reduce((widest, line) => Math.max(widest, widthOf(line[c] ?? "")), widthOf(column.heading)),
  );
  const last = columns.length - 1;
  const aligned = (text: string, c: number): string => {
    const align = columns[c]?.align ?? "left";
    return c === last && align === "left" ? text : pad(text, widths[c] ?? 0, align);
  };
  const heading = columns.map((column, c) => aligned(column.heading, c)).join("  ");
  const lines = rows.map((row, r) =>
    columns
      .map((column, c) => {
        const text = aligned(cells[r]?.[c] ?? "", c);
        return column.paint ? column.paint(row, text) : text;
      })
      .join("  ")
      .trimEnd(),
  );
  return [heading.trimEnd(), ...lines];
}
