import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Finder } from "../finding/finder.ts";
import { decodeText } from "../text/decode-text.ts";
import { acceptedHeadings, type Column } from "./column.ts";
import { readCsv } from "./read-csv.ts";
import { readLongCsv } from "./read-long-csv.ts";
import { TableReader } from "./table-reader.ts";

const COLUMNS: readonly Column[] = [
  { name: "depth_m", kind: "length", min: -10, max: 500 },
  { name: "tilt_deg", kind: "angle", min: -90, max: 90 },
  { name: "count", kind: "number", anyNumber: true },
  { name: "leg", kind: "word", words: ["down", "up"] },
];
const NUMBERS = ["depth_m", "tilt_deg", "count"] as const;
const NEED = { depth_m: "required", tilt_deg: "required", count: "optional" } as const;

interface Read {
  readonly rows: readonly (readonly (number | string)[])[];
  readonly findings: readonly string[];
  readonly blocked: boolean;
}

const findingsOf = (found: Finder): string[] =>
  found.issues
    .map(({ code, severity, place, values }) =>
      [severity, code, place.line, place.field, values["found"], values["expected"], values["other"]].join(
        " | ",
      ),
    )
    .toSorted();

function readLong(text: string): Read {
  const found = new Finder("file");
  const file = readLongCsv(new TextEncoder().encode(text), COLUMNS, found);
  const rows: (number | string)[][] = [];
  file?.scan(
    [
      ...NUMBERS.map((name, at) => ({
        name,
        need: NEED[name],
        takeNumber: (row: number, value: number) => {
          rows[row]![at + 1] = value;
        },
      })),
      {
        name: "leg",
        need: "optional" as const,
        takeText: (row: number, word: string) => {
          const isKnown = ["down", "up"].includes(word.toLowerCase());
          if (isKnown) rows[row]![4] = word.toLowerCase();
          return isKnown;
        },
        check: (table, row) => table.word(row, "leg", "optional"),
      },
    ],
    (row, line) => {
      rows[row] = [line, Number.NaN, Number.NaN, Number.NaN, ""];
    },
  );
  return { rows, findings: findingsOf(found), blocked: found.blocked };
}

/** The same by the reader of short files. */
function readShort(text: string): Read {
  const found = new Finder("file");
  const known = new Set(COLUMNS.flatMap((column) => acceptedHeadings(column).map((as) => as.heading)));
  const decoded = decodeText(new TextEncoder().encode(text), found);
  const raw = decoded === undefined ? undefined : readCsv(decoded, known, found);
  if (raw === undefined) return { rows: [], findings: findingsOf(found), blocked: found.blocked };
  const table = new TableReader(raw, COLUMNS, found);
  const rows = table.rows.map((row) => [
    row.line,
    ...NUMBERS.map((name) => table.number(row, name, NEED[name])),
    table.word(row, "leg", "optional") ?? "",
  ]);
  return { rows, findings: findingsOf(found), blocked: found.blocked };
}

const cell = fc.oneof(
  { weight: 12, arbitrary: fc.double({ min: -20, max: 80, noNaN: true }).map((x) => x.toFixed(3)) },
  { weight: 2, arbitrary: fc.integer({ min: -3, max: 90 }).map(String) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      "",
      " ",
      "-",
      "x",
      "9999",
      "-999.25",
      "1e2",
      "+4.5",
      ".5",
      "5.",
      "−3.25",
      "1 000",
      "0x10",
      "NaN",
      "123456789.123456789",
      "1,5",
      "600.0",
      " 2.5 ",
      "12..5",
      "1-2",
      "-0.000",
    ),
  },
);
const leg = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom("down", "up", "", "DOWN") },
  { weight: 1, arbitrary: fc.constantFrom("sideways", "9") },
);

