import { describe, expect, test } from "vitest";
import { contextOfRun, gridHeading, runOf } from "../../../test/fixtures/hand-made-run.ts";
import type { ReadingRow } from "../../../test/support/readings.ts";
import type { Calibration, Instrument } from "../calibration/calibration.ts";
import type { HolePath } from "../path/hole-path.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { RADIANS_PER_DEGREE as DEG } from "../units/quantity.ts";
import { reduceRun } from "./reduce-run.ts";
import type { RunContext } from "./run-context.ts";

const TOP = contextOfRun().top;
const depths = (to: number, step = 1): number[] => Array.from({ length: to / step + 1 }, (_, i) => i * step);
const reduce = (run: SurveyRun, context: Partial<RunContext> = {}) =>
  reduceRun(run, contextOfRun(context)).result;
const codes = (run: SurveyRun, context: Partial<RunContext> = {}) =>
  reduce(run, context).findings.map((finding) => finding.code);
const toe = (path: HolePath | undefined) => ({
  north: path!.northM[path!.count - 1]! - TOP.north,
  east: path!.eastM[path!.count - 1]! - TOP.east,
  down: path!.downM[path!.count - 1]! - TOP.down,
});

/** Rows of an inclination-azimuth run, degrees. */
const angles = (rows: readonly (readonly [number, number, number])[]): ReadingRow[] =>
  rows.map(([depthM, inclination, azimuth]) => ({
    depthM,
    inclinationRad: inclination * DEG,
    azimuthRad: azimuth * DEG,
  }));
const straight = (to: number, inclination: number, azimuth: number, step = 1) =>
  angles(depths(to, step).map((depth) => [depth, inclination, azimuth] as const));

/** Rows of a gyro run in a plumb hole at the equator: the heading is the turn shown. Turns in degrees, a minute a row. */
const plumbRows = (turns: readonly number[], depthOf: (i: number) => number = (i) => i): ReadingRow[] =>
  turns.map((turn, i) => ({
    timeS: 60 * i,
    depthM: depthOf(i),
    tiltXRad: 0,
    tiltYRad: 0,
    turnRad: turn * DEG,
  }));

