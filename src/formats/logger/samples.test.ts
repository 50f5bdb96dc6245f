import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { convertLogger } from "./convert-logger.ts";
import { loggerNumber } from "./logger-numbers.ts";
import { type LoggerFile, openLogger } from "./open-logger.ts";
import type { Flag } from "./row-reader.ts";
import type { Encoding } from "./settings.ts";

interface Expected {
  readonly encoding: string;
  readonly rows: readonly (readonly number[])[];
  readonly delimiter?: string;
  readonly decimal?: string;
  readonly thousands?: string;
  readonly units_row?: number;
  readonly header_row?: number;
  readonly time?: readonly string[];
  readonly flags?: Readonly<Record<string, string>>;
  readonly bad_checksum_lines?: readonly number[];
}

/** Samples made by hand, with what stands in them written down beside them. */
const folder = resolve(import.meta.dirname, "../../../test/fixtures/logger");
const samples = JSON.parse(readFileSync(join(folder, "expected.json"), "utf8")) as Record<string, Expected>;

const ENCODING_OF: Readonly<Record<string, Encoding>> = {
  "utf-8": "utf-8",
  "utf-8-sig": "utf-8",
  ascii: "utf-8",
  cp1252: "windows-1252",
  "utf-16": "utf-16le",
};

async function open(name: string): Promise<LoggerFile> {
  const opened = await openLogger(new Uint8Array(readFileSync(join(folder, name))), name);
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return opened.file;
}

describe.each(Object.entries(samples))("%s", (name, expected) => {
  test("encoding, separator and signs", async () => {
    const { settings } = await open(name);
    expect(settings.layout.encoding).toBe(ENCODING_OF[expected.encoding]);
    if (expected.delimiter === "spaces") expect(settings.layout.separator).toContain("blanks");
    else if (expected.delimiter !== undefined) expect(settings.layout.separator).toBe(expected.delimiter);
    if (expected.decimal !== undefined) expect(settings.layout.decimal).toBe(expected.decimal);
    if (expected.thousands !== undefined) expect(settings.layout.thousands).toBe(expected.thousands);
    if (expected.units_row !== undefined) expect(settings.layout.unitsLine).toBe(expected.units_row);
    if (expected.header_row !== undefined) expect(settings.layout.headingLine).toBe(expected.header_row);
  });

  test("every number as it is meant", async () => {
    const file = await open(name);
    const { layout, columns } = file.settings;
    const isMeasured = columns.map(({ role }) => role !== "none" && role !== "time");
    const numbers = file.rows.map(({ cells }) =>
      cells.filter((_, i) => isMeasured[i]).map((cell) => loggerNumber(cell, layout)),
    );
    const inFile = expected.rows.map((row) =>
      name.startsWith("04") ? row.map((value, i) => (i === 0 ? value * 100 : value)) : row,
    );
    if (expected.rows.length > 0) expect(numbers).toEqual(inFile);
    else expect(numbers.length).toBeGreaterThan(0);
  });

  test("lines that are bad or odd are told, and no line is lost", async () => {
    const file = await open(name);
    const flagOf: Readonly<Record<string, Flag>> = {
      "duplicate depth": "depth-repeated",
      "no depth": "no-depth",
      "missing value": "value-missing",
      overrange: "over-range",
      "depth reversed": "depth-turns",
    };
    const { rows, findings } = convertLogger(file);
    expect(rows.map(({ line }) => line)).toEqual(file.rows.map(({ line }) => line));
    const expectedFlags = Object.entries(expected.flags ?? {});
    for (const [line, flag] of expectedFlags) {
      expect(rows.find((row) => row.line === Number(line))?.flags).toContain(flagOf[flag]);
      expect(findings.map(({ place }) => place.line)).toContain(Number(line));
    }
    const flagged = rows.filter(({ flags }) => flags.length > 0).map(({ line }) => String(line));
    expect(flagged).toEqual(expectedFlags.map(([line]) => line));
    expect(file.badLines).toEqual(expected.bad_checksum_lines ?? []);
  });
});

test("a bad checksum is told with its line, what stands there and what is right", async () => {
  const { findings } = await open("07_nmea_like.txt");
  expect(findings).toContainEqual({
    code: "logger.checksum",
    severity: "error",
    place: { file: "07_nmea_like.txt", line: 3 },
    values: { found: "03", expected: "0C" },
  });
});

test("a day-first date, centimetres and millimetres a metre", async () => {
  const file = await open("04_preamble_footer.csv");
  const { cells } = convertLogger(file);
  expect(cells.columns[cells.headings.indexOf("time")]).toEqual(samples["04_preamble_footer.csv"]!.time);
  expect(cells.columns[cells.headings.indexOf("depth_m")]).toEqual([0, 1]);
  const [, tiltX] = cells.columns[cells.headings.indexOf("tilt_x_deg")] as number[];
  // 3.14 mm along a metre is asin(0.00314) = 0.179910 degrees
  expect(tiltX).toBeCloseTo(0.17991, 5);
  expect(file.preamble.map(({ text }) => text)).toEqual([
    "# Logger export",
    "Serial: 0001",
    "Date 24.11.2026",
  ]);
  expect(file.findings).toContainEqual(
    expect.objectContaining({ code: "logger.footer", place: { file: file.name, line: 9 } }),
  );
});

test("no number is made of a cell that holds none: rows of sample 08", async () => {
  const file = await open("08_gaps_duplicates.csv");
  const kept = {
    ...file,
    settings: {
      ...file.settings,
      conventions: { ...file.settings.conventions, incomplete: "keep" as const, wholeFace: 1 as const },
    },
  };
  const { cells, lines, measures } = convertLogger(kept);
  expect(measures).toBe("keyed-tilt");
  expect(lines).toEqual([2, 3, 4, 5, 6, 7, 8]);
  expect(cells.columns[cells.headings.indexOf("depth_m")]).toEqual([0.5, 1, 1, null, 2, 2.5, 2]);
  expect(cells.columns[cells.headings.indexOf("tilt_x_deg")]).toEqual([
    0.1,
    0.11,
    0.12,
    0.13,
    null,
    0.1,
    0.15,
  ]);
  expect(cells.columns[cells.headings.indexOf("tilt_y_deg")]).toEqual([
    0,
    0.02,
    0.02,
    0.02,
    null,
    null,
    0.03,
  ]);
  const strict = convertLogger({
    ...kept,
    settings: {
      ...kept.settings,
      conventions: { ...kept.settings.conventions, incomplete: "leave-out" as const },
    },
  });
  expect(strict.lines).toEqual([2, 3, 4, 8]);
});
