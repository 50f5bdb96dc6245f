import { describe, expect, test } from "vitest";
import {
  axis,
  circularPath,
  element,
  instrument,
  pathOf,
  request,
  straightPath,
  tube,
} from "../../../test/fixtures/judged-axis.ts";
import type { DesignElement } from "../elements/element.ts";
import { type NorthEastDown, ned } from "../geometry/vector.ts";
import type { HolePath } from "../path/hole-path.ts";
import type { CriterionRequest, JudgedAxis } from "./criterion.ts";
import { decide, isMeasured } from "./decide.ts";
import { criteria, criterion } from "./registry.ts";

type Settings = Parameters<typeof request>[1];

/** Rules that a job could hold, for every kind of criterion there is; a kind without one fails. */
const SAMPLES: Readonly<Record<string, readonly Settings[]>> = {
  "plan-position": [
    { numbers: { limit_m: 0.075 } },
    { numbers: { limit_m: 0.05, growth_m_per_m: 0.01 }, words: { at: "every-level" } },
    { numbers: { limit_m: 0.05, growth_m_per_m: 0.01 }, words: { growth_from: "cutoff", at: "toe" } },
    { numbers: { limit_m: 0.075, limit_per_diameter: 0.1 }, words: { combine: "max", at: "head" } },
    {
      tables: { steps: [{ up_to_diameter_m: 2, per_diameter: 0.1, at_most_m: 0.15, growth_m_per_m: 0.01 }] },
    },
    { numbers: { limit_along_m: 0.1, limit_across_m: 0.05 }, words: { from: "as-built-top", at: "toe" } },
    { numbers: { limit_m: 0.05, at_level_m: 2 }, words: { from: "own-line" } },
  ],
  verticality: [
    { numbers: { ratio: 0.0133333 } },
    { numbers: { one_in: 75 }, words: { to: "every-level" } },
    { numbers: { percent: 1, segment_m: 2.5 }, words: { measured: "segment" } },
    { numbers: { mm_per_m: 3 }, words: { measured: "segment", component: "any" } },
    { numbers: { percent: 1, over_first_m: 5 } },
    {
      tables: {
        steps: [
          { up_to_rake_ratio: 0, one_in: 75 },
          { up_to_rake_ratio: 1, one_in: 25 },
        ],
      },
    },
  ],
  rake: [
    { numbers: { rake_limit_deg: 1, bearing_limit_deg: 3 } },
    { tables: { steps: [{ up_to_rake_ratio: 1, one_in: 25 }] } },
  ],
  curvature: [
    { numbers: { min_bend_radius_m: 200 } },
    { numbers: { dogleg_limit_deg: 1, dogleg_length_m: 3 } },
  ],
  "tube-passage": [{ numbers: {} }, { numbers: { probe_length_m: 1, probe_diameter_mm: 40 } }],
};

const HEAD = ned(1000, 2000, -10);
const RAKED = element({ rakeRad: 0.2, rakeBearingRad: 2.2, cutoffDownM: -7, toeDownM: 9 });
const WALL = element({
  kind: "panel",
  section: { shape: "rectangle", lengthM: 2.8, widthM: 0.8, orientationRad: 0.6 },
  toeDownM: 9.9,
});

function judged(path: HolePath, design: DesignElement): JudgedAxis {
  return axis(path, { element: design, tubes: [{ tube: tube(), path }], instrument: instrument() });
}
const near = (design: DesignElement): HolePath => {
  const lean = { north: 0.012, east: -0.007 };
  const direction = ned(
    Math.sin(design.rakeRad) * Math.cos(design.rakeBearingRad ?? 0) + lean.north,
    Math.sin(design.rakeRad) * Math.sin(design.rakeBearingRad ?? 0) + lean.east,
    Math.cos(design.rakeRad),
  );
  return straightPath(ned(HEAD.north + 0.02, HEAD.east + 0.03, HEAD.down), direction, 20);
};
const CASES = [
  ["a raked pile", judged(near(RAKED), RAKED)],
  ["a plumb wall element", judged(near(WALL), WALL)],
  ["a bent pile", judged(circularPath(HEAD, 300, 1.1, 20), element())],
] as const;

const copyOf = (path: HolePath): HolePath => ({
  count: path.count,
  depthM: path.depthM.slice(),
  northM: path.northM.slice(),
  eastM: path.eastM.slice(),
  downM: path.downM.slice(),
  tangentNorth: path.tangentNorth.slice(),
  tangentEast: path.tangentEast.slice(),
  tangentDown: path.tangentDown.slice(),
});

