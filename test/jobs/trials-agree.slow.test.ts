import { describe, expect, test } from "vitest";
import { type CriterionRequest, ned, offsetCovariance, propagateRun, reduceRun } from "#core";
import { type RunSpec, simulateRun } from "#simulator";
import type { ElementWork } from "../../src/core/survey/axis-of-element.ts";
import { trialAxis } from "../../src/core/survey/trials.ts";
import { element } from "../fixtures/judged-axis.ts";
import { coverageScenarios, declaredErrors } from "./coverage-trials.ts";
import { contextOf, siteDeg } from "./truth-trials.ts";

const TRIALS = 4000;
const plumb = { direction: ned(0, 0, 1), along: ned(1, 0, 0), across: ned(0, 1, 0) };

const hole = element({
  id: "hole",
  kind: "borehole",
  head: ned(0, 0, 0),
  toeDownM: undefined,
  cutoffDownM: undefined,
});

/** One run of a scenario as the program sees it, with the budget of the scenario. */
function workOf(name: string): ElementWork {
  const scenario = coverageScenarios.find((each) => each.name === name)!;
  const spec: RunSpec = {
    ...scenario.spec,
    id: "run",
    elementId: "hole",
    instrumentId: "probe",
    head: ned(0, 0, 0),
    site: siteDeg,
  };
  const run = { ...simulateRun(spec, 7).run, declaredErrors: declaredErrors(scenario.standards) };
  const context = contextOf(spec);
  const reduced = reduceRun(run, context);
  const uncertainty = propagateRun(run, context, reduced);
  const criteria: readonly CriterionRequest[] = [];
  return {
    element: hole,
    tubes: [],
    runs: [{ run, context, reduced, uncertainty }],
    criteria,
    decision: { rule: "four-way", probability: 0.95 },
    method: "minimum-curvature",
  };
}

describe("first order against trials of the same budget through the same computation", () => {
  test.each(["raked", "two faces", "closed", "open", "keyed", "noisy"])(
    "[E4] %s: standard uncertainties of the toe agree to 2 percent and the noise of 4,000 trials",
    (name) => {
      const work = workOf(name);
      const { uncertainty } = work.runs[0]!;
      const { path } = uncertainty!;
      const last = path.count - 1;
      const axis = { path, parts: [{ uncertainty: uncertainty!, share: 1 }], tubes: [] };
      const form = { fromDepthM: undefined, atDepthM: path.depthM[last]!, axes: plumb };
      const stated = offsetCovariance(axis, form);
      const errors: [number, number][] = [];
      for (let trial = 0; trial < TRIALS; trial++) {
        const moved = trialAxis(work, 0, 11, trial)!.axis.path;
        const end = moved.count - 1;
        // both at one level: the moved toe slides back along its own direction
        const slide = (moved.downM[end]! - path.downM[last]!) / moved.tangentDown[end]!;
        errors.push([
          moved.northM[end]! - slide * moved.tangentNorth[end]! - path.northM[last]!,
          moved.eastM[end]! - slide * moved.tangentEast[end]! - path.eastM[last]!,
        ]);
      }
      const spread = (axis_: 0 | 1) => {
        const mean = errors.reduce((sum, error) => sum + error[axis_], 0) / TRIALS;
        return Math.sqrt(errors.reduce((sum, error) => sum + (error[axis_] - mean) ** 2, 0) / (TRIALS - 1));
      };
      // a standard deviation from n trials scatters by 1/sqrt(2n) = 1.1 %; two of those beside the 2 %
      const band = 0.02 + 2 / Math.sqrt(2 * TRIALS);
      expect(Math.abs(spread(0) / Math.sqrt(stated.alongAlong) - 1)).toBeLessThan(band);
      expect(Math.abs(spread(1) / Math.sqrt(stated.acrossAcross) - 1)).toBeLessThan(band);
    },
  );

  test("[E4] the same seed gives the same trials whatever was worked out before", () => {
    const work = workOf("raked");
    const at = (trial: number) => trialAxis(work, 0, 5, trial)!.axis.path.northM.at(-1);
    const forwards = [0, 1, 2, 3].map(at);
    const backwards = [3, 2, 1, 0].map(at).reverse();
    expect(forwards).toEqual(backwards);
    expect(new Set(forwards).size).toBe(4);
  });
});
