import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { axis, element, straightPath } from "../../../../test/fixtures/judged-axis.ts";
import { elementKind } from "../../elements/registry.ts";
import { allowanceAt } from "../allowance.ts";
import type { CriterionRequest } from "../criterion.ts";
import { isMeasured } from "../decide.ts";
import { sourceReasons } from "../judge.ts";
import { criterion } from "../registry.ts";
import { CONFIRM_BEFORE_USE, criteriaSet, criteriaSets, expandCriteriaSet } from "./registry.ts";

const rule = (setId: string, ruleId: string): CriterionRequest => {
  const found = expandCriteriaSet(setId, {}, "criteria[0]")?.find(({ id }) => id === `${setId}.${ruleId}`);
  if (found === undefined) throw new Error(`no rule ${setId}.${ruleId}`);
  return found;
};
const pile = (diameterM: number) =>
  element({ section: { shape: "round", diameterM }, head: { north: 0, east: 0, down: 0 } });
/** Allowed offset in millimetres, for a diameter in millimetres and a depth below the commencing surface in metres. */
function allowedMm(setId: string, diameterMm: number, belowM = 0, ruleId = "plan"): number {
  const found = allowanceAt(pile(diameterMm / 1000), belowM, rule(setId, ruleId));
  if ("reason" in found) throw new Error(found.reason);
  return (found.radialM ?? Number.NaN) * 1000;
}
/** Allowed lean of an element with that rake and length. */
function allowedLean(setId: string, rakeRatio = 0, lengthM = 20): number {
  const rakeRad = Math.atan(rakeRatio);
  const top = { north: 0, east: 0, down: 0 };
  const design = element({
    head: top,
    toeDownM: lengthM * Math.cos(rakeRad),
    rakeRad,
    rakeBearingRad: rakeRatio === 0 ? undefined : 0,
  });
  const path = straightPath(top, { north: rakeRatio, east: 0, down: 1 }, Math.floor(lengthM));
  const found = criterion("verticality")!.measure(axis(path, { element: design }), rule(setId, "lean"));
  return isMeasured(found) ? found.limit : Number.NaN;
}

describe("limits as the documents have them, worked out by hand", () => {
  test.each([
    [
      "is-2911",
      [
        [300, 50],
        [450, 75],
        [600, 75],
        [750, 75],
        [1000, 100],
        [1200, 120],
      ],
    ],
    [
      "is-2911-single-pile",
      [
        [240, 40],
        [600, 50],
        [900, 100],
      ],
    ],
    [
      "en-1536",
      [
        [600, 100],
        [1000, 100],
        [1200, 120],
        [1500, 150],
        [2500, 150],
      ],
    ],
    [
      "aashto-drilled-shafts-soil",
      [
        [600, 76.2],
        [1200, 101.6],
        [1800, 152.4],
      ],
    ],
    [
      "aci-336-1",
      [
        [900, 37.5],
        [2400, 76.2],
      ],
    ],
    [
      "jgj-94-slurry-edge",
      [
        [450, 75],
        [800, 100],
      ],
    ],
    [
      "jgj-94-slurry-middle",
      [
        [400, 100],
        [800, 150],
      ],
    ],
    [
      "jgj-94-casing-edge",
      [
        [500, 70],
        [600, 100],
      ],
    ],
    [
      "jgj-94-casing-middle",
      [
        [500, 150],
        [600, 150],
      ],
    ],
    ["jgj-94-hand-dug-concrete-edge", [[1200, 50]]],
    ["jgj-94-hand-dug-steel-middle", [[1200, 200]]],
    ["en-14199", [[200, 50]]],
    ["en-12699", [[500, 100]]],
    ["morth-bridge-piles", [[1200, 75]]],
    ["everett-drilled-shafts", [[1200, 76.2]]],
  ] as const)("[F3] plan position of %s by diameter", (setId, cases) => {
    for (const [diameter, expected] of cases) expect(allowedMm(setId, diameter)).toBeCloseTo(expected, 9);
  });

  test.each([
    ["ice-sperwall-2-wall-guide-wall", 900, 3, 64.9],
    ["ice-sperwall-2-wall-no-guide-wall", 900, 3, 114.9],
    ["ice-sperwall-1996-contiguous-wall", 900, 3, 80],
    ["ice-sperwall-1996-contiguous-wall-auger", 900, 3, 65],
    ["ice-sperwall-2-bearing-piles", 900, 3, 115],
    ["jgj-94-slurry-edge", 1200, 5, 150],
    ["jgj-94-slurry-middle", 1200, 5, 200],
    ["ice-sperwall-1996-contiguous-wall", 900, 1, 60],
    ["ice-sperwall-2-wall-guide-wall", 900, 1, 38.3],
    ["ice-sperwall-2-wall-no-guide-wall", 900, 1, 88.3],
  ])("[F3] %s grows with depth: D %d mm, %d m down, %d mm", (setId, diameter, below, expected) => {
    expect(allowedMm(setId, diameter, below)).toBeCloseTo(expected, 9);
  });

  test("[F3] ACI 117M: an eighth of the diameter from top to toe", () => {
    expect(allowedMm("aci-117m-unreinforced", 800, 0, "drift")).toBeCloseTo(100, 9);
  });

  test.each([
    ["ice-sperwall-2-bearing-piles", 0, 1 / 75],
    ["ice-sperwall-2-bearing-piles", 1 / 8, 1 / 25],
    ["ice-sperwall-2-bearing-piles", 1 / 4, 1 / 15],
    ["en-1536", 0, 0.02],
    ["en-1536", 1 / 15, 0.02],
    ["en-1536", 1 / 10, 0.04],
    ["en-1536", 1 / 3, Number.NaN],
    ["en-14199", 0, 0.02],
    ["en-14199", 1 / 5, 0.04],
    ["en-14199", 1 / 3, 0.06],
    ["is-2911", 0, 0.015],
    ["is-2911", 1 / 6, 0.04],
    ["bs-8004", 0, 1 / 75],
    ["bs-8004", 1 / 10, Number.NaN],
    ["morth-bridge-piles", 0, 1 / 150],
    ["jgj-94-slurry-edge", 0, 0.01],
    ["jgj-94-hand-dug-concrete-edge", 0, 0.005],
    ["everett-drilled-shafts", 0, 1 / 48],
    ["gb-freeze-holes-alluvium", 0, 0.003],
    ["gb-freeze-holes-bedrock", 0, 0.005],
    ["en-1537", 1, 1 / 30],
    ["en-1538", 0, 0.01],
    ["dggt-ak-2-8", 0, 0.0349208],
    ["hk-gs-piles", 0, 1 / 75],
    ["hk-gs-piles", 1 / 8, 1 / 25],
  ])("[F3] lean of %s at a rake of %f", (setId, rake, expected) => {
    const found = allowedLean(setId, rake);
    if (Number.isNaN(expected)) expect(found).toBeNaN();
    else expect(found).toBeCloseTo(expected, 7);
  });

  test.each([
    ["gb-50108-grout-holes", 8, 0.01],
    ["gb-50108-grout-holes", 25, 0.005],
    ["en-12716", 15, 0.02],
    ["en-12716", 25, Number.NaN],
  ])("[F3] lean of %s at %d m", (setId, length, expected) => {
    const found = allowedLean(setId, 0, length);
    if (Number.isNaN(expected)) expect(found).toBeNaN();
    else expect(found).toBeCloseTo(expected, 12);
  });
});

