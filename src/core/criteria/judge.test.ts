import { expect, test } from "vitest";
import { axis, request, straightPath } from "../../../test/fixtures/judged-axis.ts";
import { ned } from "../geometry/vector.ts";
import { judge, sourceReasons } from "./judge.ts";

const path = straightPath(ned(1000.05, 2000, -10), ned(0, 0, 1), 20);
const plan = request("plan-position", { numbers: { limit_m: 0.075 } });
const simple = { rule: "simple", probability: 0.95 } as const;

test("[F3] a verdict carries its value, limit, unit, level, revision and source", () => {
  const source = { document: "Project specification", clause: "5.2", status: "read" } as const;
  const found = judge(axis(path), { ...plan, source }, simple);
  expect(found.value).toBeCloseTo(0.05, 9);
  expect(found).toMatchObject({
    criterionId: "rule",
    kind: "plan-position",
    verdict: "within",
    limit: 0.075,
    unit: "m",
    atDownM: -7,
    rule: "simple",
    reasons: [],
    revision: 1,
    source,
  });
});

test("what keeps an element from being measured, and a criterion that nobody knows, are not judged", () => {
  const because = { reason: "criteria.no-path" };
  expect(judge(because, plan, simple)).toMatchObject({
    verdict: "not-judged",
    value: Number.NaN,
    reasons: [{ code: "criteria.no-path", values: {} }],
  });
  expect(judge(axis(path), request("colour"), simple)).toMatchObject({
    verdict: "not-judged",
    reasons: [{ code: "criteria.unknown-kind", values: { kind: "colour" } }],
  });
});

test("[F3] a limit from memory says so in every verdict, whatever it is", () => {
  const source = { document: "EN 1536", clause: "7.2", status: "memory" } as const;
  const reason = { code: "criteria.clause-from-memory", values: { document: "EN 1536", clause: "7.2" } };
  for (const judged of [axis(path), { reason: "criteria.no-path" }])
    expect(judge(judged, { ...plan, source }, simple).reasons).toContainEqual(reason);
  expect(sourceReasons({ document: "EN 1536", status: "read" })).toEqual([]);
  expect(sourceReasons(undefined)).toEqual([]);
});

test("a known probability decides by the rule that was agreed", () => {
  const uncertainty = { standardUncertainty: 0.01, probabilityWithin: 0.8 };
  const found = judge(axis(path), plan, { rule: "four-way", probability: 0.95 }, uncertainty);
  expect(found).toMatchObject({ verdict: "too-close-to-call", probabilityWithin: 0.8, rule: "four-way" });
});
