import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import { type Cell, isEmptyCell, type TableRow } from "../table/table.ts";
import { isNoReading } from "./find-table.ts";
import { loggerNumber } from "./logger-numbers.ts";
import { loggerTime } from "./logger-times.ts";
import type { LoggerFile } from "./open-logger.ts";
import type { Role } from "./roles.ts";
import type { LoggerSettings } from "./settings.ts";
import { inReadingsUnit } from "./units.ts";

/** What is odd about a row; each is told as a finding too. */
export const FLAGS = [
  "not-a-row",
  "cells-odd",
  "no-depth",
  "value-missing",
  "over-range",
  "bad-cell",
  "depth-repeated",
  "depth-turns",
  "gap",
] as const;
export type Flag = (typeof FLAGS)[number];

/** Smallest and largest value that can be meant, in the unit of the readings file. */
const RANGE: Readonly<Partial<Record<Role, readonly [number, number]>>> = {
  depth: [-15_000, 15_000],
  "tilt-x": [-90, 90],
  "tilt-y": [-90, 90],
  turn: [-1e6, 1e6],
  heading: [-360, 360],
  azimuth: [-360, 360],
  inclination: [-90, 180],
  temperature: [-60, 150],
  samples: [1, 1e9],
};

/** The program's words for faces and legs, and what loggers write for them. */
const LEG_WORDS: Readonly<Record<string, string>> = {
  ...words("down", "down dn d in lowering ab runter hinab abwärts descente abajo giu neer"),
  ...words("up", "up u out raising auf hinauf rauf aufwärts montée arriba su op"),
  ...words("open", "open opening start anfang beginn"),
  ...words("close", "close closing end ende schluss"),
  ...words("tie", "tie check anschluss"),
};
const FACE_WORDS: Readonly<Record<string, 1 | 2>> = {
  "1": 1,
  i: 1,
  "0": 1,
  "0°": 1,
  a0: 1,
  "+": 1,
  "2": 2,
  ii: 2,
  "180": 2,
  "180°": 2,
  a180: 2,
  "-": 2,
};

function words(leg: string, list: string): Record<string, string> {
  return Object.fromEntries(list.split(" ").map((word) => [word, leg]));
}

/** A row with its values in the unit of the readings file, before signs are turned; NaN = not there. */
export interface ReadRow {
  readonly line: number;
  readonly numbers: Readonly<Partial<Record<Role, number>>>;
  readonly time: string | number | undefined;
  readonly leg: string | undefined;
  readonly face: 1 | 2 | undefined;
  readonly flags: Flag[];
}

/** Reads the rows of a file by its settings, and tells what cannot be read. Nothing is put in the place of a bad cell. */
export class RowReader {
  readonly #settings: LoggerSettings;
  readonly #writtenUnits: readonly string[];
  readonly #width: number;
  readonly #missing: ReadonlySet<string>;
  readonly #found: Finder;

  constructor(file: LoggerFile, found: Finder) {
    this.#settings = file.settings;
    this.#writtenUnits = file.writtenUnits;
    this.#width = file.settings.columns.length;
    this.#missing = new Set(file.settings.conventions.missing.map((word) => word.toLowerCase()));
    this.#found = found;
  }

