import { describe, expect, test } from "vitest";
import { convertLogger, type LoggerReadings } from "./convert-logger.ts";
import { splitHeading } from "./guess-columns.ts";
import { loggerNumber } from "./logger-numbers.ts";
import { loggerTime } from "./logger-times.ts";
import { type LoggerFile, openLogger } from "./open-logger.ts";
import type { GivenSettings, LoggerConventions } from "./settings.ts";
import {
  checkTemplate,
  fingerprintOf,
  readTemplate,
  settingsOf,
  templateFor,
  templateOf,
  writeTemplate,
} from "./template.ts";
import { directionOf, turnSigns } from "./turn-signs.ts";
import { inReadingsUnit, type UnitId } from "./units.ts";

async function open(text: string, given: GivenSettings = {}): Promise<LoggerFile> {
  const opened = await openLogger(new TextEncoder().encode(text), "a.csv", given);
  if (!opened.ok) throw new Error(JSON.stringify(opened.findings));
  return opened.file;
}

const column = ({ cells }: LoggerReadings, name: string) => cells.columns[cells.headings.indexOf(name)];

describe("a number in a cell", () => {
  test.each([
    ["1,024", ".", ",", 1024],
    ["12,288.5", ".", ",", 12_288.5],
    ["1.024,5", ",", ".", 1024.5],
    ["12 288,5", ",", "blank", 12_288.5],
    ["12\u00a0288", ".", "blank", 12_288],
    ["12'288.25", ".", "'", 12_288.25],
    ["1,02", ".", ",", undefined],
    ["1,0245", ".", ",", undefined],
    ["−0.21", ".", "none", -0.21],
    ["– 0.21", ".", "none", -0.21],
    ["+0.18", ".", "none", 0.18],
    ["1e-1", ".", "none", 0.1],
    ["0.18°", ".", "none", 0.18],
    ["12.5 m", ".", "none", 12.5],
    ["12,5 mm/m", ",", "none", 12.5],
    ["NaN", ".", "none", undefined],
    ["---", ".", "none", undefined],
    ["0x10", ".", "none", undefined],
    ["1.2.3", ".", "none", undefined],
    ["", ".", "none", undefined],
  ] as const)("%s with %s and %s is %s", (text, decimal, thousands, value) => {
    expect(loggerNumber(text, { decimal, thousands })).toBe(value);
  });
});

describe("a time in a cell", () => {
  test.each([
    ["24.11.2026 15:10:12", "dmy", "2026-11-24", "15:10:12"],
    ["24.11.26 15:10", "dmy", "2026-11-24", "15:10:00"],
    ["11/12/2026 3:10:05 PM", "mdy", "2026-11-12", "15:10:05"],
    ["11/12/2026 12:00 am", "dmy", "2026-12-11", "00:00:00"],
    ["2026-11-24T15:10:12.5+01:00", "dmy", "2026-11-24", "15:10:12.5"],
    ["2026/11/24 15:10:12", "dmy", "2026-11-24", "15:10:12"],
    ["15:10:12,250", "dmy", undefined, "15:10:12.250"],
    ["31.02.2026", "dmy", undefined, undefined],
    ["24:61", "dmy", undefined, undefined],
    ["13:05 PM", "dmy", undefined, undefined],
    ["1.5", "dmy", undefined, undefined],
  ] as const)("%s by %s", (text, order, date, clock) => {
    const time = loggerTime(text, order);
    expect([time?.date, time?.clock]).toEqual([date, clock]);
  });

  test("a moment of a spreadsheet is rounded to what was meant", () => {
    // 46350.631944444 days is 15:09:59.99999: stored with nine decimals, meant as 15:10:00
    const moment = new Date(Date.UTC(2026, 10, 24) + 0.631944444 * 86_400_000);
    expect(loggerTime(moment, "ymd")?.clock).toBe("15:10:00");
  });
});

describe("a heading and its unit", () => {
  test.each([
    ["Depth [m]", "Depth", "m"],
    ["Depth (cm)", "Depth", "cm"],
    ["depth, m", "depth", "m"],
    ["depth_m", "depth", "m"],
    ["tilt_x_deg", "tilt_x", "deg"],
    ["X (mm/m)", "X", "mm/m"],
    ["Tilt X", "Tilt X", ""],
    ["Neigung X", "Neigung X", ""],
    ["Depth (from top)", "Depth (from top)", ""],
    ["counts x", "counts x", ""],
  ])("%s", (text, heading, unit) => {
    expect(splitHeading(text)).toEqual({ heading, unit });
  });
});

test.each<[number, UnitId, number]>([
  [314, "cm", 3.14],
  [1500, "mm", 1.5],
  [10, "ft", 3.048],
  [100, "in", 2.54],
  [100, "gon", 90],
  [Math.PI, "rad", 180],
  [90, "arcmin", 1.5],
  // tan 45 degrees = 1; sin 30 degrees = 0.5
  [1000, "mm/m", 90],
  [50, "percent", 30],
  [212, "f", 100],
  [273.15, "k", 0],
  [2, "min", 120],
])("%s %s", (value, unit, expected) => {
  expect(inReadingsUnit(value, unit, "sine")).toBeCloseTo(expected, 10);
});

