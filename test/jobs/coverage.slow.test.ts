import { describe, expect, test } from "vitest";
import { coverageScenarios, coverageTrial, ELLIPSE_95 } from "./coverage-trials.ts";

const RUNS = 40;
/** The bench does 250 runs a scenario and keeps its table in docs/method/coverage.md. */
const outcomes = coverageScenarios.map((scenario) => ({
  name: scenario.name,
  trials: Array.from({ length: RUNS }, (_, i) => coverageTrial(scenario, i + 1)),
}));

/** Standard deviation of a share of successes of probability 0.95. */
const spread = (runs: number): number => Math.sqrt((0.95 * 0.05) / runs);

describe("stated uncertainty against simulated truth, seeds 1 to 40 of twelve kinds of survey", () => {
  const all = outcomes.flatMap(({ trials }) => trials);
  const shares = {
    "the 95 % ellipse holds the true toe": all.map((trial) => trial.toe <= ELLIPSE_95),
    "u95 holds the true point of worst offset": all.map((trial) => trial.worst <= 1),
  };

  test.each(Object.entries(shares))("[E2] %s in 95 of 100 runs, within the binomial band", (_name, held) => {
    expect(held).toHaveLength(RUNS * 12);
    const share = held.filter(Boolean).length / held.length;
    expect(Math.abs(share - 0.95)).toBeLessThan(3 * spread(held.length));
  });

  test.each(outcomes)("[E2] $name on its own stays within four standard deviations", ({ trials }) => {
    const toe = trials.filter((trial) => trial.toe <= ELLIPSE_95).length / RUNS;
    const worst = trials.filter((trial) => trial.worst <= 1).length / RUNS;
    expect(toe).toBeGreaterThan(0.95 - 4 * spread(RUNS));
    expect(worst).toBeGreaterThan(0.95 - 4 * spread(RUNS));
  });
});
