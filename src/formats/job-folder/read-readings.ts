import type { Leg, Measures, Readings } from "#core";
import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import type { TableRow } from "../table/table.ts";
import type { TableReader } from "../table/table-reader.ts";
import { checkReadings } from "./check-readings.ts";
import { readCsvFile } from "./read-table-file.ts";
import { readTimes } from "./read-times.ts";
import { measuresTurn, NEEDED_COLUMNS, READINGS_COLUMNS } from "./readings-columns.ts";

export interface ReadingsRead {
  readonly readings: Readings;
  readonly startedAt: string | undefined;
}

/**
 * Reads one readings file, as the run's `measures` says what its columns mean.
 *
 * A cell of a needed column that cannot be read blocks the run (`found.blocked`); a bad cell of another column is an
 * error, and counts as not recorded.
 *
 * @returns undefined when there are no rows that can be read.
 * Frame: probe. Angles in radians, lengths in metres; NaN = not recorded.
 */
export function readReadings(bytes: Uint8Array, measures: Measures, found: Finder): ReadingsRead | undefined {
  const table = readCsvFile(bytes, READINGS_COLUMNS, found);
  if (table === undefined) return undefined;
  requireColumns(table, measures, found);
  if (table.rows.length === 0) {
    found.block(
      "formats.no-rows",
      { line: 1 },
      { found: "headings only", expected: "a row for each station" },
    );
    return undefined;
  }
  const times = readTimes(table, measuresTurn(measures), found);
  const readings = { ...readColumns(table, measures, found), timeS: times.timeS };
  const heading = (name: string): string => table.heading(name);
  checkReadings(readings, measures, heading, found);
  return { readings, startedAt: times.startedAt };
}

/** Blocks the file where a column is missing without which a run of the kind means nothing. */
export function requireColumns(table: TableReader, measures: Measures, found: Finder): void {
  for (const name of NEEDED_COLUMNS[measures])
    if (name !== "depth") table.require(name);
    else if (!table.has("count")) table.require("depth_m");
  if (measuresTurn(measures) && !table.has("time_s")) table.require("time");
  if (table.has("depth_m") && table.has("count"))
    found.note(
      "formats.depth-and-count",
      { field: table.heading("count") },
      { found: "both", expected: "depth_m is used" },
    );
}

function readColumns(table: TableReader, measures: Measures, found: Finder): Omit<Readings, "timeS"> {
  const needed = NEEDED_COLUMNS[measures];
  const rows = table.rows;
  const missing = (): Float64Array => new Float64Array(rows.length).fill(Number.NaN);
  const column = (name: string, asked = needed.includes(name)): Float64Array =>
    table.has(name)
      ? Float64Array.from(rows, (row) => table.number(row, name, asked ? "required" : "optional"))
      : missing();
  const depthAsked = table.has("depth_m");
  const inclinationRad = column("inclination_deg");
  return {
    count: rows.length,
    depthM: column("depth_m", depthAsked),
    depthCounts: depthAsked ? missing() : column("count", true),
    tiltXRad: column("tilt_x_deg"),
    tiltYRad: column("tilt_y_deg"),
    turnRad: column("turn_deg"),
    accX: column("acc_x"),
    accY: column("acc_y"),
    accZ: column("acc_z"),
    inclinationRad,
    // Straight down there is no azimuth to write.
    azimuthRad: Float64Array.from(rows, (row, index) =>
      table.number(
        row,
        "azimuth_deg",
        needed.includes("azimuth_deg") && inclinationRad[index] !== 0 ? "required" : "optional",
      ),
    ),
    leg: rows.map((row) => (table.word(row, "leg", "optional") ?? "") as Leg),
    face: readFaces(table, needed.includes("face"), found),
    temperatureC: column("temperature_c"),
    samples: column("samples"),
    seTiltXRad: column("se_tilt_x_deg"),
    seTiltYRad: column("se_tilt_y_deg"),
    line: Int32Array.from(rows, (row) => row.line),
  };
}

function readFaces(table: TableReader, needed: boolean, found: Finder): Uint8Array {
  return Uint8Array.from(table.rows, (row) => readFace(table, row, needed, found));
}

/** A face other than 1 or 2 would turn the sign of a tilt by guess: it blocks the run. */
export function readFace(table: TableReader, row: TableRow, needed: boolean, found: Finder): 0 | 1 | 2 {
  const text = table.text(row, "face", needed ? "required" : "optional");
  if (text === "1" || text === "2") return text === "1" ? 1 : 2;
  if (text === undefined) return 0;
  const values = { found: excerpt(text), expected: "1 or 2" };
  found.block("formats.cell-choice", { line: row.line, field: table.heading("face") }, values);
  return 0;
}
