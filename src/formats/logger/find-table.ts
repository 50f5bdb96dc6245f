import { type Cell, isEmptyCell, type TableRow } from "../table/table.ts";
import { mayBeNumber } from "./logger-numbers.ts";
import { mayBeTime } from "./logger-times.ts";
import { type GivenSettings, type Guess, givenOr, guess } from "./settings.ts";
import { unitsNamed } from "./units.ts";

/** Where headings, units and readings stand. Lines count from 1; 0 = there is none. */
export interface FoundTable {
  readonly headingLine: Guess<number>;
  readonly unitsLine: Guess<number>;
  readonly firstLine: Guess<number>;
  readonly lastLine: Guess<number>;
}

/** Words that stand in the place of a number. */
const NO_READING = /^(nan|n\/?a|null|none|-{1,5}|\*+|#n\/a|#value!|inf|-inf|err(or)?)$/i;

export const isNoReading = (cell: Cell): boolean => typeof cell === "string" && NO_READING.test(cell.trim());

const filledCells = (row: TableRow): readonly Cell[] => row.cells.filter((cell) => !isEmptyCell(cell));
const mayBeReading = (cell: Cell): boolean => mayBeNumber(cell) || mayBeTime(cell) || cell instanceof Date;

/** Mostly numbers and times, at least one of them. */
export function isDataRow(row: TableRow): boolean {
  const cells = filledCells(row);
  const readings = cells.filter(mayBeReading).length;
  const standIns = cells.filter(isNoReading).length;
  return readings > 0 && 2 * (readings + standIns) >= cells.length;
}

/**
 * Finds the rows of readings, and above them the line of headings and the line of units.
 *
 * The readings begin with the first stretch of data rows at least half as long as the longest, of the width that most data
 * rows have; they end with the last data row. What stands above and below is a preamble and a footer.
 *
 * @returns undefined where no row is mostly numbers.
 */
export function findTable(rows: readonly TableRow[], given: GivenSettings["layout"]): FoundTable | undefined {
  const width = usualWidth(rows);
  const fits = (row: TableRow) =>
    isDataRow(row) && (row.cells.length === width || filledCells(row).length > width / 2);
  const first = firstData(rows, width, (row) => fits(row) && row.cells.length === width) ?? rows.find(fits);
  const last = rows.findLast(fits);
  if (first === undefined || last === undefined) return undefined;
  const firstLine = givenOr(given?.firstLine, () =>
    guess(first.line, "certain", "logger.why-first-line", { found: first.line }),
  );
  const lastLine = givenOr(given?.lastLine, () =>
    guess(last.line, "certain", "logger.why-last-line", { found: last.line }),
  );
  const above = rows.filter((row) => row.line < firstLine.value && filledCells(row).length > 0).slice(-6);
  const units = above.findLast((row) => isUnitsRow(row));
  const unitsLine = givenOr(given?.unitsLine, () =>
    units === undefined
      ? guess(0, "certain", "logger.why-no-units-line")
      : guess(units.line, "certain", "logger.why-units-line", { found: units.line }),
  );
  const heading = above.findLast((row) => row.line !== unitsLine.value && isHeadingRow(row, width));
  const headingLine = givenOr(given?.headingLine, () =>
    heading === undefined
      ? guess(0, "likely", "logger.why-no-heading")
      : guess(heading.line, "certain", "logger.why-heading-line", { found: heading.line }),
  );
  return { headingLine, unitsLine, firstLine, lastLine };
}

function usualWidth(rows: readonly TableRow[]): number {
  const counts = new Map<number, number>();
  for (const row of rows)
    if (isDataRow(row)) counts.set(row.cells.length, (counts.get(row.cells.length) ?? 0) + 1);
  let best: readonly [number, number] = [0, 0];
  for (const [width, count] of counts)
    if (count > best[1] || (count === best[1] && width > best[0])) best = [width, count];
  return best[0];
}

/** So many odd rows in a row end a stretch of readings. */
const ODD_ROWS = 3;

/** First row of the first stretch that is at least half as long as the longest. A few odd rows, or a knock told in words, do not end one. */
function firstData(
  rows: readonly TableRow[],
  width: number,
  fits: (row: TableRow) => boolean,
): TableRow | undefined {
  const stretches: { first: TableRow; length: number }[] = [];
  let odd = ODD_ROWS;
  for (const row of rows) {
    if (filledCells(row).length === 0) continue;
    if (!fits(row)) {
      odd = isHeadingRow(row, width) || isUnitsRow(row) ? ODD_ROWS : odd + 1;
      continue;
    }
    if (odd < ODD_ROWS) stretches.at(-1)!.length += 1;
    else stretches.push({ first: row, length: 1 });
    odd = 0;
  }
  const longest = Math.max(0, ...stretches.map(({ length }) => length));
  return stretches.find(({ length }) => 2 * length >= longest)?.first;
}

/** Words, about as many as there are columns. */
function isHeadingRow(row: TableRow, width: number): boolean {
  const cells = filledCells(row);
  const words = cells.filter((cell) => typeof cell === "string" && !mayBeReading(cell)).length;
  return words > 0 && 2 * words >= cells.length && (cells.length > width / 2 || row.cells.length === width);
}

/** The unit in a cell of a line of units, without its brackets. */
export const bareUnit = (cell: Cell): string =>
  typeof cell === "string"
    ? cell
        .trim()
        .replaceAll(/^[[({<]|[\])}>]$/g, "")
        .trim()
    : "";

/** Nothing but units, bare or in brackets. */
function isUnitsRow(row: TableRow): boolean {
  const cells = filledCells(row);
  const units = cells.filter((cell) => unitsNamed(bareUnit(cell)).length > 0).length;
  return units > 0 && 2 * units > cells.length;
}
