import { describe, expect, test } from "vitest";
import { ContractError, EARTH_RATE_RAD_PER_S, ned, radiansFromDegrees, wrapToPi } from "#core";
import type { HoleShape } from "./hole-shape.ts";
import type { RunSpec } from "./run-spec.ts";
import { simulateRun } from "./simulate-run.ts";

const DEGREE = radiansFromDegrees(1);
const PLUMB: HoleShape = { shape: "straight", rakeDeg: 0, bearingDeg: 0 };
const RAKER: HoleShape = {
  shape: "wandering-bearing",
  rakeDeg: 15,
  bearingDeg: 70,
  amplitudeDeg: 20,
  wavelengthM: 13,
  phaseDeg: 50,
  turnDegPerM: 0.3,
};
const STILL = { turnsPerM: 0, waveTurns: 0 };
const stations = (to: number, interval: number): number[] =>
  Array.from({ length: Math.floor(to / interval) + 1 }, (_, i) => i * interval);

function spec(more: Partial<RunSpec> = {}): RunSpec {
  return {
    id: "R1",
    elementId: "P1",
    instrumentId: "probe",
    measures: "tilt-turn",
    hole: PLUMB,
    head: ned(0, 0, 0),
    site: { latitudeDeg: 51.5, convergenceDeg: -1.2, declinationDeg: 1.5 },
    stationsM: stations(20, 1),
    opening: { headingDeg: 40, north: "grid", standardUncertaintyDeg: 0 },
    closing: { headingDeg: 40, north: "grid", standardUncertaintyDeg: 0 },
    ...more,
  };
}

