import { describe, expect, test } from "vitest";
import type { CriterionRequest, ElementResult } from "#core";
import { bentAxis, plumbPile } from "../../test/figure-views.ts";
import { elementFigures, elementView } from "./element-figures.ts";

const request = (changes: Partial<CriterionRequest>): CriterionRequest => ({
  id: "rule",
  kind: "plan-position",
  appliesTo: {},
  numbers: { limit_m: 0.075 },
  words: {},
  tables: {},
  source: undefined,
  field: "criteria[0]",
  ...changes,
});

const result: ElementResult = {
  elementId: "P12",
  runIds: ["P12-1"],
  path: undefined,
  axis: bentAxis,
  gaps: [],
  verticality: undefined,
  verdicts: [
    {
      criterionId: "rule",
      kind: "plan-position",
      verdict: "not-judged",
      value: Number.NaN,
      limit: Number.NaN,
      unit: "m",
      atDownM: Number.NaN,
      standardUncertainty: undefined,
      probabilityWithin: undefined,
      rule: "simple",
      reasons: [{ code: "criteria.no-path", values: {} }],
      revision: 1,
      source: undefined,
    },
  ],
  uncertainty: undefined,
  findings: [],
};

describe("the drawings of an element", () => {
  test("are a plan, a section and a budget", () => {
    const drawn = elementFigures({ element: plumbPile, result, criteria: [request({})], language: "en" });
    expect(drawn.map(({ id }) => id)).toEqual(["plan", "section", "budget"]);
    for (const { svg } of drawn) expect(svg).toMatch(/^<svg .*<\/svg>\n$/s);
  });
  test("show the rules for the element, and no others", () => {
    const criteria = [request({}), request({ id: "other", appliesTo: { kind: "panel" } })];
    const view = elementView({ element: plumbPile, result, criteria, language: "en" });
    expect(view.allowances.map(({ label }) => label)).toEqual(["Plan position"]);
  });
  test("show an allowance where the rule holds, and nowhere else", () => {
    const view = elementView({ element: plumbPile, result, criteria: [request({})], language: "en" });
    expect(view.allowances[0]!.allowanceM(-1.2)).toBe(0.075);
    expect(view.allowances[0]!.allowanceM(10)).toBeNaN();
  });
  test("say in a sentence why nothing was judged", () => {
    const view = elementView({ element: plumbPile, result, criteria: [], language: "en" });
    expect(view.verdicts[0]!.reasons).toEqual(["Nothing was surveyed that can be judged."]);
  });
  test("are drawn for a kind that the program does not know", () => {
    const element = { ...plumbPile, kind: "no-such-kind" };
    expect(elementView({ element, result, criteria: [], language: "de" }).kindName).toBe("no-such-kind");
  });

  const probable = {
    ...result.verdicts[0]!,
    value: 0.06,
    limit: 0.075,
    atDownM: -1.2,
    rule: "four-way",
  } as const;
  const withVerdict = (changes: Partial<ElementResult["verdicts"][number]>) => ({
    element: plumbPile,
    result: {
      ...result,
      verdicts: [{ ...probable, standardUncertainty: 0.01, probabilityWithin: 0.92297, ...changes }],
    },
    criteria: [request({})],
    decision: { rule: "four-way", probability: 0.95 } as const,
    language: "en" as const,
  });
  const words = (svg: string) => svg.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");

  test("[F4] say the value with its uncertainty, the probability and the rule", () => {
    const input = withVerdict({
      verdict: "too-close-to-call",
      reasons: [{ code: "criteria.neither-shown", values: { probability: 0.923, asked: 0.95 } }],
    });
    for (const { svg } of elementFigures(input)) {
      expect(words(svg)).toContain("60 mm ± 20 mm against 75 mm allowed at level +1.200 m");
      expect(words(svg)).toContain("probability of being within 92.3 %; four-way rule at 95 %");
      expect(words(svg)).not.toContain("too little to call it within");
    }
  });
  test("[F4] never round a probability to a certainty, and give none where nothing is judged", () => {
    const within = elementFigures(withVerdict({ verdict: "within", probabilityWithin: 0.99999 }))[0]!;
    expect(words(within.svg)).toContain("&gt; 99.9 %");
    const open = elementFigures(withVerdict({ verdict: "not-judged", probabilityWithin: 0.99999 }))[0]!;
    expect(words(open.svg)).not.toContain("probability of being within");
  });
});
