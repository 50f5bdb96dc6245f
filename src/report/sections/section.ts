import type { ReportContext } from "../model/job-report.ts";
import type { Block, Cell, Column, ReportModel, TableBlock } from "../model/report-model.ts";
import { say, type Words } from "../words/say.ts";
import { tableWords } from "../words/table-words.ts";

/** The parts of the report that stand before its sections are made. */
export type ReportBase = Omit<ReportModel, "sections">;

/** A section of the report. It declares its title and how it is made; the registry lists it. No blocks: it is left out. */
export interface ReportSection {
  readonly id: string;
  readonly title: Words;
  blocks(context: ReportContext, base: ReportBase): readonly Block[];
}

/** A column of a table and what stands in it. */
export interface TableColumn<T> extends Omit<Column, "key" | "head" | "align"> {
  readonly head: keyof typeof tableWords;
  readonly align?: Column["align"];
  cell(row: T): Cell | string;
}

/** A table of one row for each thing; no blocks where there is nothing. */
export function table<T>(
  { language }: ReportContext,
  id: string,
  caption: Words | string,
  columns: readonly TableColumn<T>[],
  rows: readonly T[],
  more: { readonly note?: string; readonly small?: boolean } = {},
): readonly TableBlock[] {
  if (rows.length === 0) return [];
  const write = (cell: Cell | string): Cell => (typeof cell === "string" ? { text: cell } : cell);
  return [
    {
      kind: "table",
      id,
      caption: typeof caption === "string" ? caption : say(caption, language),
      columns: columns.map(({ head, unit, align, share }) => ({
        key: head,
        head: say(tableWords[head], language),
        align: align ?? "left",
        ...(unit !== undefined && { unit }),
        ...(share !== undefined && { share }),
      })),
      rows: rows.map((row) => columns.map((column) => write(column.cell(row)))),
      ...more,
    },
  ];
}

/** Lines of a name and a value; those without a value say so. */
export function facts(
  { language }: ReportContext,
  rows: readonly (readonly [keyof typeof tableWords, string | undefined])[],
): Block {
  return {
    kind: "facts",
    rows: rows.map(([name, value]) => ({
      name: say(tableWords[name], language),
      value: value === undefined || value === "" ? say(tableWords.notGiven, language) : value,
    })),
  };
}
