import { expect, test } from "vitest";
import { fillColumns, nameHeadings } from "./known-headings.ts";

test("headings that mean one thing are named as ours are, in their places; cells are left alone", () => {
  const { text, headings, isTubes } = nameHeadings(
    "Pile No.;Diameter (mm);Rechtswert;load_kn\nH1;900;1,5;Pile",
  );
  expect(text).toBe("element;diameter_mm;easting_m;load_kn\nH1;900;1,5;Pile");
  expect(headings).toEqual([
    ["Pile No.", "element"],
    ["Diameter (mm)", "diameter_mm"],
    ["Rechtswert", "easting_m"],
  ]);
  expect(isTubes).toBe(false);
});

test("a size without its unit, and the letters x and y, are not guessed at", () => {
  expect(nameHeadings("Ref\tDiameter\tx\ty").text).toBe("element\tDiameter\tx\ty");
});

test("a table with tubes is known by its heading", () => {
  expect(nameHeadings("element,tube\nP1,A").isTubes).toBe(true);
});

test("missing columns are filled in every line, those that are there are not", () => {
  expect(fillColumns("element\tgroup\nH1\twest\n\nH2\t", { kind: "panel", group: "east" })).toBe(
    "element\tgroup\tkind\nH1\twest\tpanel\n\nH2\t\tpanel",
  );
});
