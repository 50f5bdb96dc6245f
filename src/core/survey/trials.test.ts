import { describe, expect, test } from "vitest";
import { contextOfRun, runOf } from "../../../test/fixtures/hand-made-run.ts";
import { element, request } from "../../../test/fixtures/judged-axis.ts";
import { mean, sampleStandardDeviation } from "../num/moments.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { type SourceId, sourceKinds } from "../uncertainty/error-source.ts";
import type { ElementWork } from "./axis-of-element.ts";
import { propagateRun } from "./propagate-run.ts";
import { reduceRun } from "./reduce-run.ts";
import { TrialSeries } from "./trial-series.ts";
import { trialAxis } from "./trials.ts";
import { covarianceOf, effectsOf } from "./uncertain-axis.ts";

const only = (values: Partial<Record<SourceId, number>>): SurveyRun["declaredErrors"] =>
  sourceKinds.map(({ id }) => ({ source: id, value: values[id] ?? 0, distribution: undefined }));

/** A keyed run down 20 m, leaning a little north and more below. */
const run = (values: Partial<Record<SourceId, number>>): SurveyRun =>
  runOf(
    "keyed-tilt",
    Array.from({ length: 21 }, (_, depthM) => ({
      depthM,
      tiltXRad: 0.01 + 0.001 * depthM,
      tiltYRad: 0,
      face: 1 as const,
    })),
    { grooveBearingRad: 0, declaredErrors: only(values) },
  );

function workOf(survey: SurveyRun): ElementWork {
  const context = contextOfRun();
  const reduced = reduceRun(survey, context);
  return {
    element: element(),
    tubes: [],
    runs: [{ run: survey, context, reduced, uncertainty: propagateRun(survey, context, reduced) }],
    criteria: [],
    decision: { rule: "four-way", probability: 0.95 },
    method: "minimum-curvature",
  };
}

const toeNorth = (work: ElementWork, seed: number, trial: number): number => {
  const { path } = trialAxis(work, 0, seed, trial)!.axis;
  return path.northM[path.count - 1]!;
};
const range = (from: number, to: number) => Array.from({ length: to - from }, (_, i) => from + i);

describe("[E4] trials", () => {
  const noisy = workOf(
    run({
      "tilt-noise": 1e-3,
      seating: 5e-4,
      "tilt-zero-x": 1e-3,
      "groove-bearing": 0.01,
      "head-north": 0.005,
    }),
  );

  test("trials 0 to 59 are the same in one go and in three parts, taken backwards", () => {
    const whole = range(0, 60).map((trial) => toeNorth(noisy, 7, trial));
    const parts = [range(40, 60), range(15, 40), range(0, 15)].map((part) =>
      part.map((trial) => toeNorth(noisy, 7, trial)),
    );
    expect([...parts[2]!, ...parts[1]!, ...parts[0]!]).toEqual(whole);
    expect(new Set(whole).size).toBe(60);
  });

  test("another seed gives other trials", () => {
    for (const trial of [0, 1, 2]) expect(toeNorth(noisy, 8, trial)).not.toBe(toeNorth(noisy, 7, trial));
  });

  test("a budget of nothing gives the survey itself", () => {
    const work = workOf(run({}));
    const { path } = work.runs[0]!.reduced.result;
    // but for the nanometres that a bending course hides between stops
    expect(toeNorth(work, 1, 0)).toBeCloseTo(path!.northM[20]!, 7);
  });

  test("their scatter is that of first order (600 trials, seed 3)", () => {
    const { uncertainty } = noisy.runs[0]!;
    const { path } = uncertainty!;
    const [nn] = covarianceOf(
      effectsOf({ path, parts: [{ uncertainty: uncertainty!, share: 1 }], tubes: [] }, 20),
    );
    const found = sampleStandardDeviation(
      Float64Array.from(range(0, 600), (trial) => toeNorth(noisy, 3, trial)),
    );
    // four standard deviations of a standard deviation from 600
    expect(Math.abs(found / Math.sqrt(nn) - 1)).toBeLessThan(4 / Math.sqrt(1200));
  });

  test("a rectangular error keeps its bounds: one zero of 1 mrad moves 20 m by no more than root 3 times 20 mm", () => {
    const declaredErrors = only({ "tilt-zero-x": 1e-3 }).map((each) =>
      each.source === "tilt-zero-x" ? { ...each, distribution: "rectangular" as const } : each,
    );
    const work = workOf({ ...run({}), declaredErrors });
    const middle = work.runs[0]!.reduced.result.path!.northM[20]!;
    const moves = range(0, 200).map((trial) => Math.abs(toeNorth(work, 1, trial) - middle));
    expect(Math.max(...moves)).toBeLessThanOrEqual(Math.sqrt(3) * 0.02);
    expect(Math.max(...moves)).toBeGreaterThan(0.03);
  });
});

describe("[E4] trials of a rule", () => {
  const work = workOf(run({ "tilt-zero-x": 1e-3 }));
  const rule = request("plan-position", { numbers: { limit_m: 0.4 }, words: { at: "toe" } });

  test("as many as were asked for, the same for every call, with interval and share", () => {
    const series = () => new TrialSeries(work, 0, { trials: 200, seed: 4 });
    const [one, two] = [series(), series()];
    const found = one.ofValue(rule)!;
    const standard = found.standardUncertainty!;
    expect(two.ofValue(rule)).toEqual(found);
    const [summary] = one.summary();
    expect(summary).toMatchObject({ criterionId: "rule", trials: 200, seed: 4 });
    // 20 m of hole at a zero of 1 mrad: 20 mm
    expect(Math.abs(standard / 0.02 - 1)).toBeLessThan(4 / Math.sqrt(400));
    expect(summary!.to95 - summary!.from95).toBeGreaterThan(2 * 1.5 * standard);
    expect(Math.abs(summary!.mean - mean(Float64Array.of(summary!.from95, summary!.to95)))).toBeLessThan(
      0.02,
    );
  });

  test("a rule that cannot be measured has no probability", () => {
    expect(
      new TrialSeries(work, 0, { trials: 20, seed: 1 }).ofValue(request("no-such-kind")),
    ).toBeUndefined();
  });
});
