import { describe, expect, test } from "vitest";
import { axis, element, pathOf, request, straightPath } from "../../../test/fixtures/judged-axis.ts";
import type { JudgedAxis, Measured } from "./criterion.ts";
import { isMeasured } from "./decide.ts";
import { planPosition } from "./plan-position.ts";

const plan = (settings: Parameters<typeof request>[1]) => request("plan-position", settings);
function measured(judged: JudgedAxis, settings: Parameters<typeof request>[1]): Measured {
  expect(planPosition.check(plan(settings))).toEqual([]);
  const found = planPosition.measure(judged, plan(settings));
  if (!isMeasured(found)) throw new Error(`not measured: ${found.reason}`);
  return found;
}
const reason = (judged: JudgedAxis, settings: Parameters<typeof request>[1]) => {
  const found = planPosition.measure(judged, plan(settings));
  return isMeasured(found) ? `value ${found.value}` : found.reason;
};

/** Head 40 mm north of design, leaning 10 mm per metre of level to the east; head down -10, 20 m deep. */
const leaning = straightPath(
  { north: 1000.04, east: 2000, down: -10 },
  { north: 0, east: 0.01, down: 1 },
  20,
);
/** offset at a depth of level below the head */
const offsetAt = (h: number) => Math.hypot(0.04, 0.01 * h);

describe("where it is looked at", () => {
  test.each([
    ["cut-off by default", { limit_m: 0.075 }, {}, -7, offsetAt(3)],
    ["head", { limit_m: 0.075 }, { at: "head" }, -10, 0.04],
    ["a level", { limit_m: 0.075, at_level_m: -4.5 }, {}, 4.5, offsetAt(14.5)],
  ] as const)("[F1] %s", (_what, numbers, words, atDownM, value) => {
    const found = measured(axis(leaning), { numbers, words });
    expect(found.atDownM).toBeCloseTo(atDownM, 9);
    expect(found.value).toBeCloseTo(value, 9);
    expect(found.limit).toBe(0.075);
    expect(found.partial).toBe(false);
  });

  test("[F1] toe is the design toe level, or the lowest reading above it", () => {
    const deeper = straightPath(
      { north: 1000.04, east: 2000, down: -10 },
      { north: 0, east: 0.01, down: 1 },
      25,
    );
    expect(measured(axis(deeper), { numbers: { limit_m: 1 }, words: { at: "toe" } }).value).toBeCloseTo(
      offsetAt(20),
      9,
    );
    const lowest = 20 / Math.hypot(1, 0.01);
    expect(measured(axis(leaning), { numbers: { limit_m: 1 }, words: { at: "toe" } }).value).toBeCloseTo(
      offsetAt(lowest),
      9,
    );
  });

  test("[F1] every level finds the worst", () => {
    const bowed = pathOf(
      [0, 0.02, 0.09, 0.03, 0].map((north, i) => ({ north: 1000 + north, east: 2000, down: -10 + 5 * i })),
      [0, 5, 10, 15, 20],
    );
    const found = measured(axis(bowed), { numbers: { limit_m: 0.075 }, words: { at: "every-level" } });
    expect(found.value).toBeCloseTo(0.09, 9);
    expect(found.atDownM).toBe(0);
  });

  test("what stands out above the commencing surface does not count", () => {
    const bent = pathOf(
      [0.5, 0.01, 0.01, 0.01].map((north, i) => ({ north: 1000 + north, east: 2000, down: -11 + i })),
      [0, 1, 2, 3],
    );
    const judged = axis(bent, { element: element({ toeDownM: -8 }) });
    const found = measured(judged, { numbers: { limit_m: 0.075 }, words: { at: "every-level" } });
    expect(found.value).toBeCloseTo(0.01, 9);
  });

  test("a cut-off above the commencing surface is looked at in that surface", () => {
    const judged = axis(leaning, { element: element({ cutoffDownM: -11 }) });
    expect(measured(judged, { numbers: { limit_m: 0.075 } }).value).toBeCloseTo(0.04, 9);
  });
});

