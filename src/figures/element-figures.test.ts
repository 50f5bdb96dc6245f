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
  findings: [],
};

describe("the drawings of an element", () => {
  test("are a plan and a section", () => {
    const drawn = elementFigures({ element: plumbPile, result, criteria: [request({})], language: "en" });
    expect(drawn.map(({ id }) => id)).toEqual(["plan", "section"]);
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
});
