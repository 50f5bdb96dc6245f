import { expect, test } from "vitest";
import { axis, element, request, straightPath } from "../../../test/fixtures/judged-axis.ts";
import { ned } from "../geometry/vector.ts";
import type { JudgedAxis, Measured } from "./criterion.ts";
import { isMeasured } from "./decide.ts";
import { rake } from "./rake.ts";

type Settings = Parameters<typeof request>[1];
const radians = (degrees: number) => (degrees * Math.PI) / 180;
const direction = (rakeDeg: number, bearingDeg: number) =>
  ned(
    Math.sin(radians(rakeDeg)) * Math.cos(radians(bearingDeg)),
    Math.sin(radians(rakeDeg)) * Math.sin(radians(bearingDeg)),
    Math.cos(radians(rakeDeg)),
  );
/** Designed 15 degrees towards 350, built as given. */
const built = (rakeDeg: number, bearingDeg: number, changes: Partial<JudgedAxis> = {}): JudgedAxis =>
  axis(straightPath(ned(1000, 2000, -10), direction(rakeDeg, bearingDeg), 20), {
    element: element({ rakeRad: radians(15), rakeBearingRad: radians(350) }),
    ...changes,
  });
function measured(judged: JudgedAxis, settings: Settings): Measured {
  expect(rake.check(request("rake", settings))).toEqual([]);
  const found = rake.measure(judged, request("rake", settings));
  if (!isMeasured(found)) throw new Error(`not measured: ${found.reason}`);
  return found;
}
const reason = (judged: JudgedAxis, settings: Settings) => {
  const found = rake.measure(judged, request("rake", settings));
  return isMeasured(found) ? `value ${found.value}` : found.reason;
};

test("rake and bearing are told apart", () => {
  const numbers = { rake_limit_deg: 2 };
  expect(measured(built(16.5, 350), { numbers }).value).toBeCloseTo(1.5, 9);
  expect(measured(built(15, 340), { numbers }).value).toBeCloseTo(0, 9);
  expect(measured(built(16.5, 340), { numbers: { bearing_limit_deg: 5 } }).value).toBeCloseTo(10, 9);
});

test("a bearing is compared over north", () => {
  expect(measured(built(15, 4), { numbers: { bearing_limit_deg: 20 } }).value).toBeCloseTo(14, 9);
});

test("the one that uses most of its limit is shown", () => {
  const found = measured(built(16, 352), { numbers: { rake_limit_deg: 2, bearing_limit_deg: 3 } });
  expect(found.value).toBeCloseTo(2, 9);
  expect(found.limit).toBe(3);
  expect(found.foundOn?.code).toBe("criteria.on-bearing");
  const other = measured(built(16, 351), { numbers: { rake_limit_deg: 2, bearing_limit_deg: 3 } });
  expect(other.foundOn?.code).toBe("criteria.on-rake");
});

test("steps by rake: 1 in 25 up to 1 in 6, 1 in 15 beyond", () => {
  const tables = {
    steps: [
      { up_to_rake_ratio: 1 / 6, one_in: 25 },
      { up_to_rake_ratio: 1, one_in: 15 },
    ],
  };
  expect(measured(built(15, 350), { tables }).limit).toBeCloseTo(3.814, 3); // atan(1/15)
});

test("[D4] a run that stops short is a part", () => {
  expect(measured(built(15, 350, { reachesToe: false }), { numbers: { rake_limit_deg: 2 } }).partial).toBe(
    true,
  );
});

test("what is not measured", () => {
  const numbers = { rake_limit_deg: 2, bearing_limit_deg: 3 };
  expect(reason(built(1, 0, { element: element() }), { numbers })).toBe("criteria.plumb");
  expect(reason(built(0, 0), { numbers })).toBe("criteria.no-bearing");
  expect(reason(built(15, 350, { element: element({ rakeRad: 0.2 }) }), { numbers })).toBe(
    "criteria.design-incomplete",
  );
  expect(reason(built(15, 350), {})).toBe("criteria.no-limit");
});

test.each([
  ["no limit", {}, ["rake_limit_deg"]],
  [
    "a limit beside steps",
    { numbers: { rake_limit_deg: 1 }, tables: { steps: [{ up_to_rake_ratio: 1, one_in: 9 }] } },
    ["rake_limit_deg"],
  ],
  [
    "a row with two limits",
    { tables: { steps: [{ up_to_rake_ratio: 1, one_in: 9, percent: 2 }] } },
    ["steps[0].percent"],
  ],
])("a request is refused for %s", (_what, settings, expected) => {
  expect(rake.check(request("rake", settings as Settings)).map(({ field }) => field)).toEqual(expected);
});

test("the rule reads as a sentence", () => {
  const settings = { numbers: { rake_limit_deg: 1.5, bearing_limit_deg: 3 } };
  expect(rake.describe(request("rake", settings), "en")).toBe(
    "rake ± 1.5°; bearing ± 3°, chord from the commencing surface to the lowest station",
  );
  expect(rake.describe(request("rake", settings), "de")).toContain("Neigung ± 1,5°");
});