describe("what is not measured", () => {
  test.each([
    ["no cut-off level", { element: element({ cutoffDownM: undefined }) }, {}, "criteria.no-cutoff"],
    ["cut-off below the readings", { readToM: 2, reachesToe: false }, {}, "criteria.level-not-read"],
    ["cut-off above the readings", { readFromM: 5, reachesHead: false }, {}, "criteria.level-not-read"],
    ["toe not reached", { reachesToe: false }, { at: "toe" }, "criteria.toe-not-read"],
    ["lean without a bearing", { element: element({ rakeRad: 0.1 }) }, {}, "criteria.design-incomplete"],
    ["level in a gap", { gaps: [{ fromM: 2, toM: 8 }] }, {}, "criteria.level-not-read"],
    ["nothing read", { readFromM: 3, readToM: 3 }, {}, "criteria.nothing-read"],
    ["read range below the path", { readFromM: 30, readToM: 40 }, {}, "criteria.level-not-read"],
  ] as const)("%s", (_what, changes, words, expected) => {
    expect(reason(axis(leaning, changes), { numbers: { limit_m: 0.075 }, words })).toBe(expected);
  });

  test("a part of the diameter without a diameter", () => {
    const judged = axis(leaning, { element: element({ section: undefined }) });
    expect(reason(judged, { numbers: { limit_per_diameter: 0.1 } })).toBe("criteria.no-section");
  });

  test("[D4] every level of a run that stops short is a part only", () => {
    const words = { at: "every-level" };
    const settings = { numbers: { limit_m: 0.075 }, words };
    expect(measured(axis(leaning, { reachesToe: false }), settings).partial).toBe(true);
    expect(measured(axis(leaning, { reachesHead: false }), settings).partial).toBe(true);
    expect(measured(axis(leaning, { gaps: [{ fromM: 2, toM: 8 }] }), settings).partial).toBe(true);
    expect(measured(axis(leaning, { reachesToe: false }), { numbers: { limit_m: 0.075 } }).partial).toBe(
      false,
    );
  });
});

describe("how much is allowed", () => {
  const limit = (diameterM: number, settings: Parameters<typeof request>[1], cutoffBelowHeadM = 0) =>
    measured(
      axis(leaning, {
        element: element({ section: { shape: "round", diameterM }, cutoffDownM: -10 + cutoffBelowHeadM }),
      }),
      settings,
    ).limit;

  test.each([
    ["the smaller of 75 mm and D/6", 0.3, { limit_m: 0.075, limit_per_diameter: 1 / 6 }, {}, 0.05],
    ["the same, D = 600", 0.6, { limit_m: 0.075, limit_per_diameter: 1 / 6 }, {}, 0.075],
    [
      "the larger of 75 mm and D/10",
      1.2,
      { limit_m: 0.075, limit_per_diameter: 0.1 },
      { combine: "max" },
      0.12,
    ],
    ["a part of the diameter alone", 1.2, { limit_per_diameter: 0.125 }, {}, 0.15],
  ] as const)("%s", (_what, diameter, numbers, words, expected) => {
    expect(limit(diameter, { numbers, words })).toBeCloseTo(expected, 12);
  });

  test.each([
    [0.8, 0.1],
    [1.0, 0.1],
    [1.2, 0.12],
    [1.5, 0.15],
    [2.5, 0.15],
  ])("steps by diameter: D = %f gives %f", (diameter, expected) => {
    const steps = [
      { up_to_diameter_m: 1, limit_m: 0.1 },
      { up_to_diameter_m: 1.5, per_diameter: 0.1 },
      { limit_m: 0.15 },
    ];
    expect(limit(diameter, { tables: { steps } })).toBeCloseTo(expected, 12);
  });

  test("a diameter past the last step has no limit", () => {
    const settings = { tables: { steps: [{ up_to_diameter_m: 0.5, limit_m: 0.1 }] } };
    expect(reason(axis(leaning), settings)).toBe("criteria.no-step");
  });

  test.each([
    ["25 mm + 13.3 mm per metre, 3 m below", 0.025, 0.0133, 3, 0.0649],
    ["75 mm + 13.3 mm per metre, 3 m below", 0.075, 0.0133, 3, 0.1149],
    ["50 mm + 10 mm per metre, 3 m below", 0.05, 0.01, 3, 0.08],
    ["no growth at the surface", 0.05, 0.01, 0, 0.05],
  ])("[F3] %s", (_what, limit_m, growth_m_per_m, below, expected) => {
    expect(limit(0.9, { numbers: { limit_m, growth_m_per_m } }, below)).toBeCloseTo(expected, 12);
  });

  test("[F3] growth from cut-off starts there", () => {
    const words = { growth_from: "cutoff", at: "every-level" };
    const settings = { numbers: { limit_m: 0.05, growth_m_per_m: 0.01 }, words };
    const allowance = planPosition.allowanceM!;
    expect(allowance(element(), -9, plan(settings))).toBeCloseTo(0.05, 12);
    expect(allowance(element(), -2, plan(settings))).toBeCloseTo(0.1, 12);
    expect(allowance(element({ cutoffDownM: undefined }), -2, plan(settings))).toBeNaN();
  });

  test("for drawings a rule about one level says nothing about others", () => {
    const allowance = planPosition.allowanceM!;
    const numbers = { limit_m: 0.05 };
    expect(allowance(element(), -7, plan({ numbers }))).toBe(0.05);
    expect(allowance(element(), 0, plan({ numbers }))).toBeNaN();
    expect(allowance(element(), 0, plan({ numbers, words: { at: "every-level" } }))).toBe(0.05);
    expect(allowance(element(), -3, plan({ numbers: { ...numbers, at_level_m: 3 } }))).toBe(0.05);
  });

  test("per axis: the one that uses most of its own limit is shown", () => {
    const settings = { numbers: { limit_along_m: 0.1, limit_across_m: 0.025 } };
    const found = measured(axis(leaning), settings);
    expect(found.value).toBeCloseTo(0.03, 9);
    expect(found.limit).toBe(0.025);
    expect(found.foundOn?.code).toBe("criteria.on-across");
  });

  test("a bearing of along can be given", () => {
    const settings = { numbers: { limit_along_m: 1, along_bearing_deg: 90 } };
    expect(measured(axis(leaning), settings).value).toBeCloseTo(0.03, 9);
  });
});

