import { describe, expect, test } from "vitest";
import { normalAt, uniformAt } from "../num/random-stream.ts";
import type { ElementResult, VerdictResult } from "./results.ts";
import { ruleRisks } from "./rule-risks.ts";

const verdict = (value: number, standardUncertainty: number, limit: number): VerdictResult => ({
  criterionId: "plumb",
  kind: "verticality",
  verdict: "within",
  value,
  limit,
  unit: "m/m",
  atDownM: 10,
  standardUncertainty,
  probabilityWithin: 1,
  rule: "four-way",
  reasons: [],
  revision: 1,
  source: undefined,
});

const elementOf = (result: VerdictResult, i: number): ElementResult => ({
  elementId: `E${i}`,
  runIds: [],
  path: undefined,
  axis: [],
  gaps: [],
  verticality: undefined,
  verdicts: [result],
  uncertainty: undefined,
  findings: [],
});

const SEED = 2026;
/** Gamma with shape 4, the sum of four exponentials, and a mean of 0.6 of the limit: as bearings in JCGM 106 have it. */
const truth = (i: number): number =>
  [0, 1, 2, 3].reduce((sum, k) => sum - Math.log(uniformAt({ seed: SEED, stream: 1 }, 4 * i + k)), 0) * 0.15;

describe("ruleRisks", () => {
  test.each(["simple", "guarded"] as const)(
    "[F4] %s: risks are the shares that 20,000 simulated elements show (seed 2026)",
    (rule) => {
      const count = 20_000;
      const u = 0.1;
      const elements: ElementResult[] = [];
      let consumer = 0;
      let producer = 0;
      const acceptance = rule === "simple" ? 1 : 1 - 1.6448536 * u;
      for (let i = 0; i < count; i++) {
        const value = truth(i);
        const shown = value + u * normalAt({ seed: SEED, stream: 2 }, i);
        // limits differ from element to element; what counts is the share of the limit
        const limit = 0.01 * (1 + (i % 3));
        elements.push(elementOf(verdict(shown * limit, u * limit, limit), i));
        if (shown <= acceptance && value > 1) consumer += 1;
        if (shown > acceptance && value <= 1) producer += 1;
      }
      const [risk] = ruleRisks(elements, { rule, probability: 0.95 });
      expect(risk!.elements).toBe(count);
      // a share p of n scatters by sqrt(p/n); the fitted population adds a little
      expect(Math.abs(risk!.consumersRisk - consumer / count)).toBeLessThan(
        (5 * Math.sqrt(consumer)) / count + 1e-3,
      );
      expect(Math.abs(risk!.producersRisk - producer / count)).toBeLessThan(
        (5 * Math.sqrt(producer)) / count + 1e-3,
      );
      expect(risk!.testUncertaintyRatio).toBeCloseTo(1 / (2 * u), 6);
    },
  );

  test("few values, missing ones and values without spread say nothing", () => {
    const decision = { rule: "four-way", probability: 0.95 } as const;
    const of = (values: readonly number[], u = 0.001) =>
      ruleRisks(
        values.map((value, i) => elementOf(verdict(value, u, 0.01), i)),
        decision,
      );
    expect(of([0.001, 0.002, 0.003])).toEqual([]);
    expect(of(new Array(20).fill(0.004))).toEqual([]);
    expect(of(new Array(20).fill(Number.NaN))).toEqual([]);
    expect(of([0.001, 0.004, 0.002, 0.006, 0.003, 0.001, 0.005, 0.002, 0.003, 0.004, 0.002])).toHaveLength(1);
  });
});
