import type { Cell, Column, ReportModel } from "../model/report-model.ts";

const LARGEST_SHEET_NAME = 31;

/** One table of the workbook. */
interface Sheet {
  readonly name: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
}

/**
 * The tables of a report as a workbook: every table a sheet, levels of all elements on one. Numbers are numbers, in SI and
 * unrounded; texts stand as the report has them.
 */
export async function reportWorkbook(model: ReportModel): Promise<Uint8Array> {
  const { default: writeXlsxFile } = await import("write-excel-file/node");
  const file = writeXlsxFile(
    sheetsOf(model).map(({ name, columns, rows }) => ({
      sheet: name,
      data: [columns.map(headCell), ...rows.map((row) => row.map((cell, c) => valueCell(cell, columns[c]!)))],
      columns: columns.map((_, c) => ({ width: widthOf(rows, columns, c) })),
      stickyRowsCount: 1,
    })),
    { fontFamily: "Calibri", fontSize: 11 },
  );
  return new Uint8Array(await file.toBuffer());
}

function sheetsOf(model: ReportModel): readonly Sheet[] {
  const tables = model.sections
    .filter(({ id }) => id !== "results")
    .flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === "table" ? [block] : [])));
  const element: Column = { key: "element", head: "", align: "left" };
  const levels: Sheet = {
    name: "levels",
    columns: [element, ...model.stationColumns],
    rows: model.elements.flatMap(({ id, stations }) => stations.map(({ cells }) => [{ text: id }, ...cells])),
  };
  return [...tables.map(({ id, columns, rows }) => ({ name: id, columns, rows })), levels]
    .filter(({ rows }) => rows.length > 0)
    .map((sheet) => ({ ...sheet, name: sheet.name.slice(0, LARGEST_SHEET_NAME) }));
}

/** Numbers stand in SI, whatever unit the report shows. */
const headCell = ({ key, head, unit }: Column) => ({
  value:
    unit === undefined ? head || key : `${head || key} (${["mm", "in", "ft"].includes(unit) ? "m" : unit})`,
  type: String,
  fontWeight: "bold" as const,
});

const valueCell = ({ text, value }: Cell, { align }: Column) =>
  value === undefined
    ? { value: text, type: String, align }
    : { value, type: Number, align: "right" as const };

function widthOf(rows: Sheet["rows"], columns: readonly Column[], c: number): number {
  const longest = rows.slice(0, 200).reduce((most, row) => Math.max(most, row[c]?.text.length ?? 0), 0);
  return Math.min(60, Math.max(columns[c]!.head.length + 8, longest + 2));
}
