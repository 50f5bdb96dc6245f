import { type Cell, isEmptyCell, type TableRow } from "../table/table.ts";
import { isNoReading } from "./find-table.ts";
import type { GuessedColumn } from "./guess-columns.ts";
import { loggerNumber, type NumberForm } from "./logger-numbers.ts";
import { loggerTime } from "./logger-times.ts";
import type { Role } from "./roles.ts";
import {
  type ConventionName,
  type DateOrder,
  type GivenSettings,
  type Guess,
  givenOr,
  guess,
  type LoggerColumn,
  type LoggerConventions,
} from "./settings.ts";
import { inReadingsUnit, isSlope } from "./units.ts";

export type GuessedConventions = {
  readonly [name in keyof LoggerConventions]: Guess<LoggerConventions[name]>;
};

/** Over this lean a sine and a tangent differ by more than a tenth of a percent (3 degrees: 1 - cos = 0.14 %). */
const SMALL_SLOPE = 0.0523;

const usual = <T>(value: T): Guess<T> => guess(value, "open", "logger.why-convention");
const plain = <T>(value: T): Guess<T> => guess(value, "likely", "logger.why-convention-usual");

/** The conventions: what was given, what the values suggest, and otherwise the program's own way, marked as open. */
export function guessConventions(
  columns: readonly GuessedColumn[],
  rows: readonly TableRow[],
  form: NumberForm & { readonly dateOrder: DateOrder },
  given: GivenSettings["conventions"] = {},
): GuessedConventions {
  const values = (role: Role) => numbersOf(columns, rows, form, role);
  const depths = values("depth");
  return {
    depthSense: givenOr(given.depthSense, () => depthSense(depths)),
    depthZeroM: givenOr(given.depthZeroM, () => plain(0)),
    xTowardsDeg: givenOr(given.xTowardsDeg, () => usual<LoggerConventions["xTowardsDeg"]>(0)),
    ySense: givenOr(given.ySense, () => usual<LoggerConventions["ySense"]>("clockwise")),
    tiltSense: givenOr(given.tiltSense, () => usual<LoggerConventions["tiltSense"]>("down-hole-end")),
    slope: givenOr(given.slope, () => slope(columns, [...values("tilt-x"), ...values("tilt-y")])),
    accelerationSense: givenOr(given.accelerationSense, () =>
      usual<LoggerConventions["accelerationSense"]>("reaction"),
    ),
    zSense: givenOr(given.zSense, () => zSense(values("acc-z"))),
    turnSense: givenOr(given.turnSense, () => usual<LoggerConventions["turnSense"]>("clockwise")),
    azimuthSense: givenOr(given.azimuthSense, () => plain<LoggerConventions["azimuthSense"]>("clockwise")),
    north: givenOr(given.north, () => north(columns)),
    inclinationFrom: givenOr(given.inclinationFrom, () => inclinationFrom(values("inclination"))),
    wholeFace: givenOr(given.wholeFace, () => usual<LoggerConventions["wholeFace"]>(0)),
    sampling: givenOr(given.sampling, () => sampling(depths)),
    incomplete: givenOr(given.incomplete, () => plain<LoggerConventions["incomplete"]>("leave-out")),
    zone: givenOr(given.zone, () => zone(columns, rows, form.dateOrder)),
    missing: givenOr(given.missing, () => missing(rows)),
  };
}

/** Conventions that matter for the columns there are, in the order in which a person sees to them. */
export function conventionsFor(
  columns: readonly Pick<LoggerColumn, "role" | "unit">[],
): readonly ConventionName[] {
  const roles = columns.map(({ role }) => role);
  const has = (...wanted: Role[]) => wanted.some((role) => roles.includes(role));
  const named: ConventionName[] = [];
  if (has("depth")) named.push("depthSense");
  if (has("tilt-x", "tilt-y")) named.push("tiltSense");
  if (columns.some(({ unit }) => isSlope(unit))) named.push("slope");
  if (has("tilt-x", "tilt-y", "acc-x", "acc-y")) named.push("xTowardsDeg", "ySense");
  if (has("acc-x", "acc-y", "acc-z")) named.push("accelerationSense", "zSense");
  if (has("turn")) named.push("turnSense");
  if (has("heading", "azimuth")) named.push("azimuthSense", "north");
  if (has("inclination")) named.push("inclinationFrom");
  if (!has("face", "turn", "heading") && has("tilt-x", "tilt-y")) named.push("wholeFace");
  if (has("turn")) named.push("sampling");
  named.push("incomplete");
  return named;
}

