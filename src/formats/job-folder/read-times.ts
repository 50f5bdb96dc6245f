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
  const clock = new RunClock(column, table.heading(column), needed, found);
  for (const [index, row] of table.rows.entries()) {
    const text = table.text(row, column, needed ? "required" : "optional");
    if (text !== undefined) timeS[index] = clock.next(text, row.line);
  }
  return { timeS, startedAt: clock.startedAt() };
}

/** Reads the times of the rows one after the other, and tells what is wrong with them. */
export class RunClock {
  #first: ReadTime | undefined;
  #firstLine = 1;
  #days = 0;
  #previous = Number.NaN;
  readonly #column: "time" | "time_s";
  readonly #heading: string;
  readonly #needed: boolean;
  readonly #found: Finder;

  constructor(column: "time" | "time_s", heading: string, needed: boolean, found: Finder) {
    this.#column = column;
    this.#heading = heading;
    this.#needed = needed;
    this.#found = found;
  }

  /** Seconds from the first time; NaN, with a finding, for a text that is no time or of another form than the first. */
  next(text: string, line: number): number {
    const time = readTime(text, this.#column);
    if (time === undefined) {
      this.#tell("formats.cell-time", line, text, "a date with time, a time of day, or seconds");
      return Number.NaN;
    }
    if (this.#first === undefined) [this.#first, this.#firstLine] = [time, line];
    if (time.kind !== this.#first.kind || time.zoned !== this.#first.zoned) {
      this.#tell("formats.time-mixed", line, text, "the same form in every row");
      return Number.NaN;
    }
    if (time.kind === "clock" && time.seconds + this.#days < this.#previous - SECONDS_PER_DAY / 2) {
      this.#days += SECONDS_PER_DAY;
      const values = { found: excerpt(text), expected: "times of one day" };
      this.#found.note("formats.time-midnight", { line, field: this.#heading }, values);
    }
    this.#previous = time.seconds + this.#days;
    return this.#previous - this.#first.seconds;
  }

  /** ISO 8601 moment of the first time, where the file gives dates; a time without zone is told. To be asked at the end, once. */
  startedAt(): string | undefined {
    if (this.#first?.kind !== "moment") return undefined;
    if (!this.#first.zoned) {
      const at = { line: this.#firstLine, field: this.#heading };
      const values = { found: "a time without zone", expected: "Z or an offset" };
      this.#found.note("formats.time-without-zone", at, values);
    }
    return isoOf(this.#first.seconds * 1000);
  }

  #tell(
    code: "formats.cell-time" | "formats.time-mixed",
    line: number,
    text: string,
    expected: string,
  ): void {
    const at = { line, field: this.#heading };
    const values = { found: excerpt(text), expected };
    if (this.#needed) this.#found.block(code, at, values);
    else this.#found.error(code, at, values);
  }
}

/** A log of times that fall is no log: told once, at the first. */
export function tellTimesBackwards(
  timeS: Float64Array,
  line: Int32Array,
  field: string,
  found: Finder,
): void {
  for (let i = 1; i < timeS.length; i++) {
    if (!(timeS[i]! < timeS[i - 1]!)) continue;
    const values = {
      found: `${(timeS[i - 1]! - timeS[i]!).toFixed(2)} s earlier`,
      expected: "a time after the row before",
    };
    found.block("formats.time-backwards", { line: line[i]!, field }, values);
    return;
  }
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