describe("simulateRun without errors", () => {
  test("[A5] a plumb hole: the turn is the change of heading plus the earth's turn", () => {
    const { run, truth } = simulateRun(spec(), 1);
    const { readings } = run;
    const earth = -EARTH_RATE_RAD_PER_S * Math.sin(radiansFromDegrees(51.5));
    for (let i = 0; i < readings.count; i++) {
      const turn = readings.turnRad[i]! - readings.turnRad[0]! - earth * readings.timeS[i]!;
      expect(Math.abs(wrapToPi(truth.headingRad[i]! - truth.headingRad[0]! - turn))).toBeLessThan(1e-7);
      expect(Math.abs(readings.tiltXRad[i]!)).toBeLessThan(1e-9);
    }
    expect(readings.leg[0]).toBe("open");
    expect(readings.leg.at(-1)).toBe("close");
  });

  test("[A2] tilts and true heading give the true tangent at every row, down and up, in a raker", () => {
    const { run, truth } = simulateRun(
      spec({
        hole: RAKER,
        passes: [
          { leg: "down", face: 1 },
          { leg: "up", face: 1 },
        ],
      }),
      2,
    );
    const { readings } = run;
    expect(readings.leg.filter((leg) => leg === "up")).toHaveLength(21);
    for (let i = 0; i < readings.count; i++) {
      const [sx, sy] = [Math.sin(readings.tiltXRad[i]!), Math.sin(readings.tiltYRad[i]!)];
      const heading = truth.headingRad[i]!;
      const { north, east } = truth.tangents[i]!;
      expect(sx * Math.cos(heading) - sy * Math.sin(heading)).toBeCloseTo(north, 9);
      expect(sx * Math.sin(heading) + sy * Math.cos(heading)).toBeCloseTo(east, 9);
    }
  });

  test("opening and closing headings hold at their rows, from whichever north they are written", () => {
    const opening = { headingDeg: 40, north: "magnetic", standardUncertaintyDeg: 0 } as const;
    const closing = { headingDeg: 50, north: "true", standardUncertaintyDeg: 0 } as const;
    const { run, truth } = simulateRun(spec({ hole: RAKER, opening, closing }), 3);
    // grid = magnetic + declination - convergence; grid = true - convergence
    expect(truth.headingRad[0]).toBeCloseTo((40 + 1.5 + 1.2) * DEGREE, 9);
    expect(truth.headingRad.at(-1)).toBeCloseTo((50 + 1.2) * DEGREE, 9);
    expect(run.opening?.headingRad).toBeCloseTo((40 + 1.5 + 1.2) * DEGREE, 12);
    expect(run.closing?.headingRad).toBeCloseTo((50 + 1.2) * DEGREE, 12);
  });

  test("[A1] accelerations are the reaction to gravity: a plumb probe shows 0, 0, -1", () => {
    const plumb = simulateRun(spec({ measures: "acceleration-turn" }), 4).run.readings;
    expect(plumb.accX[3]).toBeCloseTo(0, 9);
    expect(plumb.accY[3]).toBeCloseTo(0, 9);
    expect(plumb.accZ[3]).toBeCloseTo(-1, 9);
    const hole: HoleShape = { shape: "straight", rakeDeg: 10, bearingDeg: 40 };
    const leaning = simulateRun(spec({ measures: "acceleration-turn", hole }), 4).run.readings;
    // at the opening probe +x points where the hole leans
    expect(leaning.accX[0]).toBeCloseTo(Math.sin(10 * DEGREE), 9);
    expect(leaning.accZ[0]).toBeCloseTo(-Math.cos(10 * DEGREE), 9);
    expect(leaning.tiltXRad[0]).toBeNaN();
  });

  test("[A6] a keyed run reads the lean in the groove's axes, face 2 with the signs reversed", () => {
    const hole: HoleShape = { shape: "straight", rakeDeg: 3, bearingDeg: 100 };
    const passes = [
      { leg: "down", face: 1 },
      { leg: "down", face: 2 },
    ] as const;
    const keyed = spec({
      measures: "keyed-tilt",
      hole,
      passes,
      grooveBearingDeg: 70,
      spiral: [
        { depthM: 0, twistDeg: 0 },
        { depthM: 20, twistDeg: 10 },
      ],
    });
    const { readings } = simulateRun(keyed, 5).run;
    expect(readings.count).toBe(42);
    expect(readings.leg.includes("open")).toBe(false);
    for (const depth of [0, 10, 20]) {
      const from = (30 - depth / 2) * DEGREE;
      expect(Math.sin(readings.tiltXRad[depth]!)).toBeCloseTo(Math.sin(3 * DEGREE) * Math.cos(from), 9);
      expect(Math.sin(readings.tiltYRad[depth]!)).toBeCloseTo(Math.sin(3 * DEGREE) * Math.sin(from), 9);
      expect(readings.tiltXRad[depth + 21]).toBeCloseTo(-readings.tiltXRad[depth]!, 9);
    }
    const swapped = simulateRun({ ...keyed, faults: [{ fault: "swapped-faces" }] }, 5).run.readings;
    expect(swapped.face[0]).toBe(2);
    expect(swapped.tiltXRad).toEqual(readings.tiltXRad);
  });

  test("a run on two faces is turned by half a turn at the top, with a known heading in between", () => {
    const tie = { headingDeg: 100, north: "grid", standardUncertaintyDeg: 0 } as const;
    const passes = [
      { leg: "down", face: 1 },
      { leg: "down", face: 2 },
    ] as const;
    const { run, truth } = simulateRun(spec({ hole: RAKER, passes, ties: [tie], spin: STILL }), 7);
    const { readings } = run;
    expect(readings.leg.filter((leg) => leg === "tie")).toHaveLength(1);
    const row = readings.leg.indexOf("tie");
    expect(truth.headingRad[row]).toBeCloseTo(100 * DEGREE, 9);
    expect(run.ties[0]?.headingRad).toBeCloseTo(100 * DEGREE, 12);
    expect(Math.abs(wrapToPi(truth.headingRad[row + 1]! - truth.headingRad[row]! - Math.PI))).toBeLessThan(
      1e-9,
    );
    expect([readings.face[row - 1], readings.face[row + 1]]).toEqual([1, 2]);
  });

  test("refuses to change the face down in the hole, and stations out of order", () => {
    const passes = [
      { leg: "down", face: 1 },
      { leg: "up", face: 2 },
    ] as const;
    expect(() => simulateRun(spec({ passes }), 1)).toThrow(ContractError);
    expect(() => simulateRun(spec({ stationsM: [0, 2, 2] }), 1)).toThrow(ContractError);
    expect(() => simulateRun(spec({ errors: { clearanceM: 0.001 } }), 1)).toThrow(ContractError);
  });

  test("[A3] inclination and azimuth are those of the axis, from the north the run names", () => {
    const hole: HoleShape = { shape: "straight", rakeDeg: 8, bearingDeg: 359.5 };
    const { readings, azimuthToGridRad } = simulateRun(
      spec({ measures: "inclination-azimuth", hole, azimuthNorth: "magnetic" }),
      6,
    ).run;
    expect(readings.inclinationRad[4]).toBeCloseTo(8 * DEGREE, 9);
    expect(readings.azimuthRad[4]! + azimuthToGridRad).toBeCloseTo(359.5 * DEGREE, 9);
  });
});

