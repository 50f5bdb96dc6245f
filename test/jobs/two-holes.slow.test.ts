import { describe, expect, test } from "vitest";
import {
  covarianceOf,
  differenceBetween,
  effectsOf,
  type HolePath,
  ned,
  propagateRun,
  reduceRun,
  type UncertainAxis,
} from "#core";
import { createRandom, type HoleShape, type RunSpec, simulateRun } from "#simulator";
import { declaredErrors } from "./coverage-trials.ts";
import { contextOf, siteDeg, stationsTo } from "./truth-trials.ts";

// Two raked holes read with one instrument in one calibration: zeros, scales and the gyro's zero are the same in both.
const standards = {
  "tilt-noise": 0.02,
  "tilt-zero-x": 0.06,
  "tilt-zero-y": 0.06,
  "tilt-scale": 0.004,
  "gyro-scale": 0.001,
  "opening-heading": 0.3,
} as const;

const keyedShape = (bearingDeg: number): HoleShape => ({ shape: "straight", rakeDeg: 9, bearingDeg });

function specOf(id: string, bearingDeg: number, seed: number): RunSpec {
  const random = createRandom(`two holes ${seed}`);
  const scale = standards["tilt-scale"] * random.normal();
  return {
    id,
    elementId: id,
    instrumentId: "probe",
    calibrationIds: ["zero"],
    head: ned(0, 0, 0),
    site: siteDeg,
    measures: "tilt-turn",
    hole: keyedShape(bearingDeg),
    stationsM: stationsTo(20, 1),
    // a probe that hardly turns: what belongs to it adds up down the hole
    spin: { turnsPerM: 0.005, waveTurns: 0 },
    opening: { headingDeg: 40, north: "grid", standardUncertaintyDeg: standards["opening-heading"] },
    errors: {
      tiltNoiseDeg: standards["tilt-noise"],
      tiltZeroXDeg: standards["tilt-zero-x"] * random.normal(),
      tiltZeroYDeg: standards["tilt-zero-y"] * random.normal(),
      tiltScaleX: scale,
      tiltScaleY: scale,
      gyroScale: standards["gyro-scale"] * random.normal(),
    },
  };
}

const zeroCalibration = {
  id: "zero",
  kind: "tilt-zero",
  instrumentId: "probe",
  madeAt: "2026-03-02T07:10:00Z",
  validity: { until: undefined, maxRuns: undefined, endedBy: [] },
  faces: [
    { face: 1, xRad: 0, yRad: 0 },
    { face: 2, xRad: 0, yRad: 0 },
  ],
  field: "calibrations[0]",
} as const;

function surveyed(spec: RunSpec, seed: number): { axis: UncertainAxis; truth: HolePath } {
  const simulated = simulateRun(spec, seed);
  const run = { ...simulated.run, declaredErrors: declaredErrors(standards) };
  const context = { ...contextOf(spec), calibrations: [zeroCalibration] };
  const uncertainty = propagateRun(run, context, reduceRun(run, context))!;
  return {
    axis: { path: uncertainty.path, parts: [{ uncertainty, share: 1 }], tubes: [] },
    truth: simulated.truth.path,
  };
}

const toeError = ({ axis, truth }: { axis: UncertainAxis; truth: HolePath }): [number, number] => [
  axis.path.northM.at(-1)! - truth.northM.at(-1)!,
  axis.path.eastM.at(-1)! - truth.eastM.at(-1)!,
];

describe("two holes, one instrument", () => {
  test.each([
    ["beside each other, leaning the same way: shared errors cancel", 60, 60],
    ["leaning apart: shared scale errors add", 60, 240],
  ])("[E3] %s, as simulation has it (600 pairs)", (_name, first, second) => {
    const pairs = 600;
    const differences: [number, number][] = [];
    let stated: ReturnType<typeof covarianceOf> | undefined;
    for (let seed = 1; seed <= pairs; seed++) {
      const a = surveyed(specOf("first", first, seed), seed);
      const b = surveyed(specOf("second", second, seed), seed);
      const [an, ae] = toeError(a);
      const [bn, be] = toeError(b);
      differences.push([an - bn, ae - be]);
      stated ??= covarianceOf(differenceBetween(effectsOf(a.axis, 20), effectsOf(b.axis, 20)));
    }
    const moment = (i: 0 | 1, k: 0 | 1) =>
      differences.reduce((sum, difference) => sum + difference[i] * difference[k], 0) / pairs;
    const [nn, ne, , ee] = stated!;
    // a variance from 600 pairs scatters by sqrt(2/600) = 5.8 %; three of those
    const band = 3 * Math.sqrt(2 / pairs);
    expect(Math.abs(moment(0, 0) / nn - 1)).toBeLessThan(band);
    expect(Math.abs(moment(1, 1) / ee - 1)).toBeLessThan(band);
    expect(Math.abs(moment(0, 1) - ne) / Math.sqrt(nn * ee)).toBeLessThan(band);
  });

  test("[E3] taking two such holes for independent would be wrong by more than a third", () => {
    const a = surveyed(specOf("first", 60, 1), 1).axis;
    const b = surveyed(specOf("second", 60, 1), 2).axis;
    const [nn] = covarianceOf(differenceBetween(effectsOf(a, 20), effectsOf(b, 20)));
    const independent = covarianceOf(effectsOf(a, 20))[0] + covarianceOf(effectsOf(b, 20))[0];
    expect(nn / independent).toBeLessThan(2 / 3);
  });
});
