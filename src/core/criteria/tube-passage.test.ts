import { describe, expect, test } from "vitest";
import {
  axis,
  circularPath,
  instrument,
  pathOf,
  request,
  straightPath,
  tube,
} from "../../../test/fixtures/judged-axis.ts";
import { ned } from "../geometry/vector.ts";
import type { HolePath } from "../path/hole-path.ts";
import type { JudgedAxis, Measured } from "./criterion.ts";
import { isMeasured } from "./decide.ts";
import { tubePassage } from "./tube-passage.ts";

type Settings = Parameters<typeof request>[1];
const HEAD = ned(5_700_000, 400_000, -10);
const straight = straightPath(HEAD, ned(0.02, -0.05, 1), 10, 0.5);

const withTubes = (paths: readonly HolePath[], changes: Partial<JudgedAxis> = {}): JudgedAxis =>
  axis(straight, {
    tubes: paths.map((path, i) => ({ tube: tube({ id: "ABCD"[i]!, innerDiameterM: 0.05 }), path })),
    instrument: instrument(),
    ...changes,
  });
function measured(judged: JudgedAxis, settings: Settings = {}): Measured {
  expect(tubePassage.check(request("tube-passage", settings))).toEqual([]);
  const found = tubePassage.measure(judged, request("tube-passage", settings));
  if (!isMeasured(found)) throw new Error(`not measured: ${found.reason}`);
  return found;
}
const reason = (judged: JudgedAxis, settings: Settings = {}) => {
  const found = tubePassage.measure(judged, request("tube-passage", settings));
  return isMeasured(found) ? `value ${found.value}` : found.reason;
};

describe("smallest bend radius l^2 / (8 (b - d))", () => {
  test.each([
    [0.6, 0.012, 3.75],
    [1.0, 0.006, 20.833],
  ])("length %f m, play %f m: %f m", (lengthM, play, radius) => {
    const numbers = {
      probe_length_m: lengthM,
      probe_diameter_mm: 40,
      tube_inner_diameter_mm: 40 + play * 1000,
    };
    const tubes = (r: number) => {
      const path = circularPath(HEAD, r, 0.7, 3, 0.25);
      return axis(path, { tubes: [{ tube: tube({ innerDiameterM: undefined }), path }] });
    };
    // the formula leaves out terms of fourth order, 0.2 % at these radii
    const passing = measured(tubes(radius * 1.005), { numbers });
    expect(passing.value).toBeLessThan(passing.limit);
    const stuck = measured(tubes(radius * 0.995), { numbers });
    expect(stuck.value).toBeGreaterThan(stuck.limit);
    expect(stuck.limit).toBeCloseTo(play, 12);
  });

  test("on a circle the room is the rise over the chord, R (1 - cos(l / 2R))", () => {
    const found = measured(withTubes([circularPath(HEAD, 8, 2, 6, 0.5)]));
    expect(found.value).toBeCloseTo(8 * (1 - Math.cos(0.6 / 16)), 6);
  });
});

test("a straight tube takes no room, however it leans", () => {
  expect(measured(withTubes([straight])).value).toBeLessThan(1e-7);
  expect(measured(withTubes([straight])).limit).toBeCloseTo(0.012, 12);
});

test("the tightest tube and its tightest place are named", () => {
  const bent = straightPath(HEAD, ned(0, 0, 1), 10, 0.5);
  const kink = pathOf(
    Array.from({ length: 21 }, (_, i) =>
      ned(HEAD.north + Math.max(0, i * 0.5 - 6) * 0.05, HEAD.east, HEAD.down + i * 0.5),
    ),
    Array.from({ length: 21 }, (_, i) => i * 0.5),
    Array.from({ length: 21 }, (_, i) =>
      i * 0.5 > 6 ? ned(Math.sin(0.05), 0, Math.cos(0.05)) : ned(0, 0, 1),
    ),
  );
  const found = measured(withTubes([bent, kink]));
  expect(found.foundOn).toEqual({ code: "criteria.on-tube", values: { tube: "B" } });
  expect(found.atDepthM).toBeGreaterThan(5.9);
  expect(found.atDepthM).toBeLessThan(6.6);
});

