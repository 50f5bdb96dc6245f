import { XMLValidator } from "fast-xml-parser";
import { describe, expect, test } from "vitest";
import { axisRow, bentAxis, ellipsesOf, plumbPile, unevenBudget, viewOf } from "../../test/figure-views.ts";
import { figures } from "./registry.ts";
import type { AllowanceView, ElementView, VerdictView } from "./view.ts";

const cone: AllowanceView = { label: "Verticality", allowanceM: (downM) => (downM + 4.5) / 75 };
const atCutoff: AllowanceView = {
  label: "Plan position",
  allowanceM: (downM) => (downM === -1.2 ? 0.075 : Number.NaN),
};
const never: AllowanceView = { label: "Nowhere", allowanceM: () => Number.NaN };
const zero: AllowanceView = { label: "Nothing", allowanceM: () => 0 };

const verdict = (changes: Partial<VerdictView>): VerdictView => ({
  title: "Verticality",
  verdict: "within",
  value: 0.0041,
  limit: 0.0133333,
  unit: "m/m",
  atDownM: 18.2,
  standardUncertainty: undefined,
  probabilityWithin: undefined,
  rule: "simple",
  asked: undefined,
  source: undefined,
  reasons: [],
  ...changes,
});
const verdicts = [
  verdict({}),
  verdict({ verdict: "outside", value: 0.01334 }),
  verdict({ verdict: "too-close-to-call", source: { document: "Specification", status: "memory" } }),
  verdict({
    verdict: "not-judged",
    value: Number.NaN,
    limit: Number.NaN,
    atDownM: Number.NaN,
    reasons: ["The toe was not read."],
  }),
];

const nan = axisRow(3, Number.NaN, Number.NaN);
const hostile = `<script>alert("x")</script> & 'y' ]]> \u0000\u0007\uD800 ${"long ".repeat(80)}`;
const raked = { ...plumbPile, rakeRad: 0.26, rakeBearingRad: 4.1 };
const panel = {
  ...plumbPile,
  kind: "panel",
  section: { shape: "rectangle", lengthM: 6, widthM: 1, orientationRad: 0.5 },
} as const;

const views: readonly (readonly [string, Partial<ElementView>])[] = [
  ["an ordinary hole", { allowances: [cone, atCutoff], verdicts }],
  ["a perfectly plumb hole without any offset", { axis: bentAxis.map((row) => axisRow(row.downM, 0, 0)) }],
  ["the same with allowances", { axis: bentAxis.map((row) => axisRow(row.downM, 0, 0)), allowances: [cone] }],
  ["offsets of a tenth of a micrometre", { axis: bentAxis.map((row, i) => axisRow(row.downM, 1e-7 * i, 0)) }],
  [
    "offsets of a thousand kilometres",
    { axis: bentAxis.map((row, i) => axisRow(row.downM, 4e4 * i, -9e4 * i)), allowances: [cone] },
  ],
  ["stations without a value", { axis: [nan, ...bentAxis.slice(0, 5), nan, nan, ...bentAxis.slice(9), nan] }],
  ["nothing but stations without a value", { axis: [nan, nan], allowances: [cone] }],
  ["one station", { axis: [axisRow(-4.5, 0.01, 0.02)], allowances: [cone], verdicts }],
  ["one station far below the head", { axis: [axisRow(12, 0.01, 0.02)] }],
  ["two stations at one level", { axis: [axisRow(1, 0.01, 0), axisRow(1, 0.02, 0)] }],
  ["no station", { axis: [], allowances: [cone, atCutoff] }],
  [
    "no station, no toe, no cut-off",
    { axis: [], element: { ...plumbPile, toeDownM: undefined, cutoffDownM: undefined } },
  ],
  ["no section", { element: { ...plumbPile, section: undefined }, outline: true }],
  ["allowances that say nothing or allow nothing", { allowances: [never, zero] }],
  ["more allowances than there are dashes", { allowances: Array.from({ length: 9 }, () => cone) }],
  ["an outline", { outline: true, allowances: [cone] }],
  ["the outline of a panel", { element: panel, alongBearingRad: 0.5, outline: true }],
  ["a rake", { element: raked, alongBearingRad: 4.1, allowances: [cone], outline: true }],
  [
    "a rake without a bearing",
    { element: { ...raked, rakeBearingRad: undefined }, alongBearingRad: Number.NaN, axis: [nan] },
  ],
  ["a toe above the head", { element: { ...plumbPile, toeDownM: -6 } }],
  [
    "gaps",
    { gaps: [{ fromM: 5, toM: 9 }], axis: bentAxis.filter((row) => row.depthM < 5 || row.depthM > 9) },
  ],
  [
    "a hole read every centimetre",
    { axis: Array.from({ length: 2400 }, (_, i) => axisRow(i / 100 - 4.5, i / 1e5, 0)) },
  ],
  [
    "uncertainty that can be seen",
    { ellipses: ellipsesOf(bentAxis, 0.03, 0.01, 0.6), budget: unevenBudget, allowances: [cone] },
  ],
  ["uncertainty too small to be seen", { ellipses: ellipsesOf(bentAxis, 1e-5, 1e-6), budget: unevenBudget }],
  ["uncertainty far larger than the offsets", { ellipses: ellipsesOf(bentAxis, 9, 8), allowances: [cone] }],
  ["no uncertainty at all", { ellipses: ellipsesOf(bentAxis, 0, 0) }],
  ["uncertainty that is no number", { ellipses: ellipsesOf(bentAxis, Number.NaN, Number.NaN) }],
  [
    "uncertainty with gaps and missing stations",
    {
      axis: [nan, ...bentAxis.slice(0, 12), nan, ...bentAxis.slice(14)],
      ellipses: ellipsesOf([nan, ...bentAxis], 0.02, 0.01),
      gaps: [{ fromM: 3, toM: 8 }],
      budget: { ...unevenBudget, places: [], u95M: [] },
    },
  ],
  [
    "hostile texts",
    {
      element: { ...plumbPile, id: hostile },
      jobName: hostile,
      kindName: hostile,
      allowances: [{ ...cone, label: hostile }],
      verdicts: [verdict({ verdict: "not-judged", title: hostile, reasons: [hostile] })],
    },
  ],
];

