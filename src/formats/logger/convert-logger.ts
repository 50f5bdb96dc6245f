import type { Issue, Measures } from "#core";
import { excerpt } from "../finding/excerpt.ts";
import { Finder, gatherFindings } from "../finding/finder.ts";
import { READINGS_COLUMNS } from "../job-folder/readings-columns.ts";
import type { CellTable, CellValue } from "../table/cells.ts";
import { carryTurnOn, flagDepths, type TurnedRow } from "./check-rows.ts";
import { isDataRow } from "./find-table.ts";
import type { LoggerFile } from "./open-logger.ts";
import type { Role } from "./roles.ts";
import { type Flag, RowReader } from "./row-reader.ts";
import { directionOf, turnSigns } from "./turn-signs.ts";

/** A row of the file and what became of it. */
export interface ConvertedRow {
  readonly line: number;
  readonly flags: readonly Flag[];
  /** false: it is not among the readings; a finding says why */
  readonly isTaken: boolean;
}

/** A logger's file as readings of a job folder. */
export interface LoggerReadings {
  /** undefined where the columns make up no kind of run */
  readonly measures: Measures | undefined;
  /** columns of the readings file, in its order */
  readonly cells: CellTable;
  /** line of the file of each row of `cells` */
  readonly lines: readonly number[];
  readonly rows: readonly ConvertedRow[];
  /** fields of the run that the mapping settles: `azimuth_north`, `sampling` */
  readonly runSettings: Readonly<Record<string, string>>;
  readonly findings: readonly Issue[];
}

/**
 * Converts a logger's file by its settings into readings of a job folder: metres, degrees, the program's axes and signs.
 *
 * Every row is told that is left out or odd; no bad cell becomes a number. Rows without a value that the kind of run needs are
 * left out, or kept with the cell empty, as the settings say.
 */
export function convertLogger(file: LoggerFile): LoggerReadings {
  const found = new Finder(file.name);
  const roles = new Set(file.settings.columns.map(({ role }) => role));
  const { conventions } = file.settings;
  const measures = measuresOf(roles, conventions.wholeFace !== 0);
  if (measures === undefined) tellMissingRoles(roles, found);
  tellUnitClash(file, found);
  const rows: ConvertedRow[] = [];
  const read = readRows(file, rows, found);
  if (measures === "inclination-azimuth" && !roles.has("inclination")) makeDirections(read, found);
  carryTurnOn(read, found);
  if (conventions.sampling !== "continuous") flagDepths(read, headingOf(file, "depth"), found);
  const needed = neededRoles(measures, roles);
  const taken = read.filter((row) => isWhole(row, needed) || conventions.incomplete === "keep");
  const takenRows = new Set(taken);
  for (const role of ["time", "face"] as const)
    if (needed.includes(role)) tellEmpty(read, role, headingOf(file, role), found);
  for (const row of read) rows.push({ line: row.line, flags: row.flags, isTaken: takenRows.has(row) });
  const left = read.length - taken.length;
  if (left > 0) {
    const first = read.find((row) => !takenRows.has(row))!;
    found.warning("logger.rows-left-out", { line: first.line }, { found: left, expected: read.length });
  }
  return {
    measures,
    cells: cellsFrom(taken, roles, measures, conventions.wholeFace),
    lines: taken.map(({ line }) => line),
    rows: rows.toSorted((a, b) => a.line - b.line),
    runSettings: runSettingsOf(file, measures),
    findings: gatherFindings([found]),
  };
}

function measuresOf(roles: ReadonlySet<Role>, hasFace: boolean): Measures | undefined {
  const has = (...wanted: Role[]) => wanted.every((role) => roles.has(role));
  const deep = roles.has("depth") || roles.has("count");
  if (deep && has("acc-x", "acc-y", "acc-z", "turn", "time")) return "acceleration-turn";
  if (deep && has("tilt-x", "tilt-y", "turn", "time")) return "tilt-turn";
  if (has("depth", "inclination", "azimuth")) return "inclination-azimuth";
  if (has("depth", "tilt-x", "tilt-y", "heading")) return "inclination-azimuth";
  if (has("depth", "tilt-x", "tilt-y") && (hasFace || roles.has("face"))) return "keyed-tilt";
  return undefined;
}

/** What is nearest to making up a run, and lacks least. */
const KINDS: readonly (readonly Role[])[] = [
  ["depth", "inclination", "azimuth"],
  ["depth", "tilt-x", "tilt-y", "heading"],
  ["depth", "tilt-x", "tilt-y", "face"],
  ["depth", "tilt-x", "tilt-y", "turn", "time"],
  ["depth", "acc-x", "acc-y", "acc-z", "turn", "time"],
];

function tellMissingRoles(roles: ReadonlySet<Role>, found: Finder): void {
  const lacking = KINDS.map((kind) => kind.filter((role) => !roles.has(role)));
  const least = lacking.reduce((best, each) => (each.length < best.length ? each : best));
  found.block("logger.role-missing", {}, { found: "no such column", expected: least.join(", ") });
}

/** Accelerations may be in any one unit. */
function tellUnitClash(file: LoggerFile, found: Finder): void {
  const columns = file.settings.columns.filter(({ role }) => role.startsWith("acc-"));
  const other = columns.find(({ unit }) => unit !== columns[0]?.unit);
  if (other !== undefined)
    found.block(
      "logger.unit-clash",
      { field: other.heading },
      { found: other.unit, expected: columns[0]!.unit },
    );
}

