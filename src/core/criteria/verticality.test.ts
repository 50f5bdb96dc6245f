import { describe, expect, test } from "vitest";
import {
  axis,
  circularPath,
  element,
  pathOf,
  request,
  straightPath,
} from "../../../test/fixtures/judged-axis.ts";
import { add, ned, scale } from "../geometry/vector.ts";
import type { JudgedAxis, Measured } from "./criterion.ts";
import { isMeasured } from "./decide.ts";
import { verticality } from "./verticality.ts";

type Settings = Parameters<typeof request>[1];
const HEAD = ned(1000, 2000, -10);
const rule = (settings: Settings) => request("verticality", settings);
function measured(judged: JudgedAxis, settings: Settings): Measured {
  expect(verticality.check(rule(settings))).toEqual([]);
  const found = verticality.measure(judged, rule(settings));
  if (!isMeasured(found)) throw new Error(`not measured: ${found.reason}`);
  return found;
}
const reason = (judged: JudgedAxis, settings: Settings) => {
  const found = verticality.measure(judged, rule(settings));
  return isMeasured(found) ? `value ${found.value}` : found.reason;
};

/** 1 in 80 from the top, of any bearing. */
const oneIn80 = straightPath(HEAD, ned(0.6, -0.8, 80), 20);

test.each([
  ["ratio", 0.0133333, 0.0133333],
  ["one_in", 75, 1 / 75],
  ["percent", 1.5, 0.015],
  ["mm_per_m", 3, 0.003],
])("[F2] the limit can be written as %s", (key, written, limit) => {
  const found = measured(axis(oneIn80), { numbers: { [key]: written } });
  expect(found.limit).toBeCloseTo(limit, 15);
  expect(found.value).toBeCloseTo(1 / 80, 12);
});

/** Plumb for 10 m, then 1 in 50 for 5 m, then back to plumb for 5 m. */
const kinked = pathOf(
  [0, 0, 0.1, 0.1].map((north, i) => add(HEAD, ned(north, 0, [0, 10, 15, 20][i]!))),
  [0, 10, 15, 20],
);

describe("which piece is looked at", () => {
  test("[F2] the chord from the commencing surface to the lowest station is the default", () => {
    const found = measured(axis(kinked), { numbers: { one_in: 75 } });
    expect(found.value).toBeCloseTo(0.1 / 20, 12);
    expect(found.atDownM).toBe(10);
  });

  test("[F2] the worst chord of all levels", () => {
    const found = measured(axis(kinked), { numbers: { one_in: 75 }, words: { to: "every-level" } });
    expect(found.value).toBeCloseTo(0.1 / 15, 12);
    expect(found.atDownM).toBe(5);
  });

  test("[F2] the worst piece between stations", () => {
    const found = measured(axis(kinked), { numbers: { one_in: 75 }, words: { measured: "segment" } });
    expect(found.value).toBeCloseTo(0.1 / 5, 12);
    expect(found.atDownM).toBe(5);
  });

  test("[F2] the worst piece of a stated length", () => {
    const settings = { numbers: { one_in: 75, segment_m: 10 }, words: { measured: "segment" } };
    expect(measured(axis(kinked), settings).value).toBeCloseTo(0.1 / 10, 6);
  });

  test("chords shorter than the shortest do not count", () => {
    const knocked = pathOf(
      [0, 0.02, 0.02, 0.02].map((north, i) => add(HEAD, ned(north, 0, [0, 0.5, 2, 4][i]!))),
      [0, 0.5, 2, 4],
    );
    const every = { to: "every-level" };
    expect(measured(axis(knocked), { numbers: { one_in: 75 }, words: every }).value).toBeCloseTo(0.01, 12);
    const shorter = { numbers: { one_in: 75, min_chord_m: 0.5 }, words: every };
    expect(measured(axis(knocked), shorter).value).toBeCloseTo(0.04, 12);
  });

  test("only the first metres can be asked for", () => {
    const settings = { numbers: { percent: 1, over_first_m: 10 } };
    expect(measured(axis(kinked), settings).value).toBeCloseTo(0, 12);
    expect(measured(axis(kinked, { reachesToe: false }), settings).partial).toBe(false);
    expect(reason(axis(kinked), { numbers: { percent: 1, over_first_m: 21 } })).toBe("criteria.too-short");
  });

  test("[F2] what stands out above the commencing surface does not count", () => {
    const stickUp = pathOf(
      [0.5, 0, 0.1].map((north, i) => add(HEAD, ned(north, 0, [-1, 0, 10][i]!))),
      [0, 1, 11],
    );
    expect(measured(axis(stickUp), { numbers: { one_in: 75 } }).value).toBeCloseTo(0.01, 9);
  });
});

describe("in which direction", () => {
  const wall = element({
    kind: "panel",
    section: { shape: "rectangle", lengthM: 2.8, widthM: 0.8, orientationRad: Math.PI / 2 },
  });
  // 6 mm per metre along the wall (to the east), 8 mm per metre across it (to the north)
  const leaning = axis(straightPath(HEAD, ned(0.008, 0.006, 1), 20), { element: wall });

  test.each([
    ["any", 0.01],
    ["along", 0.006],
    ["across", 0.008],
    ["each", 0.008],
  ])("[F2] component %s", (component, value) => {
    for (const measuredAs of [{}, { to: "every-level" }, { measured: "segment" }]) {
      const found = measured(leaning, { numbers: { percent: 1 }, words: { component, ...measuredAs } });
      expect(found.value).toBeCloseTo(value, 9);
    }
  });
});

