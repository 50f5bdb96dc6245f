import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import { nearestWord } from "../finding/nearest-word.ts";
import { acceptedHeadings, type Column, type PlacedColumn, stemOf } from "./column.ts";
import type { RawTable } from "./table.ts";

export interface Placement {
  readonly placed: ReadonlyMap<string, PlacedColumn>;
  /** columns of the contract that are there but cannot be read: under another unit, or more than once */
  readonly unreadable: ReadonlySet<string>;
}

/**
 * Finds the columns of the contract among the headings of a file: any order, capitals and outer spaces do not matter.
 *
 * Columns that the contract does not know are told once, as a note. A heading that is a known one but for a few
 * letters, and is not there otherwise, is told as a warning.
 *
 * Errors: formats.column-duplicate, formats.column-unit.
 */
export function placeColumns(table: RawTable, columns: readonly Column[], found: Finder): Placement {
  const accepted = new Map(
    columns.flatMap((column) => acceptedHeadings(column).map((as) => [as.heading, { column, as }] as const)),
  );
  const placed = new Map<string, PlacedColumn>();
  const unreadable = new Set<string>();
  const unknown: string[] = [];
  const seen = new Set<string>();
  for (const [index, heading] of table.headings.entries()) {
    const wanted = heading.toLowerCase();
    const at = { line: table.headingLine, field: excerpt(heading) };
    const match = accepted.get(wanted);
    const isRepeated = seen.has(wanted) || (match !== undefined && placed.has(match.column.name));
    if (wanted !== "" && isRepeated) {
      found.error("formats.column-duplicate", at, { found: excerpt(heading), expected: "each heading once" });
      if (match !== undefined) unreadable.add(match.column.name);
      continue;
    }
    seen.add(wanted);
    if (match !== undefined) {
      placed.set(match.column.name, { ...match.column, index, heading, factor: match.as.factor });
      continue;
    }
    const meant = columns.find((column) => isOtherUnit(wanted, column));
    if (meant !== undefined) {
      unreadable.add(meant.name);
      const expected = acceptedHeadings(meant).map((as) => as.heading);
      found.error("formats.column-unit", at, { found: excerpt(heading), expected: expected.join(" or ") });
    } else if (wanted !== "") unknown.push(heading);
  }
  tellUnknown(table, columns, placed, unknown, found);
  for (const name of unreadable) placed.delete(name);
  return { placed, unreadable };
}

function tellUnknown(
  table: RawTable,
  columns: readonly Column[],
  placed: ReadonlyMap<string, PlacedColumn>,
  unknown: readonly string[],
  found: Finder,
): void {
  const absent = columns.filter((column) => !placed.has(column.name)).map((column) => column.name);
  const odd: string[] = [];
  for (const heading of unknown) {
    const expected = nearestWord(heading, absent);
    const at = { line: table.headingLine, field: excerpt(heading) };
    if (expected === undefined) odd.push(heading);
    else found.warning("formats.column-mistyped", at, { found: excerpt(heading), expected });
  }
  if (odd.length === 0) return;
  const names = excerpt(odd.join(", "));
  const at = { line: table.headingLine, field: excerpt(odd[0]) };
  found.note("formats.column-unknown", at, {
    found: names,
    count: odd.length,
    expected: "columns of the format",
  });
}

const UNIT_WORDS = new Set(
  (
    "m mm cm km ft feet foot in inch inches yd deg degree degrees ° rad mrad radians grad gon min sec s ms " +
    "c °c k f °f kn n mn t to ton tons kip kips lb lbf kg percent % pct mm/m mm_m mm_per_m us_ft usft ratio"
  ).split(" "),
);

/** The heading names the column, but with no unit, or another one, or the unit in brackets. */
function isOtherUnit(heading: string, column: Column): boolean {
  const stem = stemOf(column);
  if (stem === undefined || !heading.startsWith(stem)) return false;
  const rest = heading.slice(stem.length);
  if (rest === "") return true;
  return /^[\s_([]/.test(rest) && UNIT_WORDS.has(rest.replaceAll(/^[\s_]+|[()[\]]/g, "").trim());
}
