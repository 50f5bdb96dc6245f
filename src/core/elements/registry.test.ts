import { describe, expect, test } from "vitest";
import type { DesignElement, Section } from "./element.ts";
import { elementKind, elementKinds } from "./registry.ts";

const element = (kind: string, changes: Partial<DesignElement>): DesignElement => ({
  id: "E1",
  kind,
  section: undefined,
  head: { north: 0, east: 0, down: 0 },
  cutoffDownM: undefined,
  toeDownM: undefined,
  rakeRad: 0,
  rakeBearingRad: undefined,
  group: undefined,
  sequence: undefined,
  role: undefined,
  loadKn: undefined,
  place: { file: "elements.csv", line: 2 },
  ...changes,
});

test("the kinds of the job folder are all there, once each", () => {
  expect(elementKinds.map((kind) => kind.id)).toEqual([
    "bored-pile",
    "panel",
    "barrette",
    "micropile",
    "anchor",
    "freeze-hole",
    "grout-hole",
    "borehole",
    "access-tube",
  ]);
  expect(elementKind("bored-pile")?.text.en.plural).toBe("bored piles");
  expect(elementKind("tower")).toBeUndefined();
});

describe.each(elementKinds.map((kind) => [kind.id, kind] as const))("%s", (id, kind) => {
  test("is found by an id that can stand in a file", () => {
    expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(elementKind(id)).toBe(kind);
  });

  test("has names in both languages", () => {
    for (const text of [kind.text.en, kind.text.de])
      for (const name of [text.name, text.plural]) expect(name).toMatch(/\S{2}/);
    expect(kind.text.en.name).not.toBe(kind.text.de.name);
  });

  test("allows at least one section", () => {
    expect(kind.sections.length).toBeGreaterThan(0);
    expect(new Set(kind.sections).size).toBe(kind.sections.length);
  });

  test("[F1] along is the rake bearing of a raked element, whatever its section", () => {
    const wall: Section = { shape: "rectangle", lengthM: 2.8, widthM: 0.8, orientationRad: 0.5 };
    for (const section of [undefined, wall])
      expect(kind.alongBearingRad(element(id, { section, rakeRad: 0.1, rakeBearingRad: 2 }))).toBe(2);
  });

  test("[F1] along a plumb element is the wall, else grid north", () => {
    const section: Section = { shape: "rectangle", lengthM: 2.8, widthM: 0.8, orientationRad: 0.5 };
    expect(kind.alongBearingRad(element(id, { section }))).toBe(0.5);
    expect(kind.alongBearingRad(element(id, { section: { shape: "round", diameterM: 1 } }))).toBe(0);
    expect(kind.alongBearingRad(element(id, {}))).toBe(0);
  });

  test("a lean without a bearing has no along", () => {
    expect(kind.alongBearingRad(element(id, { rakeRad: 0.1 }))).toBeNaN();
  });
});
