import { expect, test } from "vitest";
import { axis, circularPath, request, straightPath } from "../../../test/fixtures/judged-axis.ts";
import { ned } from "../geometry/vector.ts";
import type { JudgedAxis, Measured } from "./criterion.ts";
import { curvature } from "./curvature.ts";
import { isMeasured } from "./decide.ts";

type Settings = Parameters<typeof request>[1];
const HEAD = ned(1000, 2000, -10);
function measured(judged: JudgedAxis, settings: Settings): Measured {
  expect(curvature.check(request("curvature", settings))).toEqual([]);
  const found = curvature.measure(judged, request("curvature", settings));
  if (!isMeasured(found)) throw new Error(`not measured: ${found.reason}`);
  return found;
}

test.each([10, 85, 400])("a circle of radius %f m has that radius everywhere", (radius) => {
  const found = measured(axis(circularPath(HEAD, radius, 1, 10)), { numbers: { min_bend_radius_m: 200 } });
  expect(1 / found.value).toBeCloseTo(radius, 6);
  expect(found.limit).toBe(1 / 200);
});

test("a dogleg over a length is the same bend, told as a change of direction", () => {
  const settings = { numbers: { dogleg_limit_deg: 3, dogleg_length_m: 5 } };
  const found = measured(axis(circularPath(HEAD, 100, 1, 20)), settings);
  expect((found.value * 5 * 180) / Math.PI).toBeCloseTo((5 / 100) * (180 / Math.PI), 9);
  expect((found.limit * 5 * 180) / Math.PI).toBeCloseTo(3, 12);
});

test("a bend in one place counts less over a longer length", () => {
  const turned = straightPath(HEAD, ned(0, 0, 1), 20);
  turned.tangentNorth.fill(Math.sin(0.02), 10);
  turned.tangentDown.fill(Math.cos(0.02), 10);
  const found = measured(axis(turned), { numbers: { min_bend_radius_m: 40 } });
  expect(found.value).toBeCloseTo(0.02, 12);
  expect(found.atDepthM).toBe(9.5);
  const over = measured(axis(turned), { numbers: { dogleg_limit_deg: 1, dogleg_length_m: 10 } });
  expect(over.value).toBeCloseTo(0.002, 12);
});

test("with both limits the one used most is shown", () => {
  const numbers = { min_bend_radius_m: 50, dogleg_limit_deg: 1, dogleg_length_m: 5 };
  const found = measured(axis(circularPath(HEAD, 100, 1, 20)), { numbers });
  expect(found.limit).toBeCloseTo(Math.PI / 180 / 5, 12);
});

test("a straight hole has no curvature; one shorter than the length is not measured", () => {
  const straight = axis(straightPath(HEAD, ned(0, 0.1, 1), 4));
  expect(measured(straight, { numbers: { min_bend_radius_m: 200 } }).value).toBe(0);
  const numbers = { dogleg_limit_deg: 1, dogleg_length_m: 5 };
  expect(curvature.measure(straight, request("curvature", { numbers }))).toMatchObject({
    reason: "criteria.too-short",
  });
});

test("[D4] a run that stops short is a part", () => {
  const judged = axis(straightPath(HEAD, ned(0, 0, 1), 4), { reachesToe: false });
  expect(measured(judged, { numbers: { min_bend_radius_m: 200 } }).partial).toBe(true);
});

test.each([
  ["no limit", {}, ["min_bend_radius_m"]],
  ["a dogleg without its length", { numbers: { dogleg_limit_deg: 1 } }, ["dogleg_length_m"]],
  [
    "a length without its dogleg",
    { numbers: { min_bend_radius_m: 9, dogleg_length_m: 1 } },
    ["dogleg_limit_deg"],
  ],
])("a request is refused for %s", (_what, settings, expected) => {
  expect(curvature.check(request("curvature", settings as Settings)).map(({ field }) => field)).toEqual(
    expected,
  );
});

test("the rule reads as a sentence", () => {
  const numbers = { min_bend_radius_m: 200, dogleg_limit_deg: 0.4, dogleg_length_m: 3 };
  expect(curvature.describe(request("curvature", { numbers }), "en")).toBe(
    "bend radius 200 m or more between stations; change of direction 0.4° or less over 3 m",
  );
});