test("a slope along the plumb line is a tangent, and a sine over 1 is no lean", () => {
  expect(inReadingsUnit(100, "percent", "tangent")).toBeCloseTo(45, 10);
  expect(inReadingsUnit(101, "percent", "sine")).toBeNaN();
});

const base: LoggerConventions = {
  depthSense: "down",
  depthZeroM: 0,
  xTowardsDeg: 0,
  ySense: "clockwise",
  tiltSense: "down-hole-end",
  slope: "sine",
  accelerationSense: "reaction",
  zSense: "down",
  turnSense: "clockwise",
  azimuthSense: "clockwise",
  north: "grid",
  inclinationFrom: "plumb",
  wholeFace: 0,
  sampling: "stops",
  incomplete: "leave-out",
  zone: "",
  missing: [],
};

describe("axes and signs", () => {
  // a lean of 1 towards probe +x and 2 towards probe +y, as a logger with other axes shows it
  test.each<[Partial<LoggerConventions>, number, number]>([
    [{}, 1, 2],
    // its x lies along probe +y, its y (clockwise of it) along probe -x
    [{ xTowardsDeg: 90 }, 2, -1],
    [{ xTowardsDeg: 180 }, -1, -2],
    [{ xTowardsDeg: 270 }, -2, 1],
    [{ ySense: "anticlockwise" }, 1, -2],
    [{ xTowardsDeg: 90, ySense: "anticlockwise" }, 2, 1],
    [{ tiltSense: "upper-end" }, -1, -2],
  ])("%o", (changed, x, y) => {
    const turned = turnSigns({ "tilt-x": x, "tilt-y": y }, { ...base, ...changed });
    expect([turned["tilt-x"], turned["tilt-y"]]).toEqual([1, 2]);
  });

  test("depths up, turns anticlockwise, azimuths anticlockwise, inclinations from level", () => {
    const conventions = {
      ...base,
      depthSense: "up",
      depthZeroM: 0.5,
      turnSense: "anticlockwise",
      azimuthSense: "anticlockwise",
      inclinationFrom: "level",
    } as const;
    const turned = turnSigns({ depth: -3, turn: 10, azimuth: 90, inclination: -88 }, conventions);
    expect(turned).toEqual({ depth: 3.5, turn: -10, azimuth: 270, inclination: 2 });
  });

  test("a reading that lacks one axis spoils only what it is part of", () => {
    const turned = turnSigns({ "tilt-x": Number.NaN, "tilt-y": 2 }, { ...base, xTowardsDeg: 90 });
    expect(turned["tilt-x"]).toBe(-2);
    expect(turned["tilt-y"]).toBeNaN();
  });

  test("a sensor that shows gravity and has z up", () => {
    const turned = turnSigns(
      { "acc-x": 0.1, "acc-y": 0, "acc-z": -1 },
      { ...base, accelerationSense: "gravity" },
    );
    expect(turned).toEqual({ "acc-x": -0.1, "acc-y": 0, "acc-z": 1 });
  });

  test("tilts with a heading: rule A2 by hand", () => {
    // docs/frames-and-signs.md: heading 0, tilt x positive leads north; heading 90, tilt x: east; heading 0, tilt y: east
    expect(directionOf(2, 0, 0)).toEqual({
      inclination: expect.closeTo(2, 9),
      azimuth: expect.closeTo(0, 9),
    });
    expect(directionOf(2, 0, 90)).toEqual({
      inclination: expect.closeTo(2, 9),
      azimuth: expect.closeTo(90, 9),
    });
    expect(directionOf(0, 2, 0)).toEqual({
      inclination: expect.closeTo(2, 9),
      azimuth: expect.closeTo(90, 9),
    });
    expect(directionOf(2, 0, Number.NaN).azimuth).toBeNaN();
  });
});

const TURN_RUN = `Uhrzeit;Tiefe;Neigung X;Neigung Y;Drehung;Temperatur
;m;°;°;°;°C
24.11.2026 15:10:00;0,00;0,00;0,00;0,0;12,5
24.11.2026 15:10:12;1,00;0,18;0,20;1,5;12,5
24.11.2026 15:10:24;2,00;-0,21;0,19;3,0;12,4
`;

test("a German file becomes a run of tilts and turn without a question about numbers", async () => {
  const file = await open(TURN_RUN);
  expect(file.settings.columns.map(({ role, unit }) => `${role} ${unit}`)).toEqual([
    "time s",
    "depth m",
    "tilt-x deg",
    "tilt-y deg",
    "turn deg",
    "temperature c",
  ]);
  const readings = convertLogger(file);
  expect(readings.measures).toBe("tilt-turn");
  expect(column(readings, "time")).toEqual([
    "2026-11-24T15:10:00",
    "2026-11-24T15:10:12",
    "2026-11-24T15:10:24",
  ]);
  expect(column(readings, "tilt_x_deg")).toEqual([0, 0.18, -0.21]);
  expect(column(readings, "turn_deg")).toEqual([0, 1.5, 3]);
  expect(readings.findings).toEqual([]);
});