describe("readLongCsv", () => {
  test.each([";", "\t"])(
    "reads and tells the same as the reader of short files, separator %j",
    (separator) => {
      fc.assert(
        fc.property(
          fc.array(fc.tuple(cell, cell, cell, leg), { minLength: 1, maxLength: 30 }),
          fc.constantFrom("\n", "\r\n"),
          fc.boolean(),
          (rows, newline, blank) => {
            const heads = ["depth_m", "tilt_deg", "count", "leg"].join(separator);
            // the first rows show what is usual in the file, as they do in every real one
            const usual = Array.from({ length: 40 }, (_, i) => ["1.5", "0.25", "7.5", i % 2 ? "up" : "down"]);
            const body = [...usual, ...rows].map((cells) => cells.join(separator));
            const text = [heads, ...(blank ? [""] : []), ...body, ""].join(newline);
            const [long, short] = [readLong(text), readShort(text)];
            expect(long.findings).toEqual(short.findings);
            expect(long.blocked).toBe(short.blocked);
            expect(long.rows).toEqual(short.rows);
          },
        ),
        { numRuns: 200 },
      );
    },
  );

  test("numbers are the doubles that their digits mean", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -90, max: 90, noNaN: true }), { minLength: 1 }), (drawn) => {
        const values = drawn.map((x) => x + 0); // -0 is written as 0
        const text = `count;depth_m;tilt_deg\n${values.map((x) => `${x};0;0`).join("\n")}\n`;
        expect(readLong(text).rows.map((row) => row[3])).toEqual(values);
      }),
    );
  });

  test("decimal commas, told from the rows; a point among them is bad, with its line", () => {
    const lines = Array.from({ length: 300 }, (_, i) => `${i / 2};0,5;1`.replaceAll(".", ","));
    const text = ["depth_m;tilt_deg;count", ...lines, "3.5;0,5;1"].join("\n");
    const { rows, findings } = readLong(text);
    expect(rows[1]).toEqual([3, 0.5, expect.closeTo(0.5 * (Math.PI / 180), 15), 1, ""]);
    expect(findings.map((each) => each.split(" | ").slice(0, 4).join(" "))).toEqual([
      "error formats.cell-number 302 depth_m",
      "error formats.decimal-clash 302 depth_m",
    ]);
  });

  test("the decimal sign may first show after thousands of whole numbers", () => {
    const whole = Array.from({ length: 2000 }, () => "1;2;3");
    const { rows, findings } = readLong(["depth_m;tilt_deg;count", ...whole, "1,5;2;3"].join("\n"));
    expect(findings).toEqual([]);
    expect(rows.at(-1)?.[1]).toBe(1.5);
  });

  test("a row with too few or too many cells is told with its line, far down", () => {
    const rows = Array.from({ length: 5000 }, () => "1.5,2.5,3,up");
    rows[3000] = "1.5,2.5";
    rows[4000] = "1.5,2.5,3,up,5";
    rows[4500] = "1.5,2.5,3,up,";
    const { findings, blocked } = readLong(["depth_m,tilt_deg,count,leg", ...rows].join("\n"));
    expect(blocked).toBe(true);
    expect(findings.map((each) => each.split(" | ").slice(1, 3).join(" "))).toEqual([
      "formats.cell-count 3002",
      "formats.cell-count 4002",
    ]);
  });

  test("a hundred thousand bad rows fill neither memory nor screen", () => {
    const rows = Array.from({ length: 100_000 }, () => "1.5,x,3,up");
    const found = new Finder("file");
    const text = ["depth_m,tilt_deg,count,leg", ...rows].join("\n");
    const file = readLongCsv(new TextEncoder().encode(text), COLUMNS, found)!;
    expect(file.scan([{ name: "tilt_deg", need: "required" }], () => undefined)).toBe(100_000);
    expect(found.issues.length).toBeLessThanOrEqual(100);
    expect(found.issues.length + found.hidden).toBe(100_000);
    expect(found.blocked).toBe(true);
  });

  test("a file with double quotes, without headings or without rows is read by the same rules", () => {
    const quoted = readLong('depth_m,tilt_deg,count,leg\n"1,5","0,5",3,"up"\n"2,5","0,5",4,down\n');
    expect(quoted.rows.map((row) => row[1])).toEqual([1.5, 2.5]);
    expect(readLong("depth_m,tilt_deg").rows).toEqual([]);
    expect(readLong("\n \n").blocked).toBe(true);
    expect(readLong("depth,tilt_deg\n1,2\n").findings.join()).toContain("formats.column-unit");
  });
});