function moved(path: HolePath, turn: (v: NorthEastDown) => NorthEastDown, shift: NorthEastDown): HolePath {
  const indices = Array.from({ length: path.count }, (_, i) => i);
  const at = (i: number) => turn(ned(path.northM[i]!, path.eastM[i]!, path.downM[i]!));
  return pathOf(
    indices.map((i) => {
      const point = at(i);
      return ned(point.north + shift.north, point.east + shift.east, point.down + shift.down);
    }),
    [...path.depthM],
    indices.map((i) => turn(ned(path.tangentNorth[i]!, path.tangentEast[i]!, path.tangentDown[i]!))),
  );
}

/** The whole job turned about the vertical and moved, its levels kept. */
function movedSite(axis: JudgedAxis, angleRad: number, shift: NorthEastDown): JudgedAxis {
  const turn = ({ north, east, down }: NorthEastDown): NorthEastDown =>
    ned(
      north * Math.cos(angleRad) - east * Math.sin(angleRad),
      north * Math.sin(angleRad) + east * Math.cos(angleRad),
      down,
    );
  const { element: design, path } = axis;
  const head = turn(design.head);
  const { section, rakeBearingRad } = design;
  const movedDesign: DesignElement = {
    ...design,
    head: ned(head.north + shift.north, head.east + shift.east, head.down + shift.down),
    rakeBearingRad: rakeBearingRad === undefined ? undefined : rakeBearingRad + angleRad,
    section:
      section?.shape === "rectangle"
        ? { ...section, orientationRad: section.orientationRad + angleRad }
        : section,
  };
  const movedPath = moved(path, turn, shift);
  return {
    ...axis,
    element: movedDesign,
    path: movedPath,
    tubes: axis.tubes.map((each) => ({ ...each, path: movedPath })),
  };
}

test("ids are unique and found", () => {
  expect(new Set(criteria.map(({ id }) => id)).size).toBe(criteria.length);
  expect(criterion("verticality")?.id).toBe("verticality");
  expect(criterion("colour")).toBeUndefined();
});