describe("simulateRun with errors", () => {
  test("the same seed gives the same run, another seed another one", () => {
    const errors = { tiltNoiseDeg: 0.01, gyroWalkDegPerRootH: 0.3, depthSlipMPerRootM: 0.001 };
    const one = simulateRun(spec({ errors, hole: RAKER }), 9);
    expect(simulateRun(spec({ errors, hole: RAKER }), 9)).toEqual(one);
    expect(simulateRun(spec({ errors, hole: RAKER }), 10).run.readings.tiltXRad).not.toEqual(
      one.run.readings.tiltXRad,
    );
  });

  test("adds each known error as it is described", () => {
    const clean = simulateRun(spec({ hole: RAKER }), 12).run.readings;
    const shown = (errors: RunSpec["errors"]) =>
      simulateRun(spec({ hole: RAKER, ...(errors && { errors }) }), 12).run.readings;
    expect(shown({ tiltZeroXDeg: 0.2 }).tiltXRad[7]! - clean.tiltXRad[7]!).toBeCloseTo(0.2 * DEGREE, 12);
    expect(shown({ tiltScaleY: 0.01 }).tiltYRad[7]! / clean.tiltYRad[7]!).toBeCloseTo(1.01, 12);
    expect(shown({ crossXY: 0.02 }).tiltXRad[7]! - clean.tiltXRad[7]!).toBeCloseTo(
      0.02 * clean.tiltYRad[7]!,
      12,
    );
    const time = (i: number) => clean.timeS[i]! + 5;
    expect(shown({ gyroBiasDegPerH: 6 }).turnRad[9]! - clean.turnRad[9]!).toBeCloseTo(
      (6 * DEGREE * time(9)) / 3600,
      12,
    );
    expect(shown({ gyroScale: 0.001 }).turnRad[9]! / clean.turnRad[9]!).toBeCloseTo(1.001, 12);
    const small = shown({ misalignmentXDeg: 0.01 });
    // in a plumb hole the misalignment is what a zero would be; in a raker it differs in second order
    expect(small.tiltXRad[7]! - clean.tiltXRad[7]!).toBeCloseTo(0.01 * DEGREE, 5);
  });

  test("a lost count of the gyro shows from its depth on, a gap leaves stations out", () => {
    const clean = simulateRun(spec(), 13).run.readings;
    const jumped = simulateRun(spec({ faults: [{ fault: "gyro-jump", atM: 10, jumpDeg: 4 }] }), 13).run
      .readings;
    const lost = Array.from(jumped.turnRad, (turn, i) => Math.round((turn - clean.turnRad[i]!) / DEGREE));
    expect(lost).toEqual(
      Array.from(clean.depthM, (depth, i) => (depth >= 10 || i === lost.length - 1 ? 4 : 0)),
    );
    const gap = simulateRun(spec({ faults: [{ fault: "gap", fromM: 4, toM: 9 }] }), 13);
    expect(Array.from(gap.run.readings.depthM).filter((depth) => depth > 4 && depth < 9)).toEqual([]);
    expect(gap.truth.path.count).toBe(21);
  });

  test("the depth device moves the probe, not the number written down", () => {
    const errors = { depthScale: 0.01, depthZeroM: 0.05 };
    const { run, truth } = simulateRun(spec({ errors }), 14);
    expect(run.readings.depthM[11]).toBe(10);
    expect(truth.depthM[11]).toBeCloseTo(0.05 + 10 / 1.01, 12);
    const counts = simulateRun(spec({ errors, countsPerM: 4000 }), 14).run.readings;
    expect(counts.depthCounts[11]).toBe(40_000);
    expect(counts.depthM[11]).toBeNaN();
  });

  test("temperature moves the tilt zeros away from the reference temperature", () => {
    const temperature = { surfaceC: 18, groundC: 10 };
    const clean = simulateRun(spec({ temperature }), 15).run.readings;
    const errors = { tiltDriftXDegPerK: 0.01, referenceTemperatureC: 20 };
    const drifting = simulateRun(spec({ temperature, errors }), 15).run.readings;
    const last = clean.count - 1;
    // written to a tenth of a kelvin
    expect((drifting.tiltXRad[last]! - clean.tiltXRad[last]!) / DEGREE).toBeCloseTo(
      0.01 * (clean.temperatureC[last]! - 20),
      3,
    );
    expect(clean.temperatureC[0]!).toBeGreaterThan(clean.temperatureC[last]!);
    expect(clean.temperatureC[last]!).toBeGreaterThan(10);
  });
});

