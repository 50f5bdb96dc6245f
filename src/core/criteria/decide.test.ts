import { describe, expect, test } from "vitest";
import type { Measured, Verdict } from "./criterion.ts";
import { decide, type ValueUncertainty } from "./decide.ts";
import type { Decision } from "./decision.ts";

const NAN = Number.NaN;
const measured = (value: number, limit: number, partial = false): Measured => ({
  value,
  limit,
  atDownM: NAN,
  atDepthM: NAN,
  partial,
});
const withP = (probabilityWithin: number | undefined): ValueUncertainty => ({
  standardUncertainty: 0.01,
  probabilityWithin,
});
const SIMPLE: Decision = { rule: "simple", probability: 0.95 };
const GUARDED: Decision = { rule: "guarded", probability: 0.95 };
const FOUR_WAY: Decision = { rule: "four-way", probability: 0.95 };

test.each<[string, Measured, ValueUncertainty | undefined, Decision, Verdict]>([
  ["below the limit", measured(0.074, 0.075), undefined, SIMPLE, "within"],
  ["on the limit", measured(0.075, 0.075), undefined, SIMPLE, "within"],
  ["a hair above, not rounded", measured(0.0750000001, 0.075), undefined, SIMPLE, "outside"],
  ["above", measured(0.08, 0.075), undefined, SIMPLE, "outside"],
  ["simple looks at no probability", measured(0.074, 0.075), withP(0.5), SIMPLE, "within"],
  ["guarded, enough", measured(0.06, 0.075), withP(0.95), GUARDED, "within"],
  ["guarded, too little", measured(0.07, 0.075), withP(0.6667), GUARDED, "outside"],
  ["four-way, enough", measured(0.05, 0.075), withP(0.95), FOUR_WAY, "within"],
  ["four-way, between", measured(0.06, 0.075), withP(0.923), FOUR_WAY, "too-close-to-call"],
  ["four-way, between, above the limit", measured(0.08, 0.075), withP(0.286), FOUR_WAY, "too-close-to-call"],
  ["four-way, outside", measured(0.12, 0.075), withP(0.01), FOUR_WAY, "outside"],
  ["four-way without a probability", measured(0.06, 0.075), withP(undefined), FOUR_WAY, "within"],
  ["guarded without anything", measured(0.08, 0.075), undefined, GUARDED, "outside"],
  ["a part, within", measured(0.06, 0.075, true), undefined, SIMPLE, "not-judged"],
  ["a part, outside", measured(0.08, 0.075, true), undefined, SIMPLE, "outside"],
  ["a part, surely within", measured(0.01, 0.075, true), withP(1), FOUR_WAY, "not-judged"],
  ["a part, too close", measured(0.08, 0.075, true), withP(0.3), FOUR_WAY, "not-judged"],
  ["a part, surely outside", measured(0.2, 0.075, true), withP(0), FOUR_WAY, "outside"],
  ["a part, within but not shown", measured(0.07, 0.075, true), withP(0.7), GUARDED, "not-judged"],
])("[F4] %s", (_what, outcome, uncertainty, decision, verdict) => {
  expect(decide(outcome, uncertainty, decision).verdict).toBe(verdict);
});

describe("[F4] a number that is missing is never a verdict", () => {
  const bad = [NAN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const rule of [SIMPLE, GUARDED, FOUR_WAY])
    for (const partial of [false, true])
      for (const number of bad) {
        test(`${rule.rule}, partial ${partial}, value ${number}`, () => {
          for (const p of [undefined, 0, 0.5, 1])
            expect(decide(measured(number, 0.075, partial), withP(p), rule).verdict).toBe("not-judged");
        });
        test(`${rule.rule}, partial ${partial}, limit ${number}`, () => {
          for (const p of [undefined, 0, 0.5, 1])
            expect(decide(measured(0.01, number, partial), withP(p), rule).verdict).toBe("not-judged");
        });
      }

  test.each([NAN, -0.1, 1.1])("probability of being within %f", (p) => {
    for (const rule of [GUARDED, FOUR_WAY])
      expect(decide(measured(0.01, 0.075), withP(p), rule).verdict).toBe("not-judged");
  });

  test.each([NAN, 0.5, 0.2, 1, 2])("probability asked for %f", (probability) => {
    for (const { rule } of [GUARDED, FOUR_WAY])
      expect(decide(measured(0.01, 0.075), withP(1), { rule, probability }).verdict).toBe("not-judged");
  });

  test("nothing measured says why", () => {
    const decided = decide({ reason: "criteria.no-cutoff" }, undefined, FOUR_WAY);
    expect(decided).toEqual({
      verdict: "not-judged",
      rule: "four-way",
      reasons: [{ code: "criteria.no-cutoff", values: {} }],
    });
  });
});

test("the rule that was really used is told", () => {
  const decided = decide(measured(0.01, 0.075), undefined, FOUR_WAY);
  expect(decided.rule).toBe("simple");
  expect(decided.reasons.map(({ code }) => code)).toEqual(["criteria.no-probability"]);
  expect(decide(measured(0.01, 0.075), withP(1), FOUR_WAY)).toEqual({
    verdict: "within",
    rule: "four-way",
    reasons: [],
  });
});