describe("runs worked out by hand", () => {
  test("[D1] [A3] straight hole of 5 degrees towards 30: offset L sin 5, down L cos 5", () => {
    const { path, judgeable, gaps } = reduce(runOf("inclination-azimuth", straight(20, 5, 30)));
    const lateral = 20 * Math.sin(5 * DEG);
    expect(toe(path).north).toBeCloseTo(lateral * Math.cos(30 * DEG), 9);
    expect(toe(path).east).toBeCloseTo(lateral * Math.sin(30 * DEG), 9);
    expect(toe(path).down).toBeCloseTo(20 * Math.cos(5 * DEG), 9);
    expect(path!.depthM[20]).toBe(20);
    expect({ judgeable, gaps }).toEqual({ judgeable: true, gaps: [] });
  });

  test("[D1] quarter circle of radius 20 m: 10 pi m of hole end 20 m across and 20 m down", () => {
    const length = 10 * Math.PI;
    const rows = angles(depths(90, 1).map((degree) => [(length * degree) / 90, degree, 30] as const));
    const { path } = reduce(runOf("inclination-azimuth", rows));
    expect(toe(path).north).toBeCloseTo(20 * Math.cos(30 * DEG), 9);
    expect(toe(path).east).toBeCloseTo(10, 9);
    expect(toe(path).down).toBeCloseTo(20, 9);
  });

  test("[C6] magnetic azimuths: declination 3 east, convergence 1 make the grid bearing 2 degrees more", () => {
    const run = runOf("inclination-azimuth", straight(10, 5, 88), {
      azimuthNorth: "magnetic",
      azimuthToGridRad: (3 - 1) * DEG,
    });
    const { path, steps } = reduce(run);
    expect(toe(path).north).toBeCloseTo(0, 12);
    expect(toe(path).east).toBeCloseTo(10 * Math.sin(5 * DEG), 12);
    expect(steps.find((step) => step.step === "north")?.effect["added_deg"]).toBeCloseTo(2, 12);
  });

  test("[A6] [C2] keyed on two faces: the probe's own zero cancels and the groove gives the bearing", () => {
    const rows = [1, 2].flatMap((face) =>
      depths(10).map((depthM): ReadingRow => {
        const side = face === 1 ? 1 : -1;
        return {
          depthM,
          face: face as 1 | 2,
          tiltXRad: side * 2 * DEG + 0.3 * DEG,
          tiltYRad: -0.2 * DEG,
        };
      }),
    );
    const { path, steps } = reduce(runOf("keyed-tilt", rows, { grooveBearingRad: 90 * DEG }));
    expect(toe(path).east).toBeCloseTo(10 * Math.sin(2 * DEG), 7);
    expect(toe(path).north).toBeCloseTo(0, 7);
    const effect = steps.find((step) => step.step === "two-face")!.effect;
    expect(effect).toMatchObject({ stops: 11 });
    expect(effect["zero_x_deg"]).toBeCloseTo(0.3, 7);
    expect(effect["zero_y_deg"]).toBeCloseTo(-0.2, 7);
  });

  test("[A6] a groove that twists by 90 degrees over 10 m: the same reading leans another way at each depth", () => {
    const rows = depths(10).map((depthM) => ({ depthM, tiltXRad: 1 * DEG, tiltYRad: 0 }));
    const spiral = [
      { depthM: 0, twistRad: 0 },
      { depthM: 10, twistRad: 90 * DEG },
    ];
    const { path } = reduce(runOf("keyed-tilt", rows, { grooveBearingRad: 0, spiral }));
    // mean of cosine and of sine over a quarter turn: 2 / pi
    expect(toe(path).north).toBeCloseTo(10 * Math.sin(1 * DEG) * (2 / Math.PI), 3);
    expect(toe(path).north).toBeCloseTo(toe(path).east, 9);
  });

  test("[B1] [C1] the zero of a calibration is taken off, but not where the instrument did so itself", () => {
    const rows = depths(10).map((depthM) => ({ depthM, tiltXRad: 2.3 * DEG, tiltYRad: -0.2 * DEG }));
    const zero: Calibration = {
      ...calibration("tz", "tilt-zero"),
      kind: "tilt-zero",
      faces: [
        { face: 1, xRad: 0.8 * DEG, yRad: 0.1 * DEG },
        { face: 2, xRad: -0.2 * DEG, yRad: -0.5 * DEG },
      ],
    };
    const run = runOf("keyed-tilt", rows, { grooveBearingRad: 0 });
    const { path } = reduce(run, { calibrations: [zero] });
    expect(toe(path).north).toBeCloseTo(10 * Math.sin(2 * DEG), 9);
    expect(toe(path).east).toBeCloseTo(0, 9);
    const left = reduce({ ...run, zeroed: true }, { calibrations: [zero] });
    expect(toe(left.path).north).toBeCloseTo(10 * Math.sin(2.3 * DEG), 9);
    expect(left.findings.map((finding) => finding.code)).toEqual(["survey.zeroed-by-instrument"]);
  });

  test("[A4] [C4] gyro run closed on two headings: drift shared out, a hole that leans north comes out leaning north", () => {
    // The probe turns by 30 degrees a row; the gyro drifts by 0.1 degrees a minute. Negligible holonomy: the lean is steady.
    const rows = depths(10).map((depthM): ReadingRow => {
      const heading = 30 * depthM * DEG;
      const lean = Math.sin(3 * DEG);
      return {
        timeS: 60 * depthM,
        depthM,
        tiltXRad: Math.asin(lean * Math.cos(heading)),
        tiltYRad: Math.asin(-lean * Math.sin(heading)),
        turnRad: heading + 0.1 * depthM * DEG,
      };
    });
    const run = runOf("tilt-turn", rows, { opening: gridHeading(0), closing: gridHeading(300) });
    const { path, steps, findings } = reduce(run, { place: { ...contextOfRun().place, latitudeRad: 0 } });
    const closure = steps.find((step) => step.step === "heading-closure")!.effect;
    // the earth turns a gyro that leans 3 degrees north at the equator by 15.041 sin 3 degrees an hour, a sixth of it here
    expect(Number(closure["misclosure_deg"])).toBeCloseTo(1 - (15.041067 * Math.sin(3 * DEG)) / 6, 2);
    expect(toe(path).north).toBeCloseTo(10 * Math.sin(3 * DEG), 6);
    expect(toe(path).east).toBeCloseTo(0, 4);
    expect(findings).toEqual([]);
  });

  test("[A1] accelerations give the same path as the tilts they stand for, in any unit", () => {
    const tilts = depths(10).map((depthM) => ({
      depthM,
      x: Math.sin(2 * DEG),
      y: Math.sin(0.1 * depthM * DEG),
    }));
    const base = (depthM: number) => ({ timeS: 60 * depthM, depthM, turnRad: 0 });
    const known = { opening: gridHeading(40) };
    const byTilt = tilts.map(({ depthM, x, y }) => ({
      ...base(depthM),
      tiltXRad: Math.asin(x),
      tiltYRad: Math.asin(y),
    }));
    const byAcceleration = tilts.map(({ depthM, x, y }) => ({
      ...base(depthM),
      accX: 1000 * x,
      accY: 1000 * y,
      accZ: -1000 * Math.sqrt(1 - x * x - y * y),
    }));
    const one = reduce(runOf("tilt-turn", byTilt, known)).path!;
    const other = reduce(runOf("acceleration-turn", byAcceleration, known)).path!;
    for (let i = 0; i < one.count; i++) expect(other.northM[i]).toBeCloseTo(one.northM[i]!, 9);
  });

  test("[B4] [C5] depths from counts, with the cable's stretch", () => {
    const scale: Calibration = {
      ...calibration("ds", "depth-scale"),
      kind: "depth-scale",
      lengthM: 5,
      counts: [500, 500],
    };
    const rows = straight(10, 0, 0).map(({ depthM, ...row }) => ({ ...row, depthCounts: 100 * depthM! }));
    const cable = { axialStiffnessN: 1e5, probeWeightN: 1e3, cableWeightNPerM: 0 };
    const instrument: Instrument = {
      id: "probe",
      serial: undefined,
      gaugeLengthM: undefined,
      outerDiameterM: undefined,
      lengthM: undefined,
      cable,
      budget: undefined,
      declaredErrors: [],
      field: "instruments[0]",
    };
    // 1000 N on 100 kN: 1 %
    const { path } = reduce(runOf("inclination-azimuth", rows), { calibrations: [scale], instrument });
    expect(toe(path).down).toBeCloseTo(10.1, 9);
  });

  test("[C2] turned by half at the toe of a raker: the zero is found although the carried heading follows its jump", () => {
    const lean = 15 * DEG;
    const zero = { x: 0.4 * DEG, y: -0.3 * DEG };
    const station = (depthM: number, face: 1 | 2, timeS: number): ReadingRow => ({
      depthM,
      face,
      timeS,
      leg: face === 1 ? "down" : "up",
      tiltXRad: (face === 1 ? lean : -lean) + zero.x,
      tiltYRad: zero.y,
      turnRad: face === 1 ? 0 : 180 * DEG,
    });
    const down = depths(40).map((depthM, i) => station(depthM, 1, i));
    const up = depths(40)
      .toReversed()
      .map((depthM, i) => station(depthM, 2, 41 + i));
    // leaning east at the equator, where the earth does not turn the gyro
    const run = runOf("tilt-turn", [...down, ...up], { opening: gridHeading(90) });
    const { path, steps, findings } = reduce(run);
    const effect = steps.find((step) => step.step === "two-face")!.effect;
    expect(effect["zero_x_deg"]).toBeCloseTo(0.4, 4);
    expect(effect["zero_y_deg"]).toBeCloseTo(-0.3, 4);
    expect(toe(path).east).toBeCloseTo(40 * Math.sin(lean), 4);
    expect(toe(path).north).toBeCloseTo(0, 4);
    expect(findings.map((finding) => finding.code)).toEqual(["survey.heading-open"]);
  });

  test("[D5] the way down read twice, with depths a few millimetres off, is two passes and leaves no gaps", () => {
    const rows = [0, 0.003, -0.002].flatMap((off, k) =>
      (k === 1 ? depths(10).toReversed() : depths(10)).map((depthM) => ({
        depthM: depthM + (depthM === 0 ? 0 : off),
        leg: k === 1 ? ("up" as const) : ("down" as const),
        inclinationRad: 2 * DEG,
        azimuthRad: 0,
      })),
    );
    const { path, findings, gaps, steps } = reduce(runOf("inclination-azimuth", rows));
    expect(path!.count).toBe(11);
    expect({ findings, gaps }).toEqual({ findings: [], gaps: [] });
    expect(steps.find((step) => step.step === "combine-passes")!.effect).toMatchObject({
      passes: 3,
      stations_read_more_than_once: 11,
    });
  });
});

