import { describe, expect, test } from "vitest";
import { contextOfRun, gridHeading, runOf } from "../../../test/fixtures/hand-made-run.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import type { SourceId } from "../uncertainty/error-source.ts";
import { withErrors } from "./run-errors.ts";

const off = (run: SurveyRun, values: Partial<Record<SourceId, number>>, context = contextOfRun()) =>
  withErrors(run, context, new Map(Object.entries(values) as [SourceId, number][]));

describe("[E2] a run read with errors", () => {
  test("no error changes nothing", () => {
    const run = runOf("tilt-turn", [{ depthM: 1, tiltXRad: 0.1, tiltYRad: 0.2, turnRad: 3, timeS: 60 }]);
    expect(off(run, {}).run).toEqual(run);
    expect(off(run, {}).context).toEqual(contextOfRun());
  });

  test("tilts: zero and misalignment add, scale is of the tilt itself, cross axis of the other one", () => {
    const run = runOf("tilt-turn", [{ tiltXRad: 0.1, tiltYRad: 0.2 }]);
    const { readings } = off(run, {
      "tilt-zero-x": 0.01,
      "misalignment-x": 0.002,
      "tilt-scale": 0.1,
      "cross-axis": 0.05,
    }).run;
    expect(readings.tiltXRad[0]).toBeCloseTo(0.1 + 0.012 + 0.01 + 0.01, 14);
    expect(readings.tiltYRad[0]).toBeCloseTo(0.2 + 0.02 + 0.005, 14);
  });

  test("accelerations: the same errors as parts of gravity, whatever the unit", () => {
    for (const g of [1, 9.81]) {
      const [x, y] = [0.1 * g, 0.2 * g];
      const run = runOf("acceleration-turn", [{ accX: x, accY: y, accZ: -Math.sqrt(g * g - x * x - y * y) }]);
      const { readings } = off(run, { "tilt-zero-x": 0.01, "tilt-scale": 0.1, "cross-axis": 0.05 }).run;
      expect(readings.accX[0]! / g).toBeCloseTo(0.1 + 0.01 + 0.01 + 0.01, 12);
      expect(readings.accY[0]! / g).toBeCloseTo(0.2 + 0.02 + 0.005, 12);
      expect(readings.accZ[0]).toBe(run.readings.accZ[0]);
    }
  });

  test("the gyro: its own rate times the time, its scale times the turn", () => {
    const run = runOf("tilt-turn", [{ turnRad: 2, timeS: 100 }]);
    expect(off(run, { "gyro-bias": 1e-3, "gyro-scale": 0.01 }).run.readings.turnRad[0]).toBeCloseTo(2.12, 14);
  });

  test("chance in metres reaches depths in counts by the depth scale", () => {
    const run = runOf("keyed-tilt", [{ depthCounts: 4000 }]);
    const calibration = {
      id: "ds",
      kind: "depth-scale" as const,
      instrumentId: "probe",
      madeAt: "2026-03-02T07:30:00Z",
      validity: { until: undefined, maxRuns: undefined, endedBy: [] },
      field: "calibrations[0]",
      lengthM: 5,
      counts: [20_000],
    };
    const none = Float64Array.of(0);
    const rows = {
      tiltXRad: none,
      tiltYRad: none,
      turnRad: none,
      depthM: Float64Array.of(0.01),
      inclinationRad: none,
      azimuthRad: none,
    };
    const context = contextOfRun({ calibrations: [calibration] });
    // 10 mm are 40 counts of 0.25 mm
    expect(withErrors(run, context, new Map(), { rows }).run.readings.depthCounts[0]).toBeCloseTo(4040, 9);
    expect(off(run, { "depth-scale": 0.001 }, context).run.readings.depthCounts[0]).toBeCloseTo(4004, 9);
  });

  test("[C6] declination turns what was given from magnetic north, and nothing else", () => {
    const magnetic = { ...gridHeading(10), givenNorth: "magnetic" as const };
    const run = runOf("tilt-turn", [], { opening: magnetic, closing: gridHeading(10) });
    const moved = off(run, { declination: 0.01 }).run;
    expect(moved.opening!.headingRad - run.opening!.headingRad).toBeCloseTo(0.01, 14);
    expect(moved.closing!.headingRad).toBe(run.closing!.headingRad);
    const azimuths = (azimuthNorth: "grid" | "magnetic") =>
      off(runOf("inclination-azimuth", [], { azimuthNorth }), { declination: 0.01, "azimuth-bias": 0.02 }).run
        .azimuthToGridRad;
    expect(azimuths("grid")).toBeCloseTo(0.02, 14);
    expect(azimuths("magnetic")).toBeCloseTo(0.03, 14);
  });

  test("[C4] ties have errors of their own, not that of the closing heading", () => {
    const run = runOf("tilt-turn", [], {
      ties: [gridHeading(10), gridHeading(10)],
      closing: gridHeading(10),
    });
    const moved = withErrors(run, contextOfRun(), new Map([["closing-heading", 0.02]]), {
      tiesRad: [0, 0.01],
    }).run;
    const change = [...moved.ties, moved.closing!].map(
      ({ headingRad }) => headingRad - gridHeading(10).headingRad,
    );
    expect(change.map((each) => Math.round(each * 1e9) / 1e9)).toEqual([0, 0.01, 0.02]);
  });

  test("[A3] plumb without an azimuth stays plumb; what was not read stays missing", () => {
    const run = runOf("inclination-azimuth", [{ inclinationRad: 0 }, { inclinationRad: 0.1, azimuthRad: 1 }]);
    const { readings } = off(run, { "inclination-bias": 0.01, "tilt-zero-x": 0.1 }).run;
    expect(Array.from(readings.inclinationRad)).toEqual([0, expect.closeTo(0.11, 14)]);
    expect(readings.tiltXRad[0]).toBeNaN();
    expect(readings.accX[0]).toBeNaN();
    expect(readings.azimuthRad[0]).toBeNaN();
  });

  test("a head that is off: north and east as they are, a level that is too high is less far down", () => {
    const { top } = off(runOf("keyed-tilt", []), {
      "head-north": 0.1,
      "head-east": 0.2,
      "head-level": 0.3,
    }).context;
    const from = contextOfRun().top;
    expect([top.north - from.north, top.east - from.east, top.down - from.down]).toEqual([
      expect.closeTo(0.1, 12),
      expect.closeTo(0.2, 12),
      expect.closeTo(-0.3, 12),
    ]);
  });
});