describe("from where it is counted", () => {
  test("[F1] drift from the as-built top leaves the place of the top out", () => {
    const found = measured(axis(leaning), { numbers: { limit_m: 0.1 }, words: { from: "as-built-top" } });
    expect(found.value).toBeCloseTo(0.03, 9);
  });

  test("a straight hole lies on its own line, however it leans", () => {
    const words = { from: "own-line", at: "every-level" };
    expect(measured(axis(leaning), { numbers: { limit_m: 0.05 }, words }).value).toBeLessThan(1e-9);
    expect(reason(axis(leaning, { reachesToe: false }), { numbers: { limit_m: 0.05 }, words })).toBe(
      "criteria.own-line-not-read",
    );
  });

  test("a bow shows its rise over its own line", () => {
    const bowed = pathOf(
      [0, 0.03, 0.04, 0.03, 0].map((east, i) => ({ north: 1000, east: 2000 + east, down: -10 + 5 * i })),
      [0, 5, 10, 15, 20],
    );
    const words = { from: "own-line", at: "every-level" };
    expect(measured(axis(bowed), { numbers: { limit_m: 0.05 }, words }).value).toBeCloseTo(0.04, 9);
  });
});

describe("what a request must have", () => {
  const faults = (settings: Parameters<typeof request>[1]) =>
    planPosition.check(plan(settings)).map(({ field }) => field);
  const steps = [{ up_to_diameter_m: 1, limit_m: 0.1 }];

  test.each([
    ["no limit", {}, ["limit_m"]],
    ["a limit that is no number", { numbers: { limit_m: Number.NaN } }, ["limit_m"]],
    ["a limit below nothing", { numbers: { limit_m: -0.1 } }, ["limit_m"]],
    ["a key that nobody knows", { numbers: { limit_m: 0.1, limit_mm: 75 } }, ["limit_mm"]],
    ["a word that is no choice", { numbers: { limit_m: 0.1 }, words: { at: "middle" } }, ["at"]],
    ["steps beside a constant", { numbers: { limit_m: 0.1 }, tables: { steps } }, ["limit_m"]],
    ["a step without a limit", { tables: { steps: [{ up_to_diameter_m: 1 }] } }, ["steps[0]"]],
    [
      "steps that fall",
      { tables: { steps: [...steps, { up_to_diameter_m: 0.5, limit_m: 0.2 }] } },
      ["steps[1].up_to_diameter_m"],
    ],
    [
      "an open row before the last",
      { tables: { steps: [...steps, { limit_m: 0.2 }, { up_to_diameter_m: 3, limit_m: 0.3 }] } },
      ["steps[1]"],
    ],
    ["nothing but an open row", { tables: { steps: [{ limit_m: 0.2 }] } }, ["steps[0]"]],
    [
      "steps of two kinds",
      { tables: { steps: [...steps, { up_to_length_m: 5, limit_m: 0.2 }] } },
      ["steps[1]"],
    ],
    ["an empty table", { tables: { steps: [] } }, ["steps"]],
    ["a table that nobody knows", { numbers: { limit_m: 0.1 }, tables: { rows: [] } }, ["rows"]],
    ["a column that nobody knows", { tables: { steps: [{ ...steps[0], limit: 1 }] } }, ["steps[0].limit"]],
    ["level and word", { numbers: { limit_m: 0.1, at_level_m: 3 }, words: { at: "toe" } }, ["at"]],
    [
      "applies to what nobody knows",
      { numbers: { limit_m: 0.1 }, appliesTo: { colour: "red" } },
      ["applies_to.colour"],
    ],
  ] as const)("%s", (_what, settings, expected) => {
    expect(faults(settings as unknown as Parameters<typeof request>[1])).toEqual(expected);
  });
});

test("the rule reads as a sentence", () => {
  const settings = { numbers: { limit_m: 0.075, growth_m_per_m: 0.0133 } };
  expect(planPosition.describe(plan(settings), "en")).toBe(
    "75 mm in any direction + 13.3 mm more per metre below the commencing surface, at cut-off level, from the design axis",
  );
  expect(planPosition.describe(plan(settings), "de")).toContain("13,3 mm");
});
