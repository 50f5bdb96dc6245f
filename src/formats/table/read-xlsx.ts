import { unzipSync } from "fflate";
import { readSheet } from "read-excel-file/universal";
import type { Finder } from "../finding/finder.ts";
import { attempt, attemptLater } from "../text/attempt.ts";
import type { Cell, RawTable, TableRow } from "./table.ts";

/** Unpacked size above which a workbook is refused. */
const MAX_UNPACKED_BYTES = 60_000_000;

/**
 * Headings and rows of the first sheet of an .xlsx workbook. Row numbers count as lines.
 *
 * Formulas give their stored values. Rows above the headings must be empty.
 *
 * @returns the table, or undefined when the file is blocked.
 * Errors: formats.not-xlsx, formats.xlsx-unreadable, formats.file-empty, formats.file-too-large.
 */
export async function readXlsx(bytes: Uint8Array, found: Finder): Promise<RawTable | undefined> {
  const rows = await readXlsxRows(bytes, found);
  if (rows === undefined) return undefined;
  const filled = rows.filter((row) =>
    row.cells.some((cell) => cell !== undefined && String(cell).trim() !== ""),
  );
  const [head, ...body] = filled;
  if (head === undefined) {
    found.block(
      "formats.file-empty",
      { line: 1 },
      { found: "an empty sheet", expected: "a row of headings" },
    );
    return undefined;
  }
  const headings = head.cells.map((cell) => String(cell ?? "").trim());
  return { headings, headingLine: head.line, separator: undefined, rows: body };
}

/**
 * All rows of the first sheet of a workbook, empty ones too. Row numbers count as lines.
 *
 * @returns undefined when the file is blocked. Errors: formats.not-xlsx, formats.xlsx-unreadable, formats.file-too-large.
 */
export async function readXlsxRows(bytes: Uint8Array, found: Finder): Promise<TableRow[] | undefined> {
  if (!isWorkbook(bytes, found)) return undefined;
  const copy = Uint8Array.from(bytes).buffer;
  const sheet = await attemptLater(() => readSheet(copy));
  if (!sheet.ok) {
    found.block("formats.xlsx-unreadable", {}, { found: sheet.error, expected: "an .xlsx workbook" });
    return undefined;
  }
  return sheet.value.map((cells, index) => ({
    line: index + 1,
    cells: cells.map((cell): Cell => (cell === null || cell === undefined ? undefined : (cell as Cell))),
  }));
}

/** Looks into the archive's list only: is it a zip, of a bearable size, with a workbook inside? */
function isWorkbook(bytes: Uint8Array, found: Finder): boolean {
  let unpacked = 0;
  const names: string[] = [];
  const listed = attempt(() =>
    unzipSync(bytes, {
      filter: (file) => {
        unpacked += file.originalSize;
        names.push(file.name);
        return false;
      },
    }),
  );
  if (!listed.ok || names.length === 0) {
    found.block("formats.not-xlsx", {}, { found: kindOf(bytes), expected: "an .xlsx workbook" });
    return false;
  }
  if (unpacked > MAX_UNPACKED_BYTES) {
    found.block("formats.file-too-large", {}, { found: unpacked, expected: MAX_UNPACKED_BYTES });
    return false;
  }
  if (names.some((name) => name.startsWith("xl/workbook"))) return true;
  const inside = names.slice(0, 3).join(", ");
  found.block("formats.not-xlsx", {}, { found: `a zip with ${inside}`, expected: "an .xlsx workbook" });
  return false;
}

function kindOf(bytes: Uint8Array): string {
  if (bytes.length === 0) return "an empty file";
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf) return "an old .xls workbook";
  if (bytes[0] === 0x50 && bytes[1] === 0x4b) return "a damaged or cut-off zip";
  return "a file that is no zip";
}
