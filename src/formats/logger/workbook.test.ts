import { expect, test } from "vitest";
import writeXlsxFile from "write-excel-file/universal";
import { convertLogger } from "./convert-logger.ts";
import { openLogger } from "./open-logger.ts";

test("a workbook with a title, dates as serial numbers, texts for numbers and an empty cell", async () => {
  const at = (second: number) => ({
    type: Date,
    value: new Date(Date.UTC(2026, 10, 24, 15, 10, second)),
    format: "yyyy-mm-dd hh:mm:ss",
  });
  const text = (value: string) => ({ type: String, value });
  const number = (value: number) => ({ type: Number, value });
  const rows = [
    [text("Run of rig 2"), null, null, null, null],
    [text("Time"), text("Depth"), text("Tilt X"), text("Tilt Y"), text("Turn")],
    [null, text("cm"), text("°"), text("°"), text("°")],
    [at(0), number(0), number(0.1), text("0,25"), number(0)],
    [at(12), number(100), number(-0.2), text("-0,5"), number(0.5)],
    [at(24), number(200), null, text("0,75"), number(1)],
    [at(36), number(300), number(0.4), text("1,5"), number(1.5)],
  ];
  const blob = await writeXlsxFile(rows as never, {}).toBlob();
  const opened = await openLogger(new Uint8Array(await blob.arrayBuffer()), "run.xlsx");
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  const { layout } = opened.file.settings;
  expect(layout).toMatchObject({
    encoding: "workbook",
    headingLine: 2,
    unitsLine: 3,
    firstLine: 4,
    lastLine: 7,
  });
  const { cells, measures, lines, findings } = convertLogger(opened.file);
  const column = (name: string) => cells.columns[cells.headings.indexOf(name)];
  expect(measures).toBe("tilt-turn");
  expect(lines).toEqual([4, 5, 7]);
  expect(column("time")).toEqual(["2026-11-24T15:10:00", "2026-11-24T15:10:12", "2026-11-24T15:10:36"]);
  expect(column("depth_m")).toEqual([0, 1, 3]);
  expect(column("tilt_x_deg")).toEqual([0.1, -0.2, 0.4]);
  expect(column("tilt_y_deg")).toEqual([0.25, -0.5, 1.5]);
  expect(findings.map(({ code, place }) => `${code} ${place.line}`)).toEqual([
    "logger.value-missing 6",
    "logger.rows-left-out 6",
  ]);
});
