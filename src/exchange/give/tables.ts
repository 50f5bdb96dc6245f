import { type CellValue, writeCsv } from "#formats";
import type { JsonObject, JsonValue } from "#records";
import { AS_WRITTEN } from "../shared/names.ts";
import { objectOf, without } from "../shared/objects.ts";

/**
 * A table of things as a job folder has it: the headings of the contract first, as far as they are needed, then others in the
 * order of the alphabet.
 *
 * @param rows fields of each thing, its ids among them.
 */
export function tableText(
  order: readonly string[],
  needed: readonly string[],
  rows: readonly JsonObject[],
): string {
  const cells = rows.map((row) => {
    const { [AS_WRITTEN]: written } = row;
    return { ...without(row, AS_WRITTEN, "withdrawn"), ...objectOf(written) };
  });
  const used = new Set(cells.flatMap((row) => Object.keys(row)));
  const known = order.filter((heading) => used.has(heading) || needed.includes(heading));
  const others = [...used].filter((heading) => !order.includes(heading)).sort();
  const headings = [...known, ...others];
  return writeCsv(
    headings,
    headings.map((heading) => cells.map((row) => cellOf(row[heading]))),
  );
}

/** What is no cell, because somebody wrote a list or an object into the field, is shown as JSON. */
function cellOf(value: JsonValue | undefined): CellValue {
  if (value === undefined || value === null) return null;
  return typeof value === "number" || typeof value === "string" ? value : JSON.stringify(value);
}
