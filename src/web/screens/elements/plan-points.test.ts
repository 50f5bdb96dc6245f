import { expect, test } from "vitest";
import { planPoints } from "./plan-points.ts";

test("north is up, east is to the right, and both sides have one scale", () => {
  const { points } = planPoints(
    [
      { eastM: 0, northM: 0 },
      { eastM: 10, northM: 0 },
      { eastM: 0, northM: 10 },
    ],
    640,
    260,
  );
  const [origin, east, north] = points;
  expect(east!.x - origin!.x).toBeCloseTo(origin!.y - north!.y, 9);
  expect(east!.x).toBeGreaterThan(origin!.x);
  expect(north!.y).toBeLessThan(origin!.y);
});

test("the scale bar is as long as it says", () => {
  const { points, bar } = planPoints(
    [
      { eastM: 500_000, northM: 0 },
      { eastM: 500_100, northM: 0 },
    ],
    640,
    260,
  );
  expect(bar.length / bar.metres).toBeCloseTo((points[1]!.x - points[0]!.x) / 100, 9);
  expect([10, 20]).toContain(bar.metres);
});

test("one place, or none, has a plan too", () => {
  expect(planPoints([{ eastM: 5, northM: 6 }], 100, 100).points).toEqual([{ x: 50, y: 50 }]);
  expect(planPoints([], 100, 100).points).toEqual([]);
});
