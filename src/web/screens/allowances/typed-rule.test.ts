import { expect, test } from "vitest";
import { drawingShape, SHEET } from "./drawing-shape.ts";
import { emptyRule, isReadable, ruleOf, typedRule } from "./typed-rule.ts";

const PLUMB = {
  id: "plumb",
  kind: "verticality",
  appliesTo: { kind: ["panel"], group: "west" },
  numbers: { percent: 0.5, over_first_m: 12.5 },
  words: { measured: "chord" },
  tables: {},
  source: { document: "Project specification (invented)", clause: "5.2", status: "memory" as const },
};

test("a rule goes through the form and back unchanged, with either decimal mark", () => {
  for (const mark of [",", "."])
    expect(ruleOf(typedRule(PLUMB, mark))).toEqual({
      ...PLUMB,
      appliesTo: { kind: ["panel"], group: ["west"] },
    });
});

test("a number that cannot be read is not taken for another one", () => {
  const typed = { ...emptyRule("plan-position", new Set()), numbers: { limit_m: "0.075.1" } };
  expect(ruleOf(typed).numbers).toEqual({});
  expect(isReadable(typed)).toBe(false);
});

test("a new rule takes a name that is free", () => {
  expect(emptyRule("verticality", new Set(["verticality-1", "verticality-2"])).id).toBe("verticality-3");
});

test("the widest allowance fills the sheet from margin to margin", () => {
  const shape = drawingShape({
    element: "P1",
    lengthM: 20,
    points: [0, 10, 20].map((depthM) => ({ depthM, levelM: -depthM, allowedM: depthM / 100 })),
  });
  expect(shape.envelope).toContain(`${SHEET.margin.toFixed(1)} ${(SHEET.height - SHEET.margin).toFixed(1)}`);
  // (120 - 16) / 0.2 pixels a metre sideways, (220 - 32) / 20 down
  expect(shape.times).toBeCloseTo(520 / 9.4, 9);
});

test("a rule about one level is a bar as wide as it allows", () => {
  const shape = drawingShape({
    element: undefined,
    lengthM: 20,
    points: [{ depthM: 5, levelM: -5, allowedM: 0.075 }],
  });
  expect(shape.envelope).toBe("");
  expect(shape.bars).toEqual([{ x: SHEET.margin, y: 16 + 5 * 9.4, width: SHEET.width - 2 * SHEET.margin }]);
});
