import { expect, test } from "vitest";
import type { ElementRow } from "../../../worker/desk.ts";
import { moved, scaleBarM, toScreen, wholePlan, zoomed } from "./plan-view.ts";

const size = { width: 800, height: 600 };
const view = { eastM: 100, northM: 200, pxPerM: 10 };

test("north is up and east is right", () => {
  expect(toScreen(view, size, 100, 200)).toEqual({ x: 400, y: 300 });
  expect(toScreen(view, size, 110, 200).x).toBe(500);
  expect(toScreen(view, size, 100, 210).y).toBe(200);
});

test("enlarging leaves the place under the pointer where it is", () => {
  const before = toScreen(view, size, 117, 188);
  const near = zoomed(view, size, 3, before.x, before.y);
  const after = toScreen(near, size, 117, 188);
  expect(after.x).toBeCloseTo(before.x, 9);
  expect(after.y).toBeCloseTo(before.y, 9);
  expect(near.pxPerM).toBe(30);
});

test("moving the sheet moves every place with it", () => {
  const before = toScreen(view, size, 90, 210);
  const after = toScreen(moved(view, 25, -40), size, 90, 210);
  expect(after.x - before.x).toBeCloseTo(25, 9);
  expect(after.y - before.y).toBeCloseTo(-40, 9);
});

test("the whole plan has every element on the screen, also a job of one", () => {
  const element = (eastM: number, northM: number) =>
    ({ eastM, northM, section: { shape: "round", diameterM: 1 } }) as ElementRow;
  for (const elements of [
    [element(5, 5)],
    [element(0, 0), element(400, 20)],
    [element(0, 0), element(1, 900)],
  ]) {
    const whole = wholePlan(elements, size);
    for (const { eastM, northM } of elements) {
      const { x, y } = toScreen(whole, size, eastM, northM);
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(size.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(size.height);
    }
  }
});

test("the scale bar is a round length that fits", () => {
  expect(scaleBarM(10, 120)).toBe(10);
  expect(scaleBarM(10, 60)).toBe(5);
  expect(scaleBarM(30, 100)).toBe(2);
  expect(scaleBarM(1000, 120)).toBeCloseTo(0.1, 12);
});