describe("from the design axis", () => {
  const raked = (rakeDeg: number, bearingDeg: number) =>
    element({ rakeRad: (rakeDeg * Math.PI) / 180, rakeBearingRad: (bearingDeg * Math.PI) / 180 });
  const along = (rakeDeg: number, bearingDeg: number) => {
    const [rake, bearing] = [(rakeDeg * Math.PI) / 180, (bearingDeg * Math.PI) / 180];
    return ned(Math.sin(rake) * Math.cos(bearing), Math.sin(rake) * Math.sin(bearing), Math.cos(rake));
  };

  test("[F2] a raker on its design axis has no lean", () => {
    const judged = axis(straightPath(HEAD, along(15, 70), 20), { element: raked(15, 70) });
    expect(measured(judged, { numbers: { one_in: 25 } }).value).toBeLessThan(1e-12);
  });

  test("[F2] a raker two degrees too steep leans by the tangent of two degrees", () => {
    const judged = axis(straightPath(HEAD, along(13, 70), 20), { element: raked(15, 70) });
    expect(measured(judged, { numbers: { one_in: 25 } }).value).toBeCloseTo(
      Math.tan((2 * Math.PI) / 180),
      12,
    );
  });

  test("steps by rake: 1 in 75 plumb, 1 in 25 up to 1 in 6, 1 in 15 beyond", () => {
    const steps = [
      { up_to_rake_ratio: 0, one_in: 75 },
      { up_to_rake_ratio: 1 / 6, one_in: 25 },
      { up_to_rake_ratio: 1, one_in: 15 },
    ];
    const limit = (rakeDeg: number) =>
      measured(axis(oneIn80, { element: raked(rakeDeg, 0) }), { tables: { steps } }).limit;
    expect(limit(0)).toBeCloseTo(1 / 75, 12);
    expect(limit(5)).toBeCloseTo(1 / 25, 12);
    expect(limit(9.46)).toBeCloseTo(1 / 25, 12); // 1 in 6, as a schedule rounds it
    expect(limit(14)).toBeCloseTo(1 / 15, 12);
    expect(reason(axis(oneIn80, { element: raked(50, 0) }), { tables: { steps } })).toBe("criteria.no-step");
  });

  test("steps by length need a toe level", () => {
    const tables = {
      steps: [
        { up_to_length_m: 10, percent: 1 },
        { up_to_length_m: 100, percent: 0.5 },
      ],
    };
    expect(measured(axis(oneIn80), { tables }).limit).toBeCloseTo(0.005, 12);
    expect(reason(axis(oneIn80, { element: element({ toeDownM: undefined }) }), { tables })).toBe(
      "criteria.no-toe",
    );
  });
});

test("[F2] the chord of a circle leans by half its turn", () => {
  const judged = axis(circularPath(HEAD, 400, 2, 20));
  expect(measured(judged, { numbers: { one_in: 75 } }).value).toBeCloseTo(Math.tan(20 / 400 / 2), 12);
});

test("[D4] a run that stops short can only show a part", () => {
  expect(measured(axis(kinked, { reachesToe: false }), { numbers: { one_in: 75 } }).partial).toBe(true);
  expect(measured(axis(kinked, { reachesHead: false }), { numbers: { one_in: 75 } }).partial).toBe(true);
  expect(
    measured(axis(kinked, { gaps: [{ fromM: 10, toM: 15 }] }), { numbers: { one_in: 75 } }).partial,
  ).toBe(true);
});

test("a path that does not go down is not a lean", () => {
  const up = straightPath(add(HEAD, scale(ned(0, 0, 1), 0)), ned(1, 0, 0), 5);
  expect(reason(axis(up), { numbers: { one_in: 75 } })).toBe("criteria.not-downward");
});

test.each([
  ["no limit", {}, ["ratio"]],
  ["two limits", { numbers: { ratio: 0.01, percent: 1 } }, ["percent"]],
  ["no lean at all as 1 in 0", { numbers: { one_in: 0 } }, ["one_in"]],
  ["a piece without pieces", { numbers: { ratio: 0.01, segment_m: 2 } }, ["segment_m"]],
  [
    "chord end without chord",
    { numbers: { ratio: 0.01 }, words: { measured: "segment", to: "toe" } },
    ["to"],
  ],
  ["a step without a limit", { tables: { steps: [{ up_to_rake_ratio: 0 }] } }, ["steps[0].ratio"]],
])("a request is refused for %s", (_what, settings, expected) => {
  expect(verticality.check(rule(settings as Settings)).map(({ field }) => field)).toEqual(expected);
});

test("the rule reads as a sentence", () => {
  expect(verticality.describe(rule({ numbers: { ratio: 0.0133333 } }), "en")).toBe(
    "1 in 75 from the design axis, chord from the commencing surface to the lowest station",
  );
  expect(verticality.describe(rule({ numbers: { percent: 1 }, words: { measured: "segment" } }), "de")).toBe(
    "1 zu 100 gegen die Sollachse, schlechtester Abschnitt zwischen Messpunkten",
  );
});