  /** @returns undefined for a row whose cells cannot be told apart; it is told. */
  read(row: TableRow): ReadRow | undefined {
    const filled = row.cells.findLastIndex((cell) => !isEmptyCell(cell)) + 1;
    const isSheet = this.#settings.layout.separator === "workbook";
    if (filled > this.#width || (row.cells.length < this.#width && !isSheet)) {
      this.#found.error(
        "logger.cell-count",
        { line: row.line },
        { found: row.cells.length, expected: this.#width },
      );
      return undefined;
    }
    const numbers: Partial<Record<Role, number>> = {};
    const flags: Flag[] = [];
    for (const [index, { role }] of this.#settings.columns.entries())
      if (!isTextual(role)) numbers[role] = this.#number(row, index, role, flags);
    return {
      line: row.line,
      numbers,
      time: this.#time(row, flags),
      leg: this.#word(row, "leg", LEG_WORDS, flags),
      face: this.#word(row, "face", FACE_WORDS, flags),
      flags,
    };
  }

  #number(row: TableRow, index: number, role: Role, flags: Flag[]): number {
    const cell = row.cells[index];
    const { heading, unit } = this.#settings.columns[index]!;
    const at = { line: row.line, field: heading };
    if (this.#isMissing(cell)) {
      flags.push(role === "depth" ? "no-depth" : "value-missing");
      const found = isEmptyCell(cell) ? "an empty cell" : excerpt(String(cell));
      this.#found.warning(role === "depth" ? "logger.no-depth" : "logger.value-missing", at, {
        found,
        expected: "a number",
      });
      return Number.NaN;
    }
    const { decimal, thousands } = this.#settings.layout;
    const number = loggerNumber(cell, { decimal, thousands });
    if (number === undefined) {
      flags.push("bad-cell");
      this.#found.error("logger.cell-number", at, { found: excerpt(String(cell)), expected: "a number" });
      return Number.NaN;
    }
    const value = inReadingsUnit(number, unit, this.#settings.conventions.slope);
    const [min, max] = RANGE[role] ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    if (this.#isCode(cell) || !(value >= min && value <= max)) {
      flags.push("over-range");
      const written = this.#writtenUnits[index] ?? "";
      const found = excerpt(written === "" ? String(cell) : `${String(cell)} ${written}`);
      this.#found.warning("logger.over-range", at, { found, expected: `${min} to ${max}` });
      return Number.NaN;
    }
    return value;
  }

  /** A word such as NaN or ---, or nothing. A number such as 9999 that stands for nothing is over range. */
  #isMissing(cell: Cell): boolean {
    if (isEmptyCell(cell) || isNoReading(cell)) return true;
    return this.#isCode(cell) && !/\d/.test(String(cell));
  }

  #isCode(cell: Cell): boolean {
    return typeof cell !== "object" && this.#missing.has(String(cell).trim().toLowerCase());
  }

  #time(row: TableRow, flags: Flag[]): string | number | undefined {
    const { columns, layout, conventions } = this.#settings;
    const index = columns.findIndex(({ role }) => role === "time");
    if (index < 0) return undefined;
    const cell = row.cells[index];
    const { heading, unit } = columns[index]!;
    if (isEmptyCell(cell)) return undefined;
    const time = loggerTime(cell, layout.dateOrder);
    if (time === undefined) {
      const number = loggerNumber(cell, layout);
      if (number !== undefined) return inReadingsUnit(number, unit, "sine");
      flags.push("bad-cell");
      const at = { line: row.line, field: heading };
      this.#found.error("logger.cell-time", at, { found: excerpt(String(cell)), expected: "a time" });
      return undefined;
    }
    const day = time.date ?? this.#date(row);
    if (day === undefined) return time.clock;
    const zone = time.zone === "" ? conventions.zone : time.zone;
    return `${day}T${time.clock ?? "00:00:00"}${zone}`;
  }

  #date(row: TableRow): string | undefined {
    const { columns, layout } = this.#settings;
    const index = columns.findIndex(({ role }) => role === "date");
    return index < 0 ? undefined : loggerTime(row.cells[index], layout.dateOrder)?.date;
  }

  #word<T>(row: TableRow, role: Role, known: Readonly<Record<string, T>>, flags: Flag[]): T | undefined {
    const index = this.#settings.columns.findIndex((column) => column.role === role);
    const cell = row.cells[index];
    if (index < 0 || isEmptyCell(cell)) return undefined;
    const word = String(cell).trim().toLowerCase();
    if (Object.hasOwn(known, word)) return known[word];
    flags.push("bad-cell");
    const at = { line: row.line, field: this.#settings.columns[index]!.heading };
    const expected = [...new Set(Object.values(known))].join(", ");
    this.#found.error("logger.word-unknown", at, { found: excerpt(word), expected });
    return undefined;
  }
}

const isTextual = (role: Role): boolean =>
  role === "none" || role === "date" || role === "time" || role === "face" || role === "leg";
