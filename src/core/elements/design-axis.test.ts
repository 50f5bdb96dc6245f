import { expect, test } from "vitest";
import { add, dot, type NorthEastDown, ned, norm, scale, subtract } from "../geometry/vector.ts";
import { designAxes, designDirection, designLengthM, driftFromTop, offsetFromDesign } from "./design-axis.ts";
import type { DesignElement } from "./element.ts";

const pile: DesignElement = {
  id: "P1",
  kind: "bored-pile",
  section: { shape: "round", diameterM: 1 },
  head: ned(100, 200, -5),
  cutoffDownM: undefined,
  toeDownM: undefined,
  rakeRad: 0,
  rakeBearingRad: undefined,
  group: undefined,
  sequence: undefined,
  role: undefined,
  loadKn: undefined,
  place: { file: "elements.csv", line: 2 },
};
const raker = (rakeDeg: number, bearingDeg: number): DesignElement => ({
  ...pile,
  rakeRad: (rakeDeg * Math.PI) / 180,
  rakeBearingRad: (bearingDeg * Math.PI) / 180,
});
const closeTo = (actual: NorthEastDown, expected: NorthEastDown) =>
  expect(norm(subtract(actual, expected))).toBeLessThan(1e-12);

test("a plumb element points straight down, even where a bearing is given", () => {
  expect(designDirection(pile)).toEqual(ned(0, 0, 1));
  expect(designDirection({ ...pile, rakeBearingRad: 1 })).toEqual(ned(0, 0, 1));
});

test("a raked element points to its bearing: 1 in 4 to the east", () => {
  const direction = designDirection({ ...pile, rakeRad: Math.atan(1 / 4), rakeBearingRad: Math.PI / 2 });
  closeTo(scale(direction, Math.sqrt(17)), ned(0, 1, 4));
});

test("a lean without a bearing gives NaN, never a direction", () => {
  const unknown = { ...pile, rakeRad: 0.1 };
  expect(designDirection(unknown).north).toBeNaN();
  expect(offsetFromDesign(unknown, pile.head).offset).toBeNaN();
});

test("[F1] a plumb element is compared horizontally at equal level", () => {
  const offset = offsetFromDesign(pile, ned(100.03, 199.96, 12));
  closeTo(offset, ned(0.03, -0.04, 0));
  expect(offset.offset).toBeCloseTo(0.05, 12);
  expect(offset.along).toBeCloseTo(0.03, 12);
  expect(offset.across).toBeCloseTo(-0.04, 12);
});

test("[F1] across is to the right of along: in a wall that runs east, across is south", () => {
  const wall: DesignElement = {
    ...pile,
    kind: "panel",
    section: { shape: "rectangle", lengthM: 2.8, widthM: 0.8, orientationRad: Math.PI / 2 },
  };
  const offset = offsetFromDesign(wall, ned(99.99, 200.02, 3));
  expect(offset.along).toBeCloseTo(0.02, 12);
  expect(offset.across).toBeCloseTo(0.01, 12);
});

test("[F1] a raker that is too steep has a negative along, one to the right of it a positive across", () => {
  const element = raker(15, 40);
  const reached = designDirection(raker(14, 40));
  const tooSteep = offsetFromDesign(element, add(element.head, scale(reached, 20)));
  expect(tooSteep.along).toBeCloseTo(-20 * Math.sin(Math.PI / 180), 12);
  expect(tooSteep.across).toBeCloseTo(0, 12);
  const right = offsetFromDesign(element, add(element.head, scale(designDirection(raker(15, 42)), 20)));
  expect(right.across).toBeGreaterThan(0.1);
});

test("[F1] the offset is square to the axis and made of along and across, for any element and point", () => {
  let checked = 0;
  for (let rake = 0; rake <= 85; rake += 17)
    for (let bearing = -180; bearing <= 360; bearing += 27)
      for (const point of [ned(101, 203, 9), ned(60, 190, 40), ned(100, 200, -5), ned(100.2, 199, -8)]) {
        const element = raker(rake, bearing);
        const axes = designAxes(element);
        const offset = offsetFromDesign(element, point);
        expect(Math.abs(dot(offset, axes.direction))).toBeLessThan(1e-12);
        expect(Math.abs(axes.across.down)).toBeLessThan(1e-15);
        expect(offset.along ** 2 + offset.across ** 2).toBeCloseTo(offset.offset ** 2, 10);
        expect(norm(offset)).toBeCloseTo(offset.offset, 10);
        // what is left of the way from the head runs along the axis
        const foot = subtract(subtract(point, element.head), offset);
        expect(norm(subtract(foot, scale(axes.direction, dot(foot, axes.direction))))).toBeLessThan(1e-10);
        checked++;
      }
  expect(checked).toBeGreaterThan(400);
});

test("a bearing of along can be asked for", () => {
  const axes = designAxes(pile, Math.PI / 6);
  closeTo(axes.along, ned(Math.cos(Math.PI / 6), 0.5, 0));
  closeTo(axes.across, ned(-0.5, Math.cos(Math.PI / 6), 0));
});

test("[F1] drift is counted from the as-built top", () => {
  const drift = driftFromTop(pile, ned(100.05, 200, -5), ned(100.05, 200.1, 20));
  closeTo(drift, ned(0, 0.1, 0));
});

test("design length runs along the axis", () => {
  expect(designLengthM(pile)).toBeUndefined();
  expect(designLengthM({ ...pile, toeDownM: 15 })).toBe(20);
  expect(designLengthM({ ...raker(60, 0), toeDownM: 5 })).toBeCloseTo(20, 12);
});