function readRows(file: LoggerFile, told: ConvertedRow[], found: Finder): TurnedRow[] {
  const reader = new RowReader(file, found);
  const rows: TurnedRow[] = [];
  for (const row of file.rows) {
    if (!isDataRow(row)) {
      const text = row.cells.map((cell) => String(cell ?? "")).join(" ");
      found.warning(
        "logger.not-a-row",
        { line: row.line },
        { found: excerpt(text), expected: "a row of readings" },
      );
      told.push({ line: row.line, flags: ["not-a-row"], isTaken: false });
      continue;
    }
    const read = reader.read(row);
    if (read === undefined) told.push({ line: row.line, flags: ["cells-odd"], isTaken: false });
    else rows.push({ ...read, numbers: turnSigns(read.numbers, file.settings.conventions) });
  }
  return rows;
}

/** Empty cells of a column of words without which a row means nothing; bad ones have been told. */
function tellEmpty(rows: readonly TurnedRow[], role: "time" | "face", field: string, found: Finder): void {
  const expected = role === "time" ? "a time" : "1 or 2";
  for (const row of rows) {
    if (row[role] !== undefined || row.flags.includes("bad-cell")) continue;
    row.flags.push("value-missing");
    found.warning("logger.value-missing", { line: row.line, field }, { found: "an empty cell", expected });
  }
}

const headingOf = (file: LoggerFile, wanted: Role): string =>
  file.settings.columns.find(({ role }) => role === wanted)?.heading ?? wanted;

function makeDirections(rows: readonly TurnedRow[], found: Finder): void {
  for (const { numbers } of rows) {
    const { "tilt-x": x = Number.NaN, "tilt-y": y = Number.NaN, heading = Number.NaN } = numbers;
    const { inclination, azimuth } = directionOf(x, y, heading);
    numbers.inclination = inclination;
    numbers.azimuth = azimuth;
  }
  found.note(
    "logger.directions-made",
    {},
    { found: "tilts and a heading", expected: "inclination and azimuth" },
  );
}

function neededRoles(
  measures: Measures | undefined,
  roles: ReadonlySet<Role>,
): readonly (Role | "direction")[] {
  const deep: Role = roles.has("depth") ? "depth" : "count";
  if (measures === "tilt-turn") return [deep, "tilt-x", "tilt-y", "turn", "time"];
  if (measures === "acceleration-turn") return [deep, "acc-x", "acc-y", "acc-z", "turn", "time"];
  if (measures === "inclination-azimuth") return [deep, "direction"];
  // the sign of a tilt hangs on its face
  if (measures === "keyed-tilt")
    return [deep, "tilt-x", "tilt-y", ...(roles.has("face") ? ["face" as const] : [])];
  return [...roles].filter((role) => role === "depth" || role === "count");
}

function isWhole({ numbers, time, face }: TurnedRow, needed: readonly (Role | "direction")[]): boolean {
  const has = (role: Role) => !Number.isNaN(numbers[role] ?? Number.NaN);
  return needed.every((role) => {
    if (role === "time") return time !== undefined;
    if (role === "face") return face !== undefined;
    // straight down there is no azimuth
    if (role === "direction") return has("inclination") && (has("azimuth") || numbers.inclination === 0);
    return has(role);
  });
}

const COLUMN_OF: readonly (readonly [string, Role])[] = [
  ["depth_m", "depth"],
  ["count", "count"],
  ["tilt_x_deg", "tilt-x"],
  ["tilt_y_deg", "tilt-y"],
  ["turn_deg", "turn"],
  ["acc_x", "acc-x"],
  ["acc_y", "acc-y"],
  ["acc_z", "acc-z"],
  ["inclination_deg", "inclination"],
  ["azimuth_deg", "azimuth"],
  ["temperature_c", "temperature"],
  ["samples", "samples"],
];

function cellsFrom(
  rows: readonly TurnedRow[],
  roles: ReadonlySet<Role>,
  measures: Measures | undefined,
  wholeFace: 0 | 1 | 2,
): CellTable {
  const made = new Map<string, readonly CellValue[]>();
  const times = rows.map(({ time }) => time ?? null);
  const isSeconds = times.some((time) => typeof time === "number");
  if (roles.has("time")) made.set(isSeconds ? "time_s" : "time", times);
  for (const [name, role] of COLUMN_OF) {
    const values = rows.map(({ numbers }) => numbers[role] ?? Number.NaN);
    if (roles.has(role) || values.some((value) => !Number.isNaN(value)))
      made.set(
        name,
        values.map((value) => (Number.isNaN(value) ? null : value)),
      );
  }
  if (roles.has("leg"))
    made.set(
      "leg",
      rows.map(({ leg }) => leg ?? null),
    );
  if (roles.has("face"))
    made.set(
      "face",
      rows.map(({ face }) => face ?? null),
    );
  else if (wholeFace !== 0)
    made.set(
      "face",
      rows.map(() => wholeFace),
    );
  if (measures === "inclination-azimuth") for (const name of ["tilt_x_deg", "tilt_y_deg"]) made.delete(name);
  const headings = READINGS_COLUMNS.map(({ name }) => name).filter((name) => made.has(name));
  return { headings, columns: headings.map((name) => made.get(name)!), count: rows.length };
}

function runSettingsOf(file: LoggerFile, measures: Measures | undefined): Readonly<Record<string, string>> {
  const { north, sampling } = file.settings.conventions;
  if (measures === "inclination-azimuth") return { azimuth_north: north };
  if (measures !== "keyed-tilt" && measures !== undefined && sampling === "continuous") return { sampling };
  return {};
}