describe.each(criteria.map((kind) => [kind.id, kind] as const))("%s", (id, kind) => {
  const samples = (SAMPLES[id] ?? []).map((settings) => request(id, settings));
  const ends = (end: "min" | "max"): CriterionRequest =>
    request(id, {
      numbers: Object.fromEntries(kind.parameters.map((parameter) => [parameter.key, parameter[end]])),
    });
  const oneAtItsEnd = (end: "min" | "max"): CriterionRequest[] =>
    samples.flatMap((sample) =>
      kind.parameters
        .filter(({ key }) => sample.numbers[key] !== undefined)
        .map((parameter) => ({ ...sample, numbers: { ...sample.numbers, [parameter.key]: parameter[end] } })),
    );
  const requests = [...samples, ends("min"), ends("max"), ...oneAtItsEnd("min"), ...oneAtItsEnd("max")];
  const verdict = (judgedAxis: JudgedAxis, asked: CriterionRequest) =>
    decide(kind.measure(judgedAxis, asked), undefined, { rule: "simple", probability: 0.95 }).verdict;

  test("declares revision, source and both languages", () => {
    expect(samples.length).toBeGreaterThan(0);
    expect(kind.revision).toBeGreaterThanOrEqual(1);
    expect(kind.source).toMatch(/\S/);
    const texts = [
      ...[...kind.parameters, ...kind.choices, ...kind.tables].map(({ text }) => text),
      ...kind.tables.flatMap(({ columns }) => columns.map(({ text }) => text)),
    ];
    for (const text of texts) expect(text.en !== "" && text.de !== "" && text.en !== text.de).toBe(true);
    for (const { title, explanation } of [kind.text.en, kind.text.de]) {
      expect(title).toMatch(/\S/);
      expect(explanation).toMatch(/\.$/);
    }
  });

  test("parameters have keys that can stand in a file and a range that is one", () => {
    const keys = [...kind.parameters, ...kind.choices, ...kind.tables].map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const key of keys) expect(key).toMatch(/^[a-z]+(_[a-z]+)*$/);
    for (const { min, max } of kind.parameters) expect(min).toBeLessThan(max);
    for (const { values } of kind.choices) expect(values.length).toBeGreaterThan(1);
  });

  test("accepts its samples, refuses a key and a word that nobody knows", () => {
    for (const sample of samples) {
      expect(kind.check(sample)).toEqual([]);
      expect(kind.check({ ...sample, numbers: { ...sample.numbers, nothing_m: 1 } })).not.toEqual([]);
      expect(kind.check({ ...sample, words: { ...sample.words, nothing: "x" } })).not.toEqual([]);
      for (const key of Object.keys(sample.numbers))
        expect(kind.check({ ...sample, numbers: { ...sample.numbers, [key]: Number.NaN } })).not.toEqual([]);
    }
  });

  test("describes every rule in both languages, without code words and without missing numbers", () => {
    for (const asked of samples)
      for (const language of ["en", "de"] as const) {
        const sentence = kind.describe(asked, language);
        expect(sentence).toMatch(/\S/);
        expect(sentence).not.toMatch(/_|NaN|undefined|Infinity/);
      }
  });

  test("an empty path is not judged", () => {
    const empty = judged(pathOf([], []), element());
    for (const asked of requests) expect(verdict(empty, asked)).toBe("not-judged");
  });

  test("a path with one number missing anywhere is not judged", () => {
    for (const [, whole] of CASES)
      for (const column of [
        "depthM",
        "northM",
        "eastM",
        "downM",
        "tangentNorth",
        "tangentEast",
        "tangentDown",
      ] as const)
        for (const station of [0, 7, whole.path.count - 1]) {
          const path = copyOf(whole.path);
          path[column][station] = Number.NaN;
          for (const asked of requests)
            expect(verdict(judged(path, whole.element), asked), `${column}[${station}]`).toBe("not-judged");
        }
  });

  test("depths that do not rise are not judged", () => {
    for (const [, whole] of CASES) {
      const path = copyOf(whole.path);
      path.depthM[7] = path.depthM[6]!;
      for (const asked of requests) expect(verdict(judged(path, whole.element), asked)).toBe("not-judged");
    }
  });

  test("a design with a number missing is not judged", () => {
    for (const [, whole] of CASES)
      for (const key of ["north", "east", "down"] as const) {
        const head = { ...whole.element.head, [key]: Number.NaN };
        for (const asked of requests)
          expect(verdict(judged(whole.path, { ...whole.element, head }), asked)).toBe("not-judged");
      }
  });

  test("a read range that is missing or empty is not judged", () => {
    for (const [, whole] of CASES)
      for (const range of [
        { readFromM: Number.NaN },
        { readToM: Number.NaN },
        { readFromM: 5, readToM: 5 },
        { readFromM: 9, readToM: 5 },
      ])
        for (const asked of requests) expect(verdict({ ...whole, ...range }, asked)).toBe("not-judged");
  });

  test("whatever is measured is a number against a number", () => {
    let measured = 0;
    for (const [, whole] of CASES)
      for (const asked of requests) {
        const found = kind.measure(whole, asked);
        if (!isMeasured(found)) continue;
        measured++;
        expect(Number.isFinite(found.value) && Number.isFinite(found.limit)).toBe(true);
        expect(found.value).toBeGreaterThanOrEqual(0);
      }
    expect(measured).toBeGreaterThan(0);
  });

  test("turning the site, or moving an element with its path, changes nothing", () => {
    let compared = 0;
    for (const [name, whole] of CASES)
      for (const asked of samples) {
        const before = kind.measure(whole, asked);
        for (const [angle, shift] of [
          [0, ned(371, -1203, 0)],
          [0.83, ned(0, 0, 0)],
          [-2.4, ned(50, 60, 0)],
        ] as const) {
          const after = kind.measure(movedSite(whole, angle, shift), asked);
          // the direction "along" of a round plumb element is grid north, which does not turn with the site
          const along = name === "a bent pile" && asked.numbers["limit_along_m"] !== undefined && angle !== 0;
          if (along) continue;
          expect(isMeasured(after)).toBe(isMeasured(before));
          if (!isMeasured(after) || !isMeasured(before)) continue;
          expect(after.value).toBeCloseTo(before.value, 8);
          expect(after.limit).toBeCloseTo(before.limit, 12);
          compared++;
        }
      }
    expect(compared).toBeGreaterThan(2);
  });

  test("[D4] a part of the length never shows within", () => {
    for (const [, whole] of CASES)
      for (const asked of samples) {
        const part = { ...whole, reachesHead: false, reachesToe: false };
        expect(["outside", "not-judged"]).toContain(verdict(part, asked));
      }
  });

  test("the allowance for drawings is a length, or NaN where there is none", () => {
    for (const asked of samples)
      for (const down of [-10, -7, 0, 9]) {
        const allowance = kind.allowanceM?.(RAKED, down, asked) ?? Number.NaN;
        expect(Number.isNaN(allowance) || allowance >= 0).toBe(true);
      }
  });
});
