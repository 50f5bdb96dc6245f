import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { degreesFromRadians } from "#core";
import published from "../../../test/published/helmert-2d/case.json" with { type: "json" };
import { codesOf, valueFrom } from "../../../test/support/results.ts";
import { type FitLimits, fitLocalGrid } from "./fit-local-grid.ts";
import {
  type CommonPoint,
  gridFromLocal,
  localFromGrid,
  localGridRotation,
  localGridScale,
} from "./local-grid.ts";

const anyFit: FitLimits = { residualM: 1e9, scale: undefined };
const commonPoints = (role: string): CommonPoint[] =>
  published.points
    .filter((point) => point.role === role)
    .map(({ name, x, y, east, north }) => ({ name, local: { east: x, north: y }, grid: { east, north } }));

describe("published example", () => {
  const controls = commonPoints("control");
  const fit = valueFrom(fitLocalGrid(controls, anyFit));

  test("parameters", () => {
    const { a, b, east, north } = published.published;
    const origin = gridFromLocal(fit.grid, { east: 0, north: 0 });
    expect(Math.abs(fit.grid.a - a)).toBeLessThan(5.1e-6);
    expect(Math.abs(fit.grid.b - b)).toBeLessThan(5.1e-6);
    expect(Math.abs(origin.east - east)).toBeLessThan(5.1e-4);
    expect(Math.abs(origin.north - north)).toBeLessThan(5.1e-4);
    expect(Math.abs(localGridScale(fit.grid) - Math.hypot(a, b))).toBeLessThan(1e-5);
    expect(Math.abs(localGridRotation(fit.grid) - Math.atan2(b, a))).toBeLessThan(2e-6);
  });

  test.each(commonPoints("transformed").map((point) => [point.name, point] as const))(
    "point %s",
    (_name, point) => {
      const computed = gridFromLocal(fit.grid, point.local);
      expect(Math.abs(computed.east - point.grid.east)).toBeLessThan(5.1e-4);
      expect(Math.abs(computed.north - point.grid.north)).toBeLessThan(5.1e-4);
      const back = localFromGrid(fit.grid, computed);
      expect(Math.hypot(back.east - point.local.east, back.north - point.local.north)).toBeLessThan(1e-8);
    },
  );

  test("residuals and their standard deviation are those of the published parameters", () => {
    const { a, b, east, north } = published.published;
    let sum = 0;
    for (const [index, { local, grid }] of controls.entries()) {
      const residual = {
        east: a * local.east - b * local.north + east - grid.east,
        north: b * local.east + a * local.north + north - grid.north,
      };
      // The parameters are printed to 5e-6, over coordinates of some 200: 2e-3.
      expect(Math.abs((fit.residuals[index]?.east ?? Number.NaN) - residual.east)).toBeLessThan(3e-3);
      expect(Math.abs((fit.residuals[index]?.north ?? Number.NaN) - residual.north)).toBeLessThan(3e-3);
      sum += residual.east ** 2 + residual.north ** 2;
    }
    expect(Math.abs(fit.sigma0M - Math.sqrt(sum / 2))).toBeLessThan(3e-3);
  });
});

/** A site grid of known place: turned by 30 degrees anticlockwise, scale 0.9996, on large map coordinates. */
const truth = { scale: 0.9996, rotationDeg: 30, east: 563_000, north: 5_710_000 };
function mapOf(x: number, y: number): { east: number; north: number } {
  const angle = (truth.rotationDeg * Math.PI) / 180;
  return {
    east: truth.east + truth.scale * (Math.cos(angle) * x - Math.sin(angle) * y),
    north: truth.north + truth.scale * (Math.sin(angle) * x + Math.cos(angle) * y),
  };
}
const pointAt = (name: string, x: number, y: number): CommonPoint => ({
  name,
  local: { east: x, north: y },
  grid: mapOf(x, y),
});
const site = [pointAt("1", 0, 0), pointAt("2", 120, 10), pointAt("3", 95, 80), pointAt("4", -10, 70)];
const limits: FitLimits = { residualM: 0.02, scale: { expected: 0.9996, largestDifference: 0.0002 } };