test("what nothing in the file says is open, with a reason", async () => {
  const { reasons } = await open(TURN_RUN);
  for (const key of [
    "conventions.tiltSense",
    "conventions.xTowardsDeg",
    "conventions.ySense",
    "conventions.turnSense",
  ])
    expect(reasons[key]).toMatchObject({ sure: "open", why: { code: "logger.why-convention" } });
  expect(reasons["layout.decimal"]?.sure).toBe("certain");
});

test("11/12/2026 alone leaves the order of day and month open; another date settles it", async () => {
  const row = (date: string) =>
    `date;time;depth;tilt x;tilt y\n${date};08:00:00;0;0;0\n${date};08:00:10;1;0;0\n`;
  const open_ = await open(row("11/12/2026"));
  expect(open_.reasons["layout.dateOrder"]).toMatchObject({ sure: "open" });
  const settled = await open(`${row("11/12/2026")}11/13/2026;08:00:20;2;0;0\n`);
  expect(settled.settings.layout.dateOrder).toBe("mdy");
  expect(settled.reasons["layout.dateOrder"]?.sure).toBe("certain");
});

test('"1,024" alone is open, in each kind of file', async () => {
  const commas = await open('depth,count\n"0","1,024"\n"1","1,025"\n"2","1,026"\n');
  expect(commas.settings.layout).toMatchObject({ decimal: ".", thousands: "," });
  expect(commas.reasons["layout.decimal"]?.sure).toBe("open");
  const semicolons = await open("depth;count\n0;1,024\n1;1,025\n2;1,026\n");
  expect(semicolons.settings.layout.decimal).toBe(",");
  expect(semicolons.reasons["layout.decimal"]?.sure).toBe("open");
});

test("a row cut short, a remark between readings and a word where a number should be are told by line and column", async () => {
  const text =
    "depth;tilt x;tilt y;face\n0;0.1;0.2;1\n1;0.1\nprobe knocked\n2;bad;0.2;1\n3;0.1;0.2;9\n4;0.1;0.2;1\n";
  const readings = convertLogger(await open(text));
  const told = readings.findings.map(({ code, place }) =>
    `${code} ${place.line} ${place.field ?? ""}`.trim(),
  );
  expect(told).toEqual([
    "logger.cell-count 3",
    "logger.not-a-row 4",
    "logger.cell-number 5 tilt x",
    "logger.gap 5 depth",
    "logger.rows-left-out 5",
    "logger.word-unknown 6 face",
  ]);
  expect(readings.lines).toEqual([2, 7]);
});

test("a turn that begins anew at 360 is carried on, and told", async () => {
  const rows = [350, 355, 2, 8, 357].map((turn, i) => `${i * 10};${i};0;0;${turn}`).join("\n");
  const readings = convertLogger(await open(`time_s;depth_m;tilt_x_deg;tilt_y_deg;turn_deg\n${rows}\n`));
  expect(column(readings, "turn_deg")).toEqual([350, 355, 362, 368, 357]);
  expect(readings.findings).toContainEqual(
    expect.objectContaining({ code: "logger.turn-carried-on", place: { file: "a.csv", line: 4 } }),
  );
});

describe("a template", () => {
  test("goes through a file and back, and fits the next file of the logger only", async () => {
    const given = { conventions: { ySense: "anticlockwise", zone: "+01:00" } } as const;
    const template = templateOf(await open(TURN_RUN, given), "Probe of rig 2");
    const read = readTemplate(writeTemplate(template), "m.json");
    expect(read).toEqual({ ok: true, value: template });
    const next = await open(`Rig 2\n\n${TURN_RUN.replaceAll("0,18", "0,44")}`);
    expect(templateFor(next, [template])).toBe(template);
    const other = await open(TURN_RUN.replace("Drehung", "Kurs"));
    expect(templateFor(other, [template])).toBeUndefined();
    const mapped = await open(TURN_RUN, settingsOf(template));
    expect(fingerprintOf(mapped)).toBe(template.fingerprint);
    expect(mapped.settings.conventions).toMatchObject({ ySense: "anticlockwise", zone: "+01:00" });
    expect(mapped.reasons["conventions.ySense"]).toMatchObject({
      sure: "certain",
      why: { code: "logger.why-template" },
    });
    expect(column(convertLogger(mapped), "time")?.[0]).toBe("2026-11-24T15:10:00+01:00");
  });

  test("that is none is refused with what is wrong", async () => {
    const template = templateOf(await open(TURN_RUN), "t");
    const broken = { ...template, conventions: { ...template.conventions, ySense: "left" } };
    const read = checkTemplate(broken, "m.json");
    expect(read).toMatchObject({
      ok: false,
      error: [{ code: "logger.template-form", place: { field: "conventions.ySense" } }],
    });
    expect(readTemplate("{", "m.json").ok).toBe(false);
  });
});
