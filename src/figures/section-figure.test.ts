import { describe, expect, test } from "vitest";
import { axisRow, bentAxis, plumbPile, viewOf } from "../../test/figure-views.ts";
import { sectionFigure } from "./section-figure.ts";

const part = (svg: string, name: string) => new RegExp(`<g data-part="${name}">(.*?)</g>`).exec(svg)![1]!;
/** The second panel alone, or the first one and what follows, without the key. */
const panel = (svg: string, index: number) =>
  svg.split('<g data-part="key"')[0]!.split(`data-panel="${index}"`)[1]!;

/** Middle of the marker of a place in a panel. */
function markerIn(svg: string, index: number, position: string): { readonly x: number; readonly y: number } {
  const group = new RegExp(`<g data-position="${position}">.*?points="([^"]+)"`).exec(panel(svg, index))![1]!;
  const points = group.split(" ").map((pair) => pair.split(",").map(Number) as [number, number]);
  const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2;
  return { x: middle(points.map(([x]) => x)), y: middle(points.map(([, y]) => y)) };
}

/** Y of each level written on the axis, from the top of the drawing down. */
const writtenLevels = (svg: string) =>
  [...part(svg, "levels").matchAll(/<text [^>]*y="([^"]+)"[^>]*>([−+]?[\d.]+)<\/text>/g)]
    .map((match) => ({ y: Number(match[1]), level: Number(match[2]!.replace("−", "-")) }))
    .sort((a, b) => a.y - b.y);

describe("section", () => {
  test("levels fall from the top of the drawing to its foot", () => {
    const levels = writtenLevels(sectionFigure(viewOf())).map(({ level }) => level);
    expect(levels.length).toBeGreaterThan(4);
    expect(levels).toEqual([...levels].sort((a, b) => b - a));
  });
  test("the toe is drawn below the head, at the height of its level", () => {
    const svg = sectionFigure(viewOf());
    const levels = writtenLevels(svg);
    const perM = (levels.at(-1)!.y - levels[0]!.y) / (levels[0]!.level - levels.at(-1)!.level);
    const [head, toe] = [markerIn(svg, 0, "head"), markerIn(svg, 0, "toe")];
    expect(Math.abs((toe.y - head.y) / perM - 24 * 1.02)).toBeLessThan(0.01);
  });
  test("offsets are drawn as many times larger as the note says: a round number", () => {
    const svg = sectionFigure(viewOf({ axis: [axisRow(-4.5, 0, 0), axisRow(20, 0.1, -0.05)] }));
    const factor = Number(/data-offset-factor="([^"]+)"/.exec(svg)![1]);
    const head = [markerIn(svg, 0, "head"), markerIn(svg, 1, "head")] as const;
    const toe = [markerIn(svg, 0, "toe"), markerIn(svg, 1, "toe")] as const;
    const perMOfLevel = (toe[0].y - head[0].y) / 24.5;
    expect((toe[0].x - head[0].x) / 0.1 / perMOfLevel).toBeCloseTo(factor, 1);
    expect((toe[1].x - head[1].x) / -0.05 / perMOfLevel).toBeCloseTo(factor, 1);
    expect(svg.replaceAll(/<[^>]*>/g, " ")).toContain(`Offsets drawn ${factor} times larger`);
    expect(factor).toBe(50);
  });
  test("what was not read is hatched above, between and below, and crossed by a broken line only", () => {
    const axis = bentAxis.filter(
      (row) => (row.depthM > 3 && row.depthM < 8) || (row.depthM > 12 && row.depthM < 20),
    );
    const svg = sectionFigure(viewOf({ axis, gaps: [{ fromM: 7.14, toM: 12.24 }] }));
    expect(panel(svg, 1).match(/data-part="not-read"/g)).toHaveLength(3);
    expect(panel(svg, 1).match(/<path [^>]*stroke-dasharray="2 4"/g)).toHaveLength(1);
    const text = svg.replaceAll(/<[^>]*>/g, " ");
    expect(text).toContain("First reading");
    expect(text).toContain("Lowest reading");
  });
  test("a hole read from head to toe has nothing hatched", () => {
    expect(sectionFigure(viewOf())).not.toContain('data-part="not-read"');
  });
  test("interpolated rows inside a gap are not drawn as read", () => {
    const rows = [axisRow(-4.5, 0, 0), axisRow(0, 0.5, 0, true), axisRow(20, 0.1, 0)];
    const svg = sectionFigure(viewOf({ axis: rows, gaps: [{ fromM: 0, toM: 24.5 }] }));
    expect(svg.replaceAll(/<[^>]*>/g, " ")).not.toContain("500 mm");
  });
  test("an allowance is drawn to both sides of the design axis by level, and as a bar where it holds at one level", () => {
    const cone = { label: "Lean", allowanceM: (down: number) => (down + 4.5) / 100 };
    const bar = { label: "Plan", allowanceM: (down: number) => (down === -1.2 ? 0.075 : Number.NaN) };
    const allowances = /<g data-part="allowances">(.*?)<\/g>/.exec(
      sectionFigure(viewOf({ allowances: [cone, bar] })),
    )![1]!;
    expect(allowances.match(/<path /g)).toHaveLength(2);
    expect(allowances.match(/<line /g)).toHaveLength(2);
  });
  test("a plumb pile shows east and north, a raked one along and across with their bearings", () => {
    expect(sectionFigure(viewOf())).toContain(">East (mm)<");
    const raked = { ...plumbPile, rakeRad: 0.2, rakeBearingRad: Math.PI / 4 };
    const svg = sectionFigure(viewOf({ element: raked, alongBearingRad: Math.PI / 4 }));
    expect(svg).toContain(">Along (mm)<");
    for (const bearing of ["045.0°", "225.0°", "135.0°", "315.0°"]) expect(svg).toContain(bearing);
  });
  test("each panel shows the limit of its own part of the offset", () => {
    const panelLimit = {
      label: "Panel",
      allowanceM: (_down: number, component?: "along" | "across") => (component === "across" ? 0.025 : 0.05),
    };
    const svg = sectionFigure(viewOf({ allowances: [panelLimit] }));
    const widths = [...svg.matchAll(/<g data-part="allowances">(.*?)<\/g>/g)].map(([, group]) => {
      const sides = [...group!.matchAll(/d="M([\d.]+),/g)].map((match) => Number(match[1]));
      return sides[1]! - sides[0]!;
    });
    // along is north here, the second panel
    expect(widths[1]! / widths[0]!).toBeCloseTo(2, 2);
    const words = svg.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");
    expect(words).toContain("East 25 mm North 50 mm");
  });
});