describe("known truth", () => {
  test.each([2, 3, 4])("%i points give it back", (count) => {
    const fit = valueFrom(fitLocalGrid(site.slice(0, count), limits));
    expect(localGridScale(fit.grid)).toBeCloseTo(truth.scale, 9);
    expect(degreesFromRadians(localGridRotation(fit.grid))).toBeCloseTo(truth.rotationDeg, 7);
    expect(fit.findings).toEqual([]);
    for (const residual of fit.residuals)
      expect(Math.hypot(residual.east, residual.north)).toBeLessThan(1e-8);
  });

  test("two points have no standard deviation", () => {
    expect(valueFrom(fitLocalGrid(site.slice(0, 2), limits)).sigma0M).toBeNaN();
  });

  test("moving the map coordinates moves the result and nothing else", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -6_000_000, max: 6_000_000 }),
        fc.integer({ min: 0, max: 9_000_000 }),
        (e, n) => {
          const moved = site.map((point) => ({
            ...point,
            grid: { east: point.grid.east + e, north: point.grid.north + n },
          }));
          const fit = valueFrom(fitLocalGrid(moved, limits));
          const origin = gridFromLocal(fit.grid, { east: 0, north: 0 });
          expect(Math.abs(origin.east - truth.east - e)).toBeLessThan(1e-7);
          expect(Math.abs(origin.north - truth.north - n)).toBeLessThan(1e-7);
          expect(localGridScale(fit.grid)).toBeCloseTo(truth.scale, 9);
        },
      ),
    );
  });

  test("small errors leave residuals of their size and no finding", () => {
    const noisy = site.map((point, index) => ({
      ...point,
      grid: { east: point.grid.east + 0.004 * (-1) ** index, north: point.grid.north },
    }));
    const fit = valueFrom(fitLocalGrid(noisy, limits));
    expect(fit.findings).toEqual([]);
    expect(fit.sigma0M).toBeGreaterThan(0.001);
    expect(fit.sigma0M).toBeLessThan(0.01);
  });
});

describe("mistakes are named", () => {
  const codes = (points: readonly CommonPoint[], within = limits): string[] =>
    valueFrom(fitLocalGrid(points, within)).findings.map((one) => one.code);

  test("an axis that runs the other way, and east and north exchanged", () => {
    const reversed = site.map((point) => ({
      ...point,
      local: { ...point.local, north: -point.local.north },
    }));
    expect(codes(reversed)).toContain("geodesy.local-grid-reversed");
    const exchanged = site.map((point) => ({
      ...point,
      local: { east: point.local.north, north: point.local.east },
    }));
    expect(codes(exchanged)).toContain("geodesy.local-grid-reversed");
  });

  test("two points exchanged, with their names", () => {
    const [first, second, third, fourth] = site as [CommonPoint, CommonPoint, CommonPoint, CommonPoint];
    const swapped = [first, { ...second, grid: third.grid }, { ...third, grid: second.grid }, fourth];
    const fit = valueFrom(fitLocalGrid(swapped, limits));
    const finding = fit.findings.find((one) => one.code === "geodesy.local-grid-exchanged");
    expect(finding?.values).toEqual({ first: "2", second: "3" });
  });

  test("one mistyped point is pointed at, without a guess about its cause", () => {
    const mistyped = site.map((point) =>
      point.name === "3" ? { ...point, grid: { ...point.grid, east: point.grid.east + 10 } } : point,
    );
    const fit = valueFrom(fitLocalGrid(mistyped, { ...limits, scale: undefined }));
    expect(fit.findings.map((one) => one.code)).toEqual(["geodesy.local-grid-residual"]);
    expect(fit.findings[0]?.values["point"]).toBe("3");
  });

  test("with two points only the scale can tell", () => {
    const [first, second] = site as [CommonPoint, CommonPoint];
    const wrong = [first, { ...second, grid: { ...second.grid, east: second.grid.east + 1 } }];
    expect(codes(wrong)).toEqual(["geodesy.local-grid-scale"]);
  });

  test("too few points, one place, and numbers that are missing", () => {
    expect(codesOf(fitLocalGrid(site.slice(0, 1), limits))).toEqual(["geodesy.local-grid-too-few"]);
    expect(codesOf(fitLocalGrid([site[0]!, site[0]!], limits))).toEqual(["geodesy.local-grid-one-place"]);
    const missing = { ...site[0]!, name: "7", grid: { east: Number.NaN, north: 0 } };
    expect(codesOf(fitLocalGrid([...site, missing], limits))).toEqual(["geodesy.local-grid-bad-number"]);
  });
});
