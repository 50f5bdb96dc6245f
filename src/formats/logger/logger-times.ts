import { type Cell, isEmptyCell, type TableRow } from "../table/table.ts";
import { isoOf, momentOf } from "../text/iso-time.ts";
import { type DateOrder, type Guess, guess } from "./settings.ts";

const DATE = /^(\d{1,4})([./-])(\d{1,2})\2(\d{1,4})$/;
const CLOCK = /^(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,:](\d{1,9}))?)?\s*([ap]\.?m\.?)?$/i;

/** A time with or without a date, as a logger writes it. */
export interface LoggerTime {
  /** year, month, day; undefined for a time of day */
  readonly date: string | undefined;
  /** hours, minutes, seconds; undefined for a date */
  readonly clock: string | undefined;
  /** Z, +01:00 or "" */
  readonly zone: string;
}

/** The time in a cell, or undefined: ISO 8601, 24.11.2026 15:10:00, 11/24/2026 3:10 PM, 15:10:00, a spreadsheet's date. */
export function loggerTime(cell: Cell, order: DateOrder): LoggerTime | undefined {
  if (cell instanceof Date) {
    if (Number.isNaN(cell.getTime())) return undefined;
    const [date, clock] = isoOf(meantMs(cell.getTime()))
      .replace("Z", "")
      .replace(/\.000$/, "")
      .split("T");
    return { date, clock, zone: "" };
  }
  if (typeof cell !== "string") return undefined;
  const text = cell.trim();
  const iso = /^(\d{4}-\d\d-\d\d)(?:[T ](\d\d:\d\d(?::\d\d(?:[.,]\d{1,9})?)?)\s*(Z|[+-]\d\d:?\d\d)?)?$/i.exec(
    text,
  );
  if (iso !== null) {
    if (momentOf(text) === undefined) return undefined;
    return { date: iso[1], clock: iso[2] && clockOf(iso[2]), zone: (iso[3] ?? "").toUpperCase() };
  }
  const [first = "", ...rest] = text.split(/[\sT,;_]+/);
  const date = dateOf(first, order);
  if (date === undefined) {
    const clock = clockOf(text);
    return clock === undefined ? undefined : { date: undefined, clock, zone: "" };
  }
  if (rest.length === 0) return { date, clock: undefined, zone: "" };
  const clock = clockOf(rest.join(" "));
  return clock === undefined ? undefined : { date, clock, zone: "" };
}

/**
 * A spreadsheet's moment is a day with a fraction that may fall short by less than a millisecond; its reader cuts that off.
 * 15:09:59.999 was meant as 15:10:00: a last digit of 9 is taken up. A true 9 is moved by a thousandth of a second.
 */
const meantMs = (ms: number): number => (ms % 10 === 9 ? ms + 1 : ms);

function dateOf(text: string, order: DateOrder): string | undefined {
  const parts = DATE.exec(text);
  if (parts === null) return undefined;
  const numbers = [parts[1]!, parts[3]!, parts[4]!];
  const at = (letter: string) => numbers[order.indexOf(letter)]!;
  const isYearFirst = parts[1]!.length === 4;
  const [year, month, day] = isYearFirst ? numbers : [at("y"), at("m"), at("d")];
  const full = year!.length === 2 ? `20${year}` : year!;
  const iso = `${full}-${month!.padStart(2, "0")}-${day!.padStart(2, "0")}`;
  return momentOf(iso) === undefined ? undefined : iso;
}

function clockOf(text: string): string | undefined {
  const parts = CLOCK.exec(text.trim());
  if (parts === null) return undefined;
  const half = parts[5]?.toLowerCase();
  let hours = Number(parts[1]);
  if (half !== undefined && (hours < 1 || hours > 12)) return undefined;
  if (half !== undefined) hours = (hours % 12) + (half.startsWith("p") ? 12 : 0);
  const [minutes, seconds] = [Number(parts[2]), Number(parts[3] ?? 0)];
  if (hours > 23 || minutes > 59 || seconds > 59) return undefined;
  const fraction = parts[4] === undefined ? "" : `.${parts[4]}`;
  return `${String(hours).padStart(2, "0")}:${parts[2]}:${parts[3] ?? "00"}${fraction}`;
}

/** A date or a time whichever way its parts are ordered. */
export const mayBeTime = (cell: Cell): boolean =>
  loggerTime(cell, "dmy") !== undefined || loggerTime(cell, "mdy") !== undefined;

/** In which order day, month and year stand. 24.11.2026 has the day first; 11/12/2026 alone leaves it open. */
export function dateOrderOf(rows: readonly TableRow[]): Guess<DateOrder> {
  let open: { text: string; mark: string } | undefined;
  for (const { cells } of rows)
    for (const cell of cells) {
      if (typeof cell !== "string" || isEmptyCell(cell)) continue;
      const parts = DATE.exec(cell.trim().split(/[\sT,;_]+/)[0] ?? "");
      if (parts === null || parts[1]!.length === 3) continue;
      const found = { found: cell.trim() };
      if (parts[1]!.length === 4) return guess("ymd", "certain", "logger.why-date-order", found);
      if (Number(parts[1]) > 12) return guess("dmy", "certain", "logger.why-date-order", found);
      if (Number(parts[3]) > 12) return guess("mdy", "certain", "logger.why-date-order", found);
      open ??= { text: cell.trim(), mark: parts[2]! };
    }
  if (open === undefined) return guess("ymd", "certain", "logger.why-no-dates");
  const sure = open.mark === "." ? "likely" : "open";
  return guess("dmy", sure, "logger.why-date-order-open", { found: open.text });
}