function calibration<K extends Calibration["kind"]>(id: string, kind: K) {
  return {
    id,
    kind,
    instrumentId: "probe",
    madeAt: "2026-03-02T07:00:00Z",
    validity: { until: undefined, maxRuns: undefined, endedBy: [] },
    field: "calibrations[0]",
  };
}

describe("findings: each one provoked", () => {
  const plumb = straight(10, 1, 0);
  const changed = (row: number, change: ReadingRow) =>
    plumb.map((each, i) => (i === row ? { ...each, ...change } : each));
  const turns = depths(10).map(() => 0);

  test("a sound run has none", () => {
    expect(codes(runOf("inclination-azimuth", plumb))).toEqual([]);
  });

  test("[C4] a misclosure over its limit keeps the path and forbids judging", () => {
    const run = runOf("tilt-turn", plumbRows(turns), {
      opening: gridHeading(0),
      closing: gridHeading(20),
      closureLimitRad: 5 * DEG,
    });
    const { path, judgeable, findings } = reduce(run);
    expect(findings).toMatchObject([
      { code: "survey.misclosure", severity: "error", values: { limit_deg: expect.closeTo(5, 9) } },
    ]);
    expect(findings[0]!.values["misclosure_deg"]).toBeCloseTo(-20, 9);
    expect(judgeable).toBe(false);
    expect(toe(path).down).toBeCloseTo(10, 9);
  });

  test("[C4] just inside the limit it is judged", () => {
    const run = runOf("tilt-turn", plumbRows(turns), {
      opening: gridHeading(0),
      closing: gridHeading(4.9),
      closureLimitRad: 5 * DEG,
    });
    expect(reduce(run)).toMatchObject({ judgeable: true, findings: [] });
  });

  test.each([
    ["survey.no-heading", runOf("tilt-turn", plumbRows(turns)), {}],
    [
      "survey.no-latitude",
      runOf("tilt-turn", plumbRows(turns), { opening: gridHeading(0) }),
      { place: { ...contextOfRun().place, latitudeRad: undefined } },
    ],
    ["survey.no-groove-bearing", runOf("keyed-tilt", plumbRows(turns)), {}],
    ["survey.too-few-stations", runOf("inclination-azimuth", plumb.slice(0, 1)), {}],
    ["survey.reversed", runOf("inclination-azimuth", changed(5, { inclinationRad: 100 * DEG })), {}],
    [
      "survey.reference-row-unusable",
      runOf("tilt-turn", plumbRows([Number.NaN, ...turns]), { opening: gridHeading(0) }),
      {},
    ],
    [
      "survey.no-depth-scale",
      runOf(
        "inclination-azimuth",
        plumb.map(({ depthM, ...row }) => ({ ...row, depthCounts: depthM! })),
      ),
      {},
    ],
  ] as const)("%s: told as an error, and there is no path", (code, run, context) => {
    const { path, judgeable, findings } = reduce(run, context);
    expect(findings.map((finding) => finding.code)).toContain(code);
    expect(findings.find((finding) => finding.code === code)?.severity).toBe("error");
    expect({ path, judgeable }).toEqual({ path: undefined, judgeable: false });
  });

  test.each([
    ["survey.heading-open", "warning", runOf("tilt-turn", plumbRows(turns), { opening: gridHeading(0) })],
    [
      "survey.closure-model",
      "warning",
      runOf("tilt-turn", plumbRows(turns), {
        opening: gridHeading(0),
        closing: gridHeading(0),
        closureModel: "linear-turn",
      }),
    ],
    ["survey.sharp-turn", "warning", runOf("inclination-azimuth", changed(5, { inclinationRad: 9 * DEG }))],
    ["survey.top-unread", "note", runOf("inclination-azimuth", plumb.slice(1))],
    ["survey.top-unread", "warning", runOf("inclination-azimuth", plumb.slice(3))],
    ["survey.above-top", "warning", runOf("inclination-azimuth", plumb, { depthZeroM: -0.5 })],
    [
      "survey.spiral-short",
      "warning",
      runOf("keyed-tilt", plumbRows(turns), { grooveBearingRad: 0, spiral: [{ depthM: 6, twistRad: 0 }] }),
    ],
    [
      "survey.depth-return",
      "warning",
      runOf("inclination-azimuth", [
        { ...plumb[0]!, leg: "open" },
        ...plumb.map((row): ReadingRow => ({ ...row, leg: "down" })),
        { ...plumb[0]!, depthM: 0.3, leg: "close" },
      ]),
    ],
  ] as const)("%s: told as a %s, and there is a path", (code, severity, run) => {
    const { path, judgeable, findings } = reduce(run);
    expect(findings.map((finding) => [finding.code, finding.severity])).toEqual([[code, severity]]);
    expect(path).toBeDefined();
    expect(judgeable).toBe(true);
  });

  test("[D4] a gap is told and kept with the path; an interval of exactly the limit is none", () => {
    const rows = plumb.filter((_, i) => i !== 4 && i !== 5 && i !== 8);
    const { findings, gaps } = reduce(runOf("inclination-azimuth", rows));
    expect(findings).toMatchObject([
      { code: "survey.gap", severity: "warning", values: { from_m: 3, to_m: 6, limit_m: 2 } },
    ]);
    expect(gaps).toEqual([{ fromM: 3, toM: 6 }]);
    expect(reduce(runOf("inclination-azimuth", rows, { stationLimitM: 3 })).gaps).toEqual([]);
  });

  test("[D4] a top that was not read counts as a gap as well", () => {
    expect(reduce(runOf("inclination-azimuth", plumb.slice(3))).gaps).toEqual([{ fromM: 0, toM: 3 }]);
    expect(reduce(runOf("inclination-azimuth", plumb.slice(1))).gaps).toEqual([]);
  });

  test("a row that is not usable is left out with its line, and the rest is worked out", () => {
    const { path, findings } = reduce(runOf("inclination-azimuth", changed(4, { azimuthRad: Number.NaN })));
    expect(findings).toMatchObject([
      {
        code: "survey.no-direction",
        severity: "error",
        place: { file: "readings/R1.csv", line: 6 },
        values: { depth_m: 4 },
      },
    ]);
    expect([...path!.depthM]).toEqual([0, 1, 2, 3, 5, 6, 7, 8, 9, 10]);
    expect(toe(path).north).toBeCloseTo(10 * Math.sin(1 * DEG), 9);
  });

  test.each([
    ["a missing turn", { turnRad: Number.NaN }],
    ["a missing time", { timeS: Number.NaN }],
    ["tilts that no probe can have together", { tiltXRad: 80 * DEG, tiltYRad: 80 * DEG }],
  ])("gyro run, %s in one row: that row alone is lost", (_what, change) => {
    const rows = plumbRows(turns).map((row, i) => (i === 4 ? { ...row, ...change } : row));
    const { path, findings } = reduce(
      runOf("tilt-turn", rows, { opening: gridHeading(0), closing: gridHeading(0) }),
    );
    expect(findings).toMatchObject([{ code: "survey.no-direction", place: { line: 6 } }]);
    expect(path!.count).toBe(10);
    expect(toe(path).down).toBeCloseTo(10, 9);
  });

  test("[A1] an acceleration that points the wrong way, and a total that varies", () => {
    const rows = plumbRows(turns).map((row, i) => ({
      ...row,
      accX: 0,
      accY: 0,
      accZ: i === 3 ? 1 : i === 7 ? -1.03 : -1,
    }));
    const run = runOf("acceleration-turn", rows, { opening: gridHeading(0), closing: gridHeading(0) });
    const found = reduce(run).findings;
    expect(found.map((finding) => finding.code)).toEqual([
      "survey.upside-down",
      "survey.magnitude",
      "survey.no-direction",
    ]);
    expect(found[0]!.place.line).toBe(5);
    expect(found[1]!.values["spread_percent"]).toBeCloseTo(3, 9);
  });

  test("[B2] positions that determine nothing are told, and readings are taken as they stand", () => {
    const position = { expected: [0, 0, -1], shown: [0, 0, -1] } as const;
    const fit: Calibration = {
      ...calibration("acc", "accelerometer"),
      kind: "accelerometer",
      positions: Array.from({ length: 6 }, () => position),
    };
    const rows = plumbRows(turns).map((row) => ({ ...row, accX: 0, accY: 0, accZ: -1 }));
    const run = runOf("acceleration-turn", rows, { opening: gridHeading(0), closing: gridHeading(0) });
    expect(codes(run, { calibrations: [fit] })).toEqual(["survey.accelerometer-undetermined"]);
  });

  test("[D5] passes that disagree, with the depth and the pass", () => {
    const rows = depths(10).flatMap((depthM): ReadingRow[] => [
      { depthM, leg: "down", inclinationRad: 1 * DEG, azimuthRad: 0 },
    ]);
    const up = rows
      .toReversed()
      .map((row): ReadingRow => ({ ...row, leg: "up", inclinationRad: (row.depthM === 6 ? 1.5 : 1) * DEG }));
    const { findings } = reduce(runOf("inclination-azimuth", [...rows, ...up]));
    expect(findings).toMatchObject([
      { code: "survey.passes-disagree", severity: "warning", values: { depth_m: 6 } },
    ]);
  });

  test("[C2] the stop whose face sum is off is told", () => {
    const rows = [1, 2].flatMap((face) =>
      depths(30).map(
        (depthM): ReadingRow => ({
          depthM,
          face: face as 1 | 2,
          tiltXRad: (face === 1 ? 1 : -1) * DEG + (face === 2 && depthM === 12 ? 0.2 * DEG : 0),
          tiltYRad: 0,
        }),
      ),
    );
    const found = reduce(runOf("keyed-tilt", rows, { grooveBearingRad: 0 })).findings;
    expect(found.find((finding) => finding.code === "survey.face-sum")).toMatchObject({
      severity: "warning",
      place: { line: 14 },
      values: { depth_m: 12 },
    });
  });
});

