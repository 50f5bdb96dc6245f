import { expect, test } from "vitest";
import type { ElementRow } from "../../../worker/desk.ts";
import { levelRange } from "./level-range.ts";

const element = (headLevelM: number, toeLevelM: number | undefined) =>
  ({ headLevelM, toeLevelM, cutoffLevelM: undefined }) as ElementRow;

test("the ruler reaches from the highest head to the lowest toe", () => {
  expect(levelRange([element(4, -18), element(3.5, -21)])).toMatchObject({ topM: 4, bottomM: -21 });
});

test("ticks stand at whole steps, each fifth is long, and there are never too many to read", () => {
  for (const depth of [1, 7, 25, 60, 180, 400]) {
    const range = levelRange([element(4.3, 4.3 - depth)])!;
    expect(range.ticks.length).toBeLessThanOrEqual(61);
    for (const { levelM } of range.ticks) {
      expect(levelM).toBeGreaterThanOrEqual(range.bottomM);
      expect(levelM).toBeLessThanOrEqual(range.topM);
    }
  }
  const { ticks } = levelRange([element(4, -21)])!;
  expect(ticks.filter(({ isLong }) => isLong).map(({ levelM }) => levelM % 2.5)).not.toContain(1);
});

test("no elements, no ruler; an element without a toe still has a metre to look at", () => {
  expect(levelRange([])).toBeUndefined();
  expect(levelRange([element(4, undefined)])).toMatchObject({ topM: 4, bottomM: 3 });
});