test("a helix takes the width of its coil", () => {
  const [radius, pitch, step] = [0.01, 0.6, 0.01];
  const turn = (2 * Math.PI) / pitch;
  const length = Math.hypot(1, radius * turn);
  const count = 201;
  const angle = (i: number) => i * step * turn;
  const helix = pathOf(
    Array.from({ length: count }, (_, i) =>
      ned(
        HEAD.north + radius * Math.cos(angle(i)),
        HEAD.east + radius * Math.sin(angle(i)),
        HEAD.down + i * step,
      ),
    ),
    Array.from({ length: count }, (_, i) => i * step * length),
    Array.from({ length: count }, (_, i) =>
      ned(
        (-radius * turn * Math.sin(angle(i))) / length,
        (radius * turn * Math.cos(angle(i))) / length,
        1 / length,
      ),
    ),
  );
  const found = measured(withTubes([helix]));
  expect(found.value).toBeGreaterThan(0.0185);
  expect(found.value).toBeLessThan(0.0201);
});

describe("what is not known", () => {
  test.each([
    ["no tube", withTubes([]), "criteria.no-tube"],
    [
      "no probe length",
      withTubes([straight], { instrument: instrument({ lengthM: undefined }) }),
      "criteria.no-probe-length",
    ],
    [
      "no probe diameter",
      withTubes([straight], { instrument: instrument({ outerDiameterM: undefined }) }),
      "criteria.no-probe-diameter",
    ],
    ["no instrument", withTubes([straight], { instrument: undefined }), "criteria.no-probe-length"],
    [
      "no inner diameter",
      axis(straight, {
        tubes: [{ tube: tube({ innerDiameterM: undefined }), path: straight }],
        instrument: instrument(),
      }),
      "criteria.no-inner-diameter",
    ],
    [
      "a tube shorter than the probe",
      withTubes([straightPath(HEAD, ned(0, 0, 1), 0.5, 0.25)]),
      "criteria.too-short",
    ],
  ])("%s", (_what, judged, expected) => {
    expect(reason(judged)).toBe(expected);
  });

  test("one tube that cannot be measured leaves a part", () => {
    const tubes = [
      { tube: tube({ id: "A" }), path: straight },
      { tube: tube({ id: "B", innerDiameterM: undefined }), path: straight },
    ];
    expect(measured(axis(straight, { tubes, instrument: instrument() })).partial).toBe(true);
  });

  test("[D4] a tube read less deep than it is long is a part", () => {
    const judged = (lengthM: number) =>
      axis(straight, { tubes: [{ tube: tube({ lengthM }), path: straight }], instrument: instrument() });
    expect(measured(judged(10.5)).partial).toBe(false);
    expect(measured(judged(12)).partial).toBe(true);
    expect(measured(withTubes([straight], { reachesToe: false })).partial).toBe(true);
  });

  test("a tube with an unread station is not judged, even beside others", () => {
    const unread = straightPath(HEAD, ned(0, 0, 1), 10, 0.5);
    unread.northM[4] = Number.NaN;
    expect(reason(withTubes([straight, unread]))).toBe("criteria.unread-station");
  });
});

test("a probe thicker than the tube never passes", () => {
  const found = measured(withTubes([straight]), { numbers: { probe_diameter_mm: 60 } });
  expect(found.value).toBeGreaterThan(found.limit);
});

test("the bore itself is the tube where the rule gives an inner diameter", () => {
  const judged = axis(straight, { instrument: instrument() });
  expect(measured(judged, { numbers: { tube_inner_diameter_mm: 50 } }).limit).toBeCloseTo(0.012, 12);
});

test("the rule reads as a sentence", () => {
  const numbers = { probe_length_m: 0.6, probe_diameter_mm: 38 };
  expect(tubePassage.describe(request("tube-passage", { numbers }), "en")).toBe(
    "a rigid probe passes the tubes: length 0.6 m, diameter 38 mm",
  );
  expect(tubePassage.describe(request("tube-passage"), "de")).toContain("die des Geräts");
});