describe("invariants", () => {
  test("moving the site moves the path and nothing else (seeds 1 to 20)", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const wave = (i: number) => Math.sin(seed * 12.9898 + i * 0.7);
      const rows = angles(depths(20).map((d) => [d, 3 + wave(d), 40 * wave(d + 5)] as const));
      const run = runOf("inclination-azimuth", rows);
      const here = reduce(run).path!;
      const away = reduce(run, { top: { north: TOP.north + 512, east: TOP.east - 256, down: TOP.down + 64 } })
        .path!;
      for (let i = 0; i < here.count; i++) {
        expect(away.northM[i]! - here.northM[i]!, `seed ${seed}`).toBeCloseTo(512, 9);
        expect(away.eastM[i]! - here.eastM[i]!, `seed ${seed}`).toBeCloseTo(-256, 9);
        expect(away.downM[i]! - here.downM[i]!, `seed ${seed}`).toBeCloseTo(64, 9);
      }
    }
  });

  test("[D1] [D3] a station more, exactly on the arc between two others, changes nothing (seeds 1 to 20)", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const bend = 2 + (seed % 7);
      const azimuth = 17 * seed;
      // in one vertical plane the direction half way along the arc is the mean of the inclinations
      const coarse = depths(20, 2).map((d) => [d, 1 + (bend * d) / 20, azimuth] as const);
      const fine = depths(20, 1).map((d) => [d, 1 + (bend * d) / 20, azimuth] as const);
      const one = toe(reduce(runOf("inclination-azimuth", angles(coarse))).path);
      const other = toe(reduce(runOf("inclination-azimuth", angles(fine))).path);
      expect(other.north, `seed ${seed}`).toBeCloseTo(one.north, 9);
      expect(other.east, `seed ${seed}`).toBeCloseTo(one.east, 9);
      expect(other.down, `seed ${seed}`).toBeCloseTo(one.down, 9);
    }
  });

  test("a run of 5,000 rows down and up is worked out whole", () => {
    const rows = [
      ...depths(2499).map((d) => d / 50),
      ...depths(2499)
        .map((d) => d / 50)
        .toReversed(),
    ].map(
      (depthM, i): ReadingRow => ({
        timeS: i,
        depthM,
        tiltXRad: 0.02,
        tiltYRad: 0.01,
        turnRad: 0.3 * Math.sin(i / 50),
      }),
    );
    const run = runOf("tilt-turn", rows, {
      opening: gridHeading(0),
      closing: gridHeading(0),
      closureLimitRad: 180 * DEG,
    });
    const { path } = reduce(run);
    expect(path!.count).toBe(2500);
    expect([...path!.northM].every(Number.isFinite)).toBe(true);
  });
});
