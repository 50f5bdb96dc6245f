import { XMLParser } from "fast-xml-parser";
import { describe, expect, test } from "vitest";
import { axisRow, plumbPile, viewOf } from "../../test/figure-views.ts";
import { planFigure } from "./plan-figure.ts";

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Middle of the marker of a place. Markers come in the drawing first, then in the key. */
function markerOf(svg: string, position: string): Point {
  const group = new RegExp(`<g data-position="${position}">.*?points="([^"]+)"`).exec(svg)![1]!;
  const points = group.split(" ").map((pair) => pair.split(",").map(Number) as [number, number]);
  const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return { x: middle(points.map(([x]) => x)), y: middle(points.map(([, y]) => y)) };
}

const unitsPerM = (svg: string) => Number(/data-units-per-m="([^"]+)"/.exec(svg)![1]);
const allowanceRadii = (svg: string) =>
  [...svg.matchAll(/<circle [^>]*r="([^"]+)"[^>]*data-part="allowance"/g)].map((match) => Number(match[1]));

/** Written with two decimals, so a place may be off by half a hundredth, a difference of two by a hundredth. */
const ROUNDING = 0.0101;

describe("plan", () => {
  const toeAt = (east: number, north: number) => {
    const svg = planFigure(viewOf({ axis: [axisRow(-4.5, 0, 0), axisRow(20, east, north)] }));
    return { svg, head: markerOf(svg, "head"), toe: markerOf(svg, "toe") };
  };

  test("a toe 100 mm east of the head lies to its right, by the scale", () => {
    const { svg, head, toe } = toeAt(0.1, 0);
    expect(toe.x - head.x).toBeGreaterThan(100);
    expect(Math.abs(toe.x - head.x - 0.1 * unitsPerM(svg))).toBeLessThan(ROUNDING);
    expect(toe.y).toBe(head.y);
  });
  test("a toe 100 mm north of the head lies above it, by the same scale: equal axes", () => {
    const { svg, head, toe } = toeAt(0, 0.1);
    expect(Math.abs(head.y - toe.y - 0.1 * unitsPerM(svg))).toBeLessThan(ROUNDING);
    expect(toe.x).toBe(head.x);
    expect(unitsPerM(svg)).toBe(unitsPerM(toeAt(0.1, 0).svg));
  });
  test("an allowance is a circle of its own size round the design axis", () => {
    const svg = planFigure(viewOf({ allowances: [{ label: "Plan", allowanceM: () => 0.15 }] }));
    expect(allowanceRadii(svg)).toHaveLength(1);
    expect(Math.abs(allowanceRadii(svg)[0]! - 0.15 * unitsPerM(svg))).toBeLessThan(ROUNDING);
  });
  test("an allowance that grows is drawn at cut-off and at the toe", () => {
    const svg = planFigure(
      viewOf({ allowances: [{ label: "Lean", allowanceM: (down) => (down + 4.5) / 100 }] }),
    );
    const expected = [0.033, 0.245].map((radius) => radius * unitsPerM(svg));
    for (const [i, radius] of allowanceRadii(svg).entries())
      expect(Math.abs(radius - expected[i]!)).toBeLessThan(ROUNDING);
    expect(allowanceRadii(svg)).toHaveLength(2);
  });
  test("an allowance far larger than the offsets is named, not drawn, so that the offsets stay visible", () => {
    const small = { label: "Small", allowanceM: () => 0.02 };
    const large = { label: "Large", allowanceM: () => 3 };
    const svg = planFigure(
      viewOf({ axis: [axisRow(-4.5, 0, 0), axisRow(20, 0.01, 0)], allowances: [small, large] }),
    );
    expect(allowanceRadii(svg)).toHaveLength(1);
    expect(svg.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ")).toContain("3000 mm, beyond the frame");
  });
  test("a raked element is seen down its axis: offsets keep their true length, along points to its bearing", () => {
    const bearing = 0.7;
    const rows = [
      { ...axisRow(-4.5, 0, 0), alongM: 0, acrossM: 0, offsetM: 0 },
      { ...axisRow(20, 0.07, 0.06), alongM: 0.1, acrossM: 0, offsetM: 0.1 },
    ];
    const svg = planFigure(
      viewOf({
        element: { ...plumbPile, rakeRad: 0.26, rakeBearingRad: bearing },
        alongBearingRad: bearing,
        axis: rows,
      }),
    );
    const [head, toe] = [markerOf(svg, "head"), markerOf(svg, "toe")];
    expect(Math.atan2(toe.x - head.x, head.y - toe.y)).toBeCloseTo(bearing, 3);
    expect(Math.abs(Math.hypot(toe.x - head.x, toe.y - head.y) / unitsPerM(svg) - 0.1)).toBeLessThan(1e-4);
  });
  test("limits along and across are a rectangle turned with the element, with its own sides", () => {
    const allowance = {
      label: "Panel",
      allowanceM: (_downM: number, component?: "along" | "across") => (component === "across" ? 0.025 : 0.05),
    };
    const svg = planFigure(viewOf({ alongBearingRad: Math.PI / 2, allowances: [allowance] }));
    const points = /<polygon points="([^"]+)"[^>]*data-part="allowance"/.exec(svg)![1]!;
    const corners = points.split(" ").map((pair) => pair.split(",").map(Number) as [number, number]);
    const reach = (of: 0 | 1) =>
      (Math.max(...corners.map((c) => c[of])) - Math.min(...corners.map((c) => c[of]))) / 2;
    expect(reach(0) / unitsPerM(svg)).toBeCloseTo(0.05, 4);
    expect(reach(1) / unitsPerM(svg)).toBeCloseTo(0.025, 4);
    expect(allowanceRadii(svg)).toEqual([]);
    expect(svg.replaceAll(/<[^>]*>/g, " ")).toContain("50 mm along, 25 mm across");
  });
  test("every circle is written as one, so that it stays one", () => {
    const svg = planFigure(viewOf());
    expect(svg).not.toContain("<ellipse");
    expect(svg).not.toContain("preserveAspectRatio");
  });
  test("the drawing is as wide as its viewBox says, in one scale", () => {
    const parsed = new XMLParser({ ignoreAttributes: false }).parse(planFigure(viewOf()));
    const [, , width, height] = parsed.svg["@_viewBox"].split(" ").map(Number);
    expect(Number.parseFloat(parsed.svg["@_width"]) / width).toBeCloseTo(
      Number.parseFloat(parsed.svg["@_height"]) / height,
      3,
    );
  });
});