describe("simulateRun: statistics of what is left to chance", () => {
  const runs = 400;
  const many = <T>(take: (seed: number) => T): T[] => Array.from({ length: runs }, (_, seed) => take(seed));
  const variance = (values: readonly number[]): number => {
    const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
    return values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1);
  };
  /** five standard errors of a variance from n normal values, relative */
  const margin = (n: number): number => 5 * Math.sqrt(2 / (n - 1));
  const quick = (errors: NonNullable<RunSpec["errors"]>, more: Partial<RunSpec> = {}) =>
    spec({ errors, stationsM: [0, 4, 8, 12], stepM: 0.2, ...more });

  test("[C4] the gyro's random walk has variance N^2 t, and independent steps", () => {
    const walks = many((seed) => {
      const noisy = simulateRun(quick({ gyroWalkDegPerRootH: 0.3 }), seed).run.readings;
      const clean = simulateRun(quick({}), seed).run.readings;
      return [2, 4].map((i) => (noisy.turnRad[i]! - clean.turnRad[i]!) / DEGREE);
    });
    const { timeS } = simulateRun(quick({}), 0).run.readings;
    const [early, late] = [(timeS[2]! + 5) / 3600, (timeS[4]! + 5) / 3600];
    const [first, second] = [walks.map((w) => w[0]!), walks.map((w) => w[1]!)];
    const steps = walks.map((w) => w[1]! - w[0]!);
    expect(Math.abs(variance(first) / (0.09 * early) - 1)).toBeLessThan(margin(runs));
    expect(Math.abs(variance(second) / (0.09 * late) - 1)).toBeLessThan(margin(runs));
    expect(Math.abs(variance(steps) / (0.09 * (late - early)) - 1)).toBeLessThan(margin(runs));
  });

  test("reading noise has the standard deviation it is given, row by row", () => {
    const values = many((seed) => {
      const { tiltXRad } = simulateRun(quick({ tiltNoiseDeg: 0.02 }), seed).run.readings;
      return Array.from(tiltXRad.subarray(1, 5), (tilt) => tilt / DEGREE);
    }).flat();
    expect(Math.abs(variance(values) / 0.02 ** 2 - 1)).toBeLessThan(margin(values.length));
  });

  test("seating leans the probe by clearance / (sqrt 8 gauge length)", () => {
    const more = { gaugeLengthM: 0.8 };
    const values = many((seed) => {
      const { tiltXRad } = simulateRun(quick({ clearanceM: 0.004 }, more), seed).run.readings;
      return Array.from(tiltXRad.subarray(1, 5));
    }).flat();
    expect(Math.abs(variance(values) / (0.004 ** 2 / 8 / 0.8 ** 2) - 1)).toBeLessThan(margin(values.length));
    expect(Math.max(...values.map(Math.abs))).toBeLessThan(0.004 / 0.8);
  });

  test("depth slips as a walk over the cable run", () => {
    const shown = many((seed) => {
      const { depthM } = simulateRun(quick({ depthSlipMPerRootM: 0.002 }), seed).run.readings;
      return depthM.at(-1)!;
    });
    expect(Math.abs(variance(shown) / (0.002 ** 2 * 24) - 1)).toBeLessThan(margin(runs));
  });

  test("references miss the true heading by their standard uncertainty", () => {
    const reference = { headingDeg: 40, north: "grid", standardUncertaintyDeg: 1 } as const;
    const misses = many((seed) => {
      const { truth } = simulateRun(quick({}, { opening: reference, closing: reference }), seed);
      return [truth.headingRad[0]!, truth.headingRad.at(-1)!].map((h) => h / DEGREE - 40);
    });
    expect(Math.abs(variance(misses.map((m) => m[0]!)) - 1)).toBeLessThan(margin(runs));
    expect(Math.abs(variance(misses.map((m) => m[1]! - m[0]!)) / 2 - 1)).toBeLessThan(margin(runs));
  });
});
