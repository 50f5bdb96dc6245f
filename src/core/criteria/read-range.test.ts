import { describe, expect, test } from "vitest";
import { axis, element, straightPath } from "../../../test/fixtures/judged-axis.ts";
import { ned } from "../geometry/vector.ts";
import type { JudgedAxis } from "./criterion.ts";
import { depthForLevel, isPartlyRead, readRange, restsOnUnread, stationDepths } from "./read-range.ts";

/** Head at down -10, toe at 10; stations every metre from 1 m above the head to 1 m above the toe. */
const path = straightPath(ned(1000, 2000, -11), ned(0, 0, 1), 20);
const judged = (changes: Partial<JudgedAxis> = {}) => axis(path, changes);

describe("the stretch that was read", () => {
  test.each([
    ["starts at the commencing surface where the tube stands out", {}, 1, 20],
    ["starts at the first reading below it", { readFromM: 1.5 }, 1.5, 20],
    ["ends at the last reading", { readToM: 12 }, 1, 12],
    ["is not longer than the path", { readFromM: -5, readToM: 50 }, 1, 20],
  ])("[D4] %s", (_what, changes, fromM, toM) => {
    expect(readRange(judged(changes))).toEqual({ fromM, toM });
  });

  test.each([
    ["ends above the commencing surface", { readToM: 0.5 }],
    ["lies below the path", { readFromM: 30, readToM: 40 }],
    ["has no start", { readFromM: Number.NaN }],
    ["has no end", { readToM: Number.NaN }],
    ["is for an element without a head", { element: element({ head: ned(0, 0, Number.NaN) }) }],
  ])("is nothing where it %s", (_what, changes) => {
    expect(readRange(judged(changes))).toEqual({ fromM: Number.NaN, toM: Number.NaN });
  });
});

describe("the depth that stands for a level", () => {
  const late = { readFromM: 2 };
  test.each([
    ["between stations", {}, -3.5, 7.5],
    ["the head, with stations above it", {}, -10, 1],
    ["the head, where the first reading counts as reaching it", late, -10, 2],
    ["the head, where it does not", { ...late, reachesHead: false }, -10, Number.NaN],
    ["above the head", late, -10.5, Number.NaN],
    ["above the head, though a tube stands out there", {}, -10.5, Number.NaN],
    ["the toe, where the last reading counts as reaching it", {}, 10, 20],
    ["the toe, where it does not", { reachesToe: false }, 10, Number.NaN],
    ["below the toe", {}, 10.5, Number.NaN],
    [
      "below the last reading, where no toe is given",
      { element: element({ toeDownM: undefined }) },
      9.5,
      Number.NaN,
    ],
    ["inside a gap", { gaps: [{ fromM: 5, toM: 9 }] }, -4, Number.NaN],
    ["at the end of a gap", { gaps: [{ fromM: 5, toM: 9 }] }, -2, 9],
    ["no level", {}, Number.NaN, Number.NaN],
  ])("[D4] %s", (_what, changes, downM, depthM) => {
    const found = depthForLevel(judged(changes), downM);
    if (Number.isNaN(depthM)) expect(found).toBeNaN();
    else expect(found).toBeCloseTo(depthM, 9);
  });
});

test("[D4] what stays unknown", () => {
  const gap = { gaps: [{ fromM: 5, toM: 9 }] };
  expect(isPartlyRead(judged())).toBe(false);
  for (const changes of [{ reachesHead: false }, { reachesToe: false }, gap])
    expect(isPartlyRead(judged(changes))).toBe(true);
  expect(restsOnUnread(judged({ reachesToe: false }), 4)).toBe(false);
  expect(restsOnUnread(judged({ reachesHead: false }), 4)).toBe(true);
  expect(restsOnUnread(judged(gap), 4)).toBe(false);
  expect(restsOnUnread(judged(gap), 5)).toBe(false);
  expect(restsOnUnread(judged(gap), 9)).toBe(true);
});

test("the axis is looked at in its stations and at both ends", () => {
  expect(stationDepths(path, { fromM: 1.5, toM: 4 })).toEqual([1.5, 2, 3, 4]);
});