test("ids are unique and found; an unknown set is told apart from an empty one", () => {
  expect(new Set(criteriaSets.map(({ id }) => id)).size).toBe(criteriaSets.length);
  expect(criteriaSet("en-1536")?.edition).toBe("2010+A1:2015");
  expect(criteriaSet("colour")).toBeUndefined();
  expect(expandCriteriaSet("colour", {}, "criteria[0]")).toBeUndefined();
});

test("what a set is for and where it stands goes into every rule", () => {
  const requests = expandCriteriaSet("en-12716", { kind: "grout-hole" }, "criteria[3]") ?? [];
  expect(requests.map(({ id }) => id)).toEqual(["en-12716.plan", "en-12716.lean"]);
  for (const { appliesTo, field, source } of requests) {
    expect(appliesTo).toEqual({ kind: "grout-hole" });
    expect(field).toBe("criteria[3]");
    expect(source).toMatchObject({ document: "EN 12716 Jet grouting", edition: "2001", status: "quoted" });
  }
});

test("the sets that are from memory are those that say so", () => {
  expect(criteriaSets.filter(({ mustConfirm }) => mustConfirm).map(({ id }) => id)).toEqual([
    "en-1536",
    "en-1538",
    "en-14199",
    "en-1537",
    "en-12699",
    "aci-336-1",
    "aashto-drilled-shafts-soil",
    "aashto-drilled-shafts-rock",
    "hk-gs-piles",
  ]);
  expect(CONFIRM_BEFORE_USE.en).toMatch(/must be confirmed before use/);
});

const page = readFileSync(new URL("../../../../docs/method/sets.md", import.meta.url), "utf8");

describe.each(criteriaSets.map((set) => [set.id, set] as const))("%s", (id, set) => {
  test("names document, edition, clause and how each number is known", () => {
    expect(id).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(set.rules.length).toBeGreaterThan(0);
    for (const text of [set.document, set.edition, set.text.en, set.text.de]) expect(text).toMatch(/\S{2}/);
    for (const { clause, status } of set.rules) {
      expect(clause).toMatch(/\S/);
      expect(["read", "quoted", "memory"]).toContain(status);
    }
    for (const kind of set.kinds) expect(elementKind(kind), kind).toBeDefined();
  });

  test("every rule of it can be used as it stands", () => {
    for (const request of expandCriteriaSet(id, {}, "criteria[0]") ?? []) {
      const kind = criterion(request.kind);
      expect(kind?.check(request)).toEqual([]);
      for (const language of ["en", "de"] as const)
        expect(kind?.describe(request, language)).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  test("a number from memory is told with every verdict", () => {
    for (const { source } of expandCriteriaSet(id, {}, "criteria[0]") ?? [])
      expect(sourceReasons(source).length).toBe(source?.status === "memory" ? 1 : 0);
    expect(set.mustConfirm).toBe(set.rules.some(({ status }) => status === "memory"));
  });

  test("stands in docs/method/sets.md with every rule as it is", () => {
    for (const request of expandCriteriaSet(id, {}, "criteria[0]") ?? []) {
      const rule = criterion(request.kind)?.describe(request, "en");
      const { edition, clause, status } = request.source ?? {};
      expect(page).toContain(`| \`${request.id}\` | ${edition} | ${clause} | ${rule} | ${status} |`);
    }
    for (const note of set.notes) expect(page).toContain(note);
  });
});