const cases = figures.flatMap((figure) =>
  views.flatMap(([name, changes]) =>
    (["en", "de"] as const).map(
      (language) => [figure.id, name, language, figure, viewOf({ ...changes, language })] as const,
    ),
  ),
);

describe.each(cases)("%s of %s, %s", (_id, _name, _language, figure, view) => {
  const svg = figure.draw(view);
  const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map((match) => match[1]!);

  test("is one well-formed SVG document without a number that is none", () => {
    expect(XMLValidator.validate(svg)).toBe(true);
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" /);
    expect(svg).not.toMatch(/="[^"]*(?:NaN|Infinity|undefined|e[+-]\d)/);
  });
  test("reads nothing from outside and runs nothing", () => {
    expect(svg).not.toMatch(/<script|<style|<image|<foreignObject|href=| on\w+=|@import/i);
  });
  test("can be told in words", () => {
    expect(svg).toMatch(/<title id="[^"]+">[^<]+<\/title><desc id="[^"]+">[^<]+<\/desc>/);
    expect(svg).toContain('role="img"');
  });
  test("its ids are its own, and what it refers to is there", () => {
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, id] of svg.matchAll(/url\(#([^)]*)\)/g)) expect(ids).toContain(id);
  });
  test("is the same when drawn again", () => {
    expect(figure.draw(view)).toBe(svg);
  });
});

test.each(figures.map((figure) => [figure.id, figure] as const))(
  "%s has a title in each language",
  (_id, figure) => {
    for (const language of ["en", "de"] as const) expect(figure.text[language].title).not.toBe("");
  },
);

test.each(figures.map((figure) => [figure.id, figure] as const))(
  "%s shows each verdict by word and shape, with the value against its limit",
  (_id, figure) => {
    const svg = figure.draw(viewOf({ verdicts }));
    for (const word of ["Within", "Outside", "Too close to call", "Not judged"])
      expect(svg).toContain(`>${word}<`);
    expect(svg).toContain("4.1 mm/m against 13.3 mm/m allowed at level −18.200 m");
    expect(svg).toContain("clause to be confirmed");
    expect(svg).toContain("The toe was not read.");
  },
);

test("two elements whose names differ in one sign get different ids, so that both can stand in one page", () => {
  const titleIds = ["P 1", "P-1", "P_1", "P1"].map((id) => {
    const svg = figures[0]!.draw(viewOf({ element: { ...plumbPile, id } }));
    return /<title id="([^"]+)"/.exec(svg)![1];
  });
  expect(new Set(titleIds).size).toBe(4);
});
