import type { Decision } from "../criteria/decision.ts";
import { mean, sampleVariance } from "../num/moments.ts";
import { decisionRisk, gammaPopulation, guardBand, testUncertaintyRatio } from "../uncertainty/risk.ts";
import type { ElementResult, VerdictResult } from "./results.ts";

/** What a rule of the job leads to over all elements that are like those measured. Shares of all elements. */
export interface RuleRisk {
  readonly criterionId: string;
  /** elements whose value and uncertainty are known */
  readonly elements: number;
  /** limit over the expanded uncertainty (95 %), for the root mean square of the uncertainties */
  readonly testUncertaintyRatio: number;
  /** accepted although outside */
  readonly consumersRisk: number;
  /** not accepted although within */
  readonly producersRisk: number;
  /** within, whatever is measured */
  readonly withinShare: number;
}

/** Fewer values do not show how elements of the job are spread. Common practice, no source. */
const LEAST_ELEMENTS = 10;

/**
 * Consumer's and producer's risk of every rule of a job, from how its own elements came out.
 *
 * Values are taken as shares of their limits, so that limits that differ from element to element can be put together. The true
 * shares are taken as a gamma population (never negative) with the mean of the measured ones and their variance less that of
 * the measurements. Accepted is what the rule of the job calls within: up to the limit by simple acceptance, a guard band below it
 * otherwise.
 *
 * @returns only rules with ten or more known values that are really spread.
 *
 * Frame: none. Source: rule F4; JCGM 106:2012 clause 9 (from memory).
 * Checked against: simulated populations (rule-risks.test.ts); `decisionRisk` against test/published/jcgm-106.
 */
export function ruleRisks(elements: readonly ElementResult[], decision: Decision): readonly RuleRisk[] {
  const byRule = new Map<string, VerdictResult[]>();
  for (const { verdicts } of elements)
    for (const verdict of verdicts) {
      const known =
        verdict.verdict !== "not-judged" &&
        verdict.limit > 0 &&
        Number.isFinite(verdict.value) &&
        (verdict.standardUncertainty ?? 0) > 0;
      if (known) byRule.set(verdict.criterionId, [...(byRule.get(verdict.criterionId) ?? []), verdict]);
    }
  return [...byRule].flatMap(([criterionId, verdicts]) => riskOf(criterionId, verdicts, decision) ?? []);
}

function riskOf(
  criterionId: string,
  verdicts: readonly VerdictResult[],
  decision: Decision,
): RuleRisk | undefined {
  if (verdicts.length < LEAST_ELEMENTS) return undefined;
  const shares = verdicts.map(({ value, limit }) => value / limit);
  const variances = verdicts.map(({ standardUncertainty, limit }) => (standardUncertainty! / limit) ** 2);
  const measured = mean(variances);
  const centre = mean(shares);
  const spread = sampleVariance(shares) - measured;
  if (!(spread > 0 && centre > 0)) return undefined;
  const standard = Math.sqrt(measured);
  const band = decision.rule === "simple" ? 0 : guardBand(standard, decision.probability);
  const population = gammaPopulation((centre * centre) / spread, spread / centre);
  const risk = decisionRisk(population, standard, { upper: 1 }, { upper: 1 - band });
  return {
    criterionId,
    elements: verdicts.length,
    testUncertaintyRatio: testUncertaintyRatio(1, standard),
    consumersRisk: risk.consumer,
    producersRisk: risk.producer,
    withinShare: risk.conforming,
  };
}
