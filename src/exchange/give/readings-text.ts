import { readingsHeadings, writeCsv } from "#formats";
import { type HeldRow, headingsOf } from "../shared/readings-of-run.ts";

/** The readings that count, as a file of the job folder. @param rows those that were set aside left out. */
export function readingsText(rows: readonly HeldRow[]): string {
  const used = headingsOf(rows);
  const headings = [
    ...readingsHeadings.filter((heading) => used.includes(heading)),
    ...used.filter((heading) => !readingsHeadings.includes(heading)).sort(),
  ];
  return writeCsv(
    headings,
    headings.map((heading) => rows.map(({ columns, row }) => columns[heading]?.[row])),
  );
}
