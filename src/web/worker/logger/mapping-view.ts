import type { Measures } from "#core";
import {
  type CellTable,
  conventionsFor,
  fingerprintOf,
  type LoggerFile,
  type LoggerReadings,
  shortFingerprint,
} from "#formats";
import type { MappedRow, MappingView, PreviewLine } from "../desk-logger.ts";

/** Rows of the file that are shown, and points that are drawn. */
const SHOWN_ROWS = 200;
const DRAWN_POINTS = 800;

const DRAWN: Readonly<Record<Measures, readonly string[]>> = {
  "tilt-turn": ["tilt_x_deg", "tilt_y_deg"],
  "acceleration-turn": ["acc_x", "acc_y"],
  "inclination-azimuth": ["inclination_deg"],
  "keyed-tilt": ["tilt_x_deg", "tilt_y_deg"],
};

/** A file as it is understood, small enough for the screen. */
export function mappingView(
  file: LoggerFile,
  readings: LoggerReadings,
  template: string | undefined,
): MappingView {
  const { settings, reasons } = file;
  const { cells, measures } = readings;
  const times = columnOf(cells, "time");
  const every = Math.max(1, Math.ceil(cells.count / DRAWN_POINTS));
  const thin = (name: string) => numbersOf(columnOf(cells, name), every);
  const drawn =
    measures === undefined ? cells.headings.filter((name) => name.startsWith("tilt")) : DRAWN[measures];
  return {
    file: file.name,
    settings,
    reasons,
    conventions: conventionsFor(settings.columns),
    preamble: file.preamble,
    template,
    fingerprint: shortFingerprint(fingerprintOf(file)),
    rows: rowsOf(file, readings),
    count: file.rows.length,
    taken: cells.count,
    measures,
    isDated: times.length > 0 && times.every((time) => typeof time === "string" && time.includes("T")),
    depthM: thin(cells.headings.includes("depth_m") ? "depth_m" : "count"),
    lines: drawn.map((name): PreviewLine => ({ name, values: thin(name) })),
    findings: [...file.findings, ...readings.findings],
  };
}

const columnOf = (cells: CellTable, name: string) => cells.columns[cells.headings.indexOf(name)] ?? [];

const numbersOf = (cells: readonly (string | number | null)[], every: number): Float64Array =>
  Float64Array.from(
    cells.filter((_, i) => i % every === 0),
    (cell) => (typeof cell === "number" ? cell : Number.NaN),
  );

function rowsOf(file: LoggerFile, readings: LoggerReadings): readonly MappedRow[] {
  const became = new Map(readings.rows.map((row) => [row.line, row]));
  return file.rows.slice(0, SHOWN_ROWS).map(({ line, cells }) => ({
    line,
    cells: file.settings.columns.map((_, i) => textOf(cells[i])),
    flags: became.get(line)?.flags ?? [],
    isTaken: became.get(line)?.isTaken ?? false,
  }));
}

const textOf = (cell: string | number | boolean | Date | undefined): string =>
  cell instanceof Date
    ? cell
        .toISOString()
        .replace("T", " ")
        .replace(/\.000Z$/, "")
    : String(cell ?? "");
