import { describe, expect, test } from "vitest";
import {
  type DesignElement,
  type Evidence,
  type Job,
  type JobResults,
  ned,
  reduceJob,
  type SourceId,
  type SurveyRun,
  sourceValueToSi,
} from "#core";
import { createRandom, type PassSpec, type ProbeErrors, type RunSpec, simulateRun } from "#simulator";
import { jobOf } from "../fixtures/hand-made-run.ts";
import { element } from "../fixtures/judged-axis.ts";
import { placeOfSite, siteDeg, stationsTo } from "./truth-trials.ts";

const RUNS = 12;
const si = (id: SourceId, value: number) => sourceValueToSi(id, value);
const downAndUp: readonly PassSpec[] = [
  { leg: "down", face: 1 },
  { leg: "up", face: 1 },
];

const elementOf = (id: string): DesignElement => ({ ...element(), id, head: ned(0, 0, 0) });

/** A run of hole H<i>, 20 m, 3 degrees of rake, with the given errors. */
function simulated(i: number, errors: Partial<ProbeErrors>, changes: Partial<RunSpec> = {}): SurveyRun {
  const reference = { headingDeg: 25, north: "grid" as const, standardUncertaintyDeg: 0.05 };
  const spec: RunSpec = {
    id: `R${i}`,
    elementId: `H${i}`,
    instrumentId: "probe",
    head: ned(0, 0, 0),
    site: siteDeg,
    measures: "tilt-turn",
    hole: { shape: "straight", rakeDeg: 3, bearingDeg: 30 * i },
    stationsM: stationsTo(20, 1),
    opening: reference,
    closing: reference,
    passes: downAndUp,
    errors,
    ...changes,
  };
  return simulateRun(spec, `evidence ${i}`).run;
}

const jobFrom = (runs: readonly SurveyRun[], typeA?: Job["typeA"]): Job =>
  jobOf({
    place: placeOfSite,
    elements: runs.map((run) => elementOf(run.elementId)),
    runs,
    ...(typeA === undefined ? {} : { typeA }),
  });

const about = (results: JobResults, source: SourceId, origin: Evidence["origin"]): Evidence =>
  results.evidence.find((each) => each.sources.includes(source) && each.origin === origin)!;

/** Whether a value found agrees with the true one, four standard deviations wide. */
const expectAbout = (found: Evidence, truth: number): void => {
  const spread = 1 / Math.sqrt(2 * found.degreesOfFreedom);
  expect(Math.abs(found.value / truth - 1)).toBeLessThan(4 * spread);
};

describe("[E1] evidence from the runs of a job", () => {
  const zeroDeg = 0.2;
  const runs = Array.from({ length: RUNS }, (_, i) =>
    simulated(i, { tiltNoiseDeg: 0.03, tiltZeroXDeg: zeroDeg, gyroWalkDegPerRootH: 0.8 }),
  );
  const results = reduceJob(jobFrom(runs));

  test("way down and way up show the noise of a reading, although the probe has a zero and its headings wander", () => {
    const found = about(results, "tilt-noise", "double-runs");
    // 21 stops of two components each, less zero and turn of the pair; the pair of every hole speaks
    expect(found.degreesOfFreedom).toBeGreaterThan(RUNS * 35);
    expect(found).toMatchObject({ sources: ["tilt-noise", "seating"], count: RUNS, used: false });
    expectAbout(found, si("tilt-noise", 0.03));
  });

  test("closures show the walk of the gyro", () => {
    const gyro = Array.from({ length: 20 }, (_, i) =>
      simulated(i, { gyroWalkDegPerRootH: 2, gyroBiasDegPerH: 4 }),
    );
    const zero = {
      id: "gz",
      kind: "gyro-zero" as const,
      instrumentId: "probe",
      madeAt: "2026-03-02T07:10:00Z",
      validity: { until: undefined, maxRuns: undefined, endedBy: [] },
      field: "calibrations[0]",
      rateRadPerS: 0,
      standardUncertaintyRadPerS: undefined,
      axisTrueNed: [1, 0, 0] as const,
      latitudeRad: Math.PI / 2,
    };
    // so wide a limit that no misclosure is left out
    const job = jobFrom(gyro.map((run) => ({ ...run, calibrationIds: ["gz"], closureLimitRad: 1 })));
    const found = reduceJob({ ...job, calibrations: [zero] });
    const walk = about(found, "gyro-noise", "closures");
    expect(walk.degreesOfFreedom).toBeGreaterThan(5);
    expectAbout(walk, si("gyro-noise", 2));
    expect(about(found, "gyro-bias", "closures")).toMatchObject({ degreesOfFreedom: 1, count: 20 });
  });

  test("faces of a keyed probe show noise by their sums, and the zero", () => {
    const faces: readonly PassSpec[] = [
      { leg: "down", face: 1 },
      { leg: "down", face: 2 },
    ];
    const keyed = Array.from({ length: RUNS }, (_, i) =>
      simulated(
        i,
        { tiltNoiseDeg: 0.03, tiltZeroXDeg: 0.2 * createRandom(`zero ${i}`).normal() },
        { measures: "keyed-tilt", grooveBearingDeg: 40, passes: faces },
      ),
    );
    const found = reduceJob(jobFrom(keyed));
    expectAbout(about(found, "tilt-noise", "face-sums"), si("tilt-noise", 0.03));
    expect(about(found, "tilt-noise", "face-sums").degreesOfFreedom).toBe(RUNS * 2 * 20);
    expectAbout(about(found, "tilt-zero-x", "face-sums"), si("tilt-zero-x", 0.2));
    expect(about(found, "tilt-zero-x", "face-sums").degreesOfFreedom).toBe(RUNS);
    expect(about(found, "tilt-noise", "double-runs")).toBeUndefined();
  });

  test("reported: budgets stay as declared; put in place: budgets say where the value comes from", () => {
    const entry = (of: JobResults, source: SourceId) =>
      of.elements[0]!.uncertainty!.sources.find((each) => each.source === source)!;
    expect(entry(results, "tilt-noise").from).toBe("class mems-standard");
    const replaced = reduceJob(jobFrom(runs, "replace"));
    const found = about(replaced, "tilt-noise", "double-runs");
    expect(found.used).toBe(true);
    const words = `double runs of the job, ${Math.round(found.degreesOfFreedom)} degrees of freedom`;
    const [noise, seating] = [entry(replaced, "tilt-noise"), entry(replaced, "seating")];
    expect([noise.from, seating.from]).toEqual([words, words]);
    expect(Math.hypot(noise.value, seating.value)).toBeCloseTo(found.value, 12);
    expect(found.declared).toBeCloseTo(si("tilt-noise", Math.hypot(0.01, 0.02)), 12);
  });

  test("what is asked for changes no evidence that is used", () => {
    const whole = reduceJob(jobFrom(runs, "replace"));
    const one = reduceJob(jobFrom(runs, "replace"), { only: ["H3"] });
    expect(one.evidence).toEqual(whole.evidence);
    expect(one.elements[0]!.uncertainty!.covariances).toEqual(whole.elements[3]!.uncertainty!.covariances);
  });

  test("few degrees of freedom are shown and not used", () => {
    const short = simulated(0, { tiltNoiseDeg: 0.03 }, { stationsM: stationsTo(3, 1) });
    const found = about(reduceJob(jobFrom([short], "replace")), "tilt-noise", "double-runs");
    expect(found.degreesOfFreedom).toBeLessThan(10);
    expect(found.used).toBe(false);
  });
});
