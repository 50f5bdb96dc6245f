import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import { numberInCell } from "../table/numbers.ts";
import type { TableReader } from "../table/table-reader.ts";
import { isoOf, momentOf } from "../text/iso-time.ts";

const SECONDS_PER_DAY = 86_400;

export interface Times {
  /** seconds from the first time; NaN where a row has none */
  readonly timeS: Float64Array;
  /** ISO 8601 moment of the first time, where the file gives dates */
  readonly startedAt: string | undefined;
}

type Kind = "moment" | "clock" | "seconds";
interface ReadTime {
  readonly kind: Kind;
  readonly seconds: number;
  readonly zoned: boolean;
}

/**
 * Times of the rows: column `time` (date and time, ISO 8601; time of day; or seconds), or column `time_s`. One form a file.
 *
 * A time of day that falls by more than half a day has passed midnight, which is told as a note.
 *
 * @param needed whether a bad time blocks the run.
 * Errors: formats.cell-empty, formats.cell-time, formats.time-mixed. Notes: formats.time-without-zone, formats.time-midnight.
 */
export function readTimes(table: TableReader, needed: boolean, found: Finder): Times {
  const count = table.rows.length;
  const timeS = new Float64Array(count).fill(Number.NaN);
  const column = table.has("time") ? "time" : "time_s";
  if (!table.has(column)) return { timeS, startedAt: undefined };
  const tell = (code: string, line: number, what: string, expected: string): void => {
    const at = { line, field: table.heading(column) };
    if (needed) found.block(code, at, { found: what, expected });
    else found.error(code, at, { found: what, expected });
  };
  let first: ReadTime | undefined;
  let days = 0;
  let previous = Number.NaN;
  for (const [index, row] of table.rows.entries()) {
    const text = table.text(row, column, needed ? "required" : "optional");
    if (text === undefined) continue;
    const time = readTime(text, column);
    if (time === undefined) {
      tell("formats.cell-time", row.line, excerpt(text), "a date with time, a time of day, or seconds");
      continue;
    }
    first ??= time;
    if (time.kind !== first.kind || time.zoned !== first.zoned) {
      tell("formats.time-mixed", row.line, excerpt(text), "the same form in every row");
      continue;
    }
    if (time.kind === "clock" && time.seconds + days < previous - SECONDS_PER_DAY / 2) {
      days += SECONDS_PER_DAY;
      const values = { found: excerpt(text), expected: "times of one day" };
      found.note("formats.time-midnight", { line: row.line, field: table.heading(column) }, values);
    }
    previous = time.seconds + days;
    timeS[index] = previous - first.seconds;
  }
  if (first?.kind === "moment" && !first.zoned) {
    const at = { line: table.rows[0]?.line ?? 1, field: table.heading(column) };
    found.note("formats.time-without-zone", at, { found: "a time without zone", expected: "Z or an offset" });
  }
  return { timeS, startedAt: first?.kind === "moment" ? isoOf(first.seconds * 1000) : undefined };
}

function readTime(text: string, column: "time" | "time_s"): ReadTime | undefined {
  const number = numberInCell(text, text.includes(",") ? "," : ".");
  if (number !== undefined) return { kind: "seconds", seconds: number, zoned: false };
  if (column === "time_s") return undefined;
  const moment = momentOf(text);
  if (moment !== undefined) return { kind: "moment", seconds: moment.ms / 1000, zoned: moment.zoned };
  const clock = /^(\d{1,2}):(\d\d)(?::(\d\d(?:[.,]\d+)?))?$/.exec(text);
  if (clock === null) return undefined;
  const [hours, minutes] = [Number(clock[1]), Number(clock[2])];
  const seconds = Number((clock[3] ?? "0").replace(",", "."));
  if (hours > 23 || minutes > 59 || seconds >= 60) return undefined;
  return { kind: "clock", seconds: hours * 3600 + minutes * 60 + seconds, zoned: false };
}