function numbersOf(
  columns: readonly GuessedColumn[],
  rows: readonly TableRow[],
  form: NumberForm,
  role: Role,
): readonly number[] {
  const index = columns.findIndex((column) => column.role.value === role);
  if (index < 0) return [];
  const { unit } = columns[index]!;
  return rows
    .map(({ cells }) => loggerNumber(cells[index], form))
    .filter((number) => number !== undefined)
    .map((number) => (isSlope(unit.value) ? number : inReadingsUnit(number, unit.value, "sine")));
}

function depthSense(depths: readonly number[]): Guess<LoggerConventions["depthSense"]> {
  const [up, down] = [depths.filter((depth) => depth < 0).length, depths.filter((depth) => depth > 0).length];
  if (up > down) return guess("up", "likely", "logger.why-depths-negative");
  return guess("down", "likely", "logger.why-depths-positive");
}

function slope(
  columns: readonly GuessedColumn[],
  tilts: readonly number[],
): Guess<LoggerConventions["slope"]> {
  const units = columns.filter(({ role }) => role.value === "tilt-x" || role.value === "tilt-y");
  const perOne = { "mm/m": 1000, percent: 100, ratio: 1 } as Readonly<Record<string, number>>;
  const largest = Math.max(0, ...units.map(({ unit }) => (perOne[unit.value] ?? 0) * SMALL_SLOPE));
  if (largest === 0) return guess("sine", "certain", "logger.why-no-slope");
  const isSteep = tilts.some((tilt) => Math.abs(tilt) > largest);
  return guess(
    "sine",
    isSteep ? "open" : "likely",
    isSteep ? "logger.why-slope-steep" : "logger.why-slope-small",
  );
}

function zSense(values: readonly number[]): Guess<LoggerConventions["zSense"]> {
  if (values.length === 0) return plain<LoggerConventions["zSense"]>("down");
  const up = values.filter((value) => value > 0).length;
  return 2 * up > values.length
    ? guess("up", "open", "logger.why-z-positive")
    : guess("down", "likely", "logger.why-z-negative");
}

function north(columns: readonly GuessedColumn[]): Guess<LoggerConventions["north"]> {
  const column = columns.find(({ role }) => role.value === "azimuth" || role.value === "heading");
  const words = column?.heading.toLowerCase() ?? "";
  const said = (value: LoggerConventions["north"]) =>
    guess(value, "certain", "logger.why-role-word", { found: words });
  if (/mag|miss/.test(words)) return said("magnetic");
  if (/true|wahr|geogr|hdt/.test(words)) return said("true");
  if (/grid|gitter/.test(words)) return said("grid");
  return usual<LoggerConventions["north"]>("magnetic");
}

function inclinationFrom(values: readonly number[]): Guess<LoggerConventions["inclinationFrom"]> {
  const steep = values.filter((value) => value > 60 && value <= 90).length;
  return 2 * steep > values.length
    ? guess("level", "open", "logger.why-inclination-steep")
    : plain<LoggerConventions["inclinationFrom"]>("plumb");
}

/** At least half of the rows at the depth of the row before: logged all the time. */
function sampling(depths: readonly number[]): Guess<LoggerConventions["sampling"]> {
  const repeated = depths.filter((depth, i) => i > 0 && Math.abs(depth - depths[i - 1]!) < 0.02).length;
  return depths.length > 20 && 2 * repeated > depths.length
    ? guess("continuous", "likely", "logger.why-continuous", { found: repeated, expected: depths.length })
    : guess("stops", "likely", "logger.why-stops");
}

function zone(columns: readonly GuessedColumn[], rows: readonly TableRow[], order: DateOrder): Guess<string> {
  const index = columns.findIndex(({ role }) => role.value === "time");
  const first = rows
    .map(({ cells }) => loggerTime(cells[index], order))
    .find((time) => time?.date !== undefined);
  if (first === undefined || first.zone !== "") return guess("", "certain", "logger.why-zone-written");
  return guess("", "open", "logger.why-zone-open");
}

/** Numbers that loggers write for "no reading". */
const CODES = /^-?9{4,6}([.,]9*0*)?$|^-999[.,]250*$/;

function missing(rows: readonly TableRow[]): Guess<readonly string[]> {
  const seen = new Set<string>();
  for (const { cells } of rows)
    for (const cell of cells) if (!isEmptyCell(cell) && standsForNothing(cell)) seen.add(String(cell).trim());
  const words = [...seen].sort().slice(0, 20);
  if (words.length === 0) return guess([], "certain", "logger.why-nothing-missing");
  const sure = words.every((word) => !CODES.test(word)) ? "likely" : "open";
  return guess(words, sure, "logger.why-missing", { found: words.join(" ") });
}

const standsForNothing = (cell: Cell): boolean =>
  isNoReading(cell) || (typeof cell !== "object" && CODES.test(String(cell).trim()));
