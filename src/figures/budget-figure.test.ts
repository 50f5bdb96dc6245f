import { describe, expect, test } from "vitest";
import { unevenBudget, viewOf } from "../../test/figure-views.ts";
import { budgetFigure } from "./budget-figure.ts";

const words = (svg: string) => svg.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");
const drawn = words(budgetFigure(viewOf({ budget: unevenBudget })));

describe("budget", () => {
  test("[E2] shows the share of each source at both places, with the standard offset that it leaves", () => {
    expect(drawn).toContain("84.0 % · 9.2 mm 50.0 % · 4.0 mm");
    expect(drawn).toContain("16.0 % · 4.0 mm 28.1 % · 3.0 mm");
  });
  test("says each standard value in its unit, and where it comes from", () => {
    expect(drawn).toContain("Opening heading 0.30° · reference of the run");
    expect(drawn).toContain("Seating of the probe in the tube 0.020° · usual site work");
  });
  test("names evidence of the job in the language of the drawing", () => {
    const sources = unevenBudget.sources.map((entry) => ({
      ...entry,
      from: "closures of the job, 12 degrees of freedom",
    }));
    const german = budgetFigure(viewOf({ budget: { ...unevenBudget, sources }, language: "de" }));
    expect(words(german)).toContain("0,30° · Abschlüsse, 12 Freiheitsgrade");
  });
  test("says which source would halve the uncertainty, and to what value it must come", () => {
    // 0.30° times sqrt(1 - 0.75 / 0.84) = 0.098°
    expect(drawn).toContain("opening heading alone, brought from 0.30° to 0.098°");
  });
  test("says that none alone would, and which together", () => {
    expect(drawn).toContain(
      "no single source. Without the largest, opening heading, 70.7 % of it would stay; these would all have to go: opening heading; seating of the probe in the tube.",
    );
  });
  test("one bar where the toe is the worst level", () => {
    const [toe, worst] = unevenBudget.places;
    const places = [toe!, { ...worst!, atDownM: toe!.atDownM }];
    const svg = budgetFigure(viewOf({ budget: { ...unevenBudget, places } }));
    expect(words(svg)).toContain("Toe, worst, level −19.980 m");
    expect(svg.match(/data-share/g)).toHaveLength(2);
  });
  test("sources too small to matter are one row", () => {
    const small = ["tilt-noise", "depth-zero", "cross-axis"] as const;
    const places = unevenBudget.places.map((place) => ({
      ...place,
      shares: [...place.shares, ...small.map((source) => ({ source, standardM: 1e-5, share: 1e-4 }))],
    }));
    expect(words(budgetFigure(viewOf({ budget: { ...unevenBudget, places } })))).toContain("3 others");
  });
  test("says so where nothing is known", () => {
    expect(words(budgetFigure(viewOf()))).toContain("Nothing is known of the uncertainty");
  });
});
