import { describe, expect, test } from "vitest";
import { contextOfRun, gridHeading, runOf } from "../../../test/fixtures/hand-made-run.ts";
import published from "../../../test/published/error-propagation/case.json" with { type: "json" };
import type { ReadingRow } from "../../../test/support/readings.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { type SourceId, sourceKinds } from "../uncertainty/error-source.ts";
import { RADIANS_PER_DEGREE as DEG } from "../units/quantity.ts";
import { propagateRun } from "./propagate-run.ts";
import { reduceRun } from "./reduce-run.ts";
import { covarianceOf, effectsOf } from "./uncertain-axis.ts";

const { intervals, intervalM, standardRad } = published.chance;
const depths = Array.from({ length: intervals + 1 }, (_, i) => i * intervalM);

/** The budget holds these values and nothing else. */
const only = (values: Partial<Record<SourceId, number>>): SurveyRun["declaredErrors"] =>
  sourceKinds.map(({ id }) => ({ source: id, value: values[id] ?? 0, distribution: undefined }));

function uncertaintyOf(run: SurveyRun) {
  const context = contextOfRun();
  const uncertainty = propagateRun(run, context, reduceRun(run, context))!;
  const { path } = uncertainty;
  const at = (depthM: number) => effectsOf({ path, parts: [{ uncertainty, share: 1 }], tubes: [] }, depthM);
  return { uncertainty, at, atToe: at(path.depthM[path.count - 1]!) };
}

const standards = (effects: ReturnType<typeof effectsOf>) => {
  const [nn, , , ee, , dd] = covarianceOf(effects);
  return { north: Math.sqrt(nn), east: Math.sqrt(ee), down: Math.sqrt(dd) };
};

const keyed = (rows: readonly ReadingRow[], values: Partial<Record<SourceId, number>>) =>
  runOf("keyed-tilt", rows, { grooveBearingRad: 0, declaredErrors: only(values) });
const plumbFace = (face: 1 | 2): ReadingRow[] =>
  depths.map((depthM) => ({ depthM, tiltXRad: 0, tiltYRad: 0, face, leg: "down" }));

describe("[E2] closed forms through the computation", () => {
  test("a zero that all readings share, probe held: s L", () => {
    const { atToe } = uncertaintyOf(keyed(plumbFace(1), { "tilt-zero-x": standardRad }));
    expect(standards(atToe).north).toBeCloseTo(published.sharedM, 7);
    expect(standards(atToe).east).toBeCloseTo(0, 9);
  });

  test("noise of every reading: s h sqrt(n - 1/2)", () => {
    const { atToe } = uncertaintyOf(keyed(plumbFace(1), { "tilt-noise": standardRad }));
    expect(Math.abs(standards(atToe).north - published.trapezoidM)).toBeLessThan(5e-9);
  });

  test("two faces: the zero cancels, the noise of two readings over root 2 stays", () => {
    const rows = [...plumbFace(1), ...plumbFace(2)];
    const { atToe } = uncertaintyOf(
      keyed(rows, { "tilt-noise": standardRad, "tilt-zero-x": 5 * standardRad }),
    );
    const trapezoid = published.twoFacesLegsM * Math.sqrt((intervals - 0.5) / intervals);
    expect(Math.abs(standards(atToe).north - trapezoid)).toBeLessThan(1e-8);
  });

  test("a groove that is off turns the hole: offset times the angle, across; a head that is off moves it whole", () => {
    const lean = 5 * DEG;
    const rows = depths.map((depthM) => ({ depthM, tiltXRad: lean, tiltYRad: 0, face: 1 as const }));
    const turned = uncertaintyOf(keyed(rows, { "groove-bearing": 0.01 })).atToe;
    expect(standards(turned).east).toBeCloseTo(30 * Math.sin(lean) * 0.01, 6);
    expect(standards(turned).north).toBeLessThan(2e-5);
    const moved = uncertaintyOf(keyed(rows, { "head-east": 0.02, "head-level": 0.03 })).at(0);
    expect(standards(moved)).toEqual({ north: 0, east: 0.02, down: 0.03 });
  });

  test("inclinations and azimuths: the first along the lean, the second across it and as large as sin I", () => {
    const rows = depths.map((depthM) => ({ depthM, inclinationRad: 0.1, azimuthRad: Math.PI / 2 }));
    const run = runOf("inclination-azimuth", rows, {
      declaredErrors: only({ "inclination-noise": standardRad, "azimuth-noise": 10 * standardRad }),
    });
    const { north, east } = standards(uncertaintyOf(run).atToe);
    expect(east).toBeCloseTo(published.trapezoidM * Math.cos(0.1), 7);
    expect(north).toBeCloseTo(10 * published.trapezoidM * Math.sin(0.1), 7);
  });
});

describe("[C4] ties", () => {
  const rows: ReadingRow[] = [
    { leg: "open" as const, depthM: 0 },
    ...[1, 2, 3, 4].map((depthM) => ({ leg: "down" as const, depthM })),
    { leg: "tie" as const, depthM: 0 },
    ...[4, 3, 2, 1].map((depthM) => ({ leg: "up" as const, depthM })),
  ].map((row, i) => ({ ...row, timeS: 60 * i, tiltXRad: 5 * DEG, tiltYRad: 0, turnRad: 0 }));

  test("a run that is known again at a tie only is closed on it: the tie's own uncertainty counts", () => {
    const run = (tieDeg: number) =>
      runOf("tilt-turn", rows, {
        opening: gridHeading(0, 0),
        ties: [gridHeading(0, tieDeg)],
        declaredErrors: only({}),
      });
    const good = standards(uncertaintyOf(run(0)).atToe).east;
    const poor = standards(uncertaintyOf(run(1)).atToe).east;
    expect(good).toBeLessThan(1e-12);
    // headings of the way down lean on the tie by the part of the time, the way up as much as wholly
    const whole = 4 * Math.sin(5 * DEG) * DEG;
    expect(poor).toBeGreaterThan(0.5 * whole);
    expect(poor).toBeLessThan(1.2 * whole);
  });
});

describe("edges", () => {
  test("two stations, and a budget of nothing: no uncertainty, not a missing one", () => {
    const rows = [0, 5].map((depthM) => ({ depthM, tiltXRad: 0.02, tiltYRad: 0, face: 1 as const }));
    expect(standards(uncertaintyOf(keyed(rows, {})).atToe)).toEqual({ north: 0, east: 0, down: 0 });
    const noisy = standards(uncertaintyOf(keyed(rows, { "tilt-noise": standardRad })).atToe);
    expect(noisy.north).toBeCloseTo(standardRad * 2.5 * Math.SQRT2, 9);
  });

  test("a run without a path has no uncertainty", () => {
    const run = keyed([{ depthM: 1, tiltXRad: 0, tiltYRad: 0 }], {});
    expect(propagateRun(run, contextOfRun(), reduceRun(run, contextOfRun()))).toBeUndefined();
  });
});
