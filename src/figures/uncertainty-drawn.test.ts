import { describe, expect, test } from "vitest";
import { axisRow, bentAxis, ellipsesOf, plumbPile, viewOf } from "../../test/figure-views.ts";
import { planFigure } from "./plan-figure.ts";
import { sectionFigure } from "./section-figure.ts";
import { lineBand95 } from "./uncertain-offset.ts";

const words = (svg: string) => svg.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");
const unitsPerM = (svg: string) => Number(/data-units-per-m="([^"]+)"/.exec(svg)![1]);
interface Shape {
  readonly cx: number;
  readonly cy: number;
  readonly rx: number;
  readonly ry: number;
  readonly turn: number;
}
/** Ellipses of the drawing itself, without that of the key. */
function ellipsesIn(svg: string): readonly Shape[] {
  const part = /<g data-part="ellipses"[^>]*>(.*?)<\/g>/.exec(svg)![1]!;
  return [...part.matchAll(/<ellipse ([^>]*)>/g)].map(([, attributes]) => {
    const number = (name: string) => Number(new RegExp(`${name}="([^"]+)"`).exec(attributes!)![1]);
    return {
      cx: number("cx"),
      cy: number("cy"),
      rx: number("rx"),
      ry: number("ry"),
      turn: Number(/rotate\(([-\d.]+)/.exec(attributes!)![1]),
    };
  });
}

describe("ellipses in the plan", () => {
  test("are as large as the offsets ask for, the larger axis towards its bearing", () => {
    const svg = planFigure(viewOf({ ellipses: ellipsesOf(bentAxis, 0.03, 0.01, Math.PI / 6) }));
    const drawn = ellipsesIn(svg);
    expect(drawn.length).toBeGreaterThanOrEqual(3);
    for (const { rx, ry, turn } of drawn) {
      expect(Math.abs(ry - 0.03 * unitsPerM(svg))).toBeLessThan(0.02);
      expect(Math.abs(rx - 0.01 * unitsPerM(svg))).toBeLessThan(0.02);
      expect(turn).toBeCloseTo(30, 2);
    }
    expect(words(svg)).not.toContain("times larger than the offsets");
  });
  test("turn with the bearing of along: they are given from along towards across", () => {
    const element = { ...plumbPile, rakeRad: 0.2, rakeBearingRad: 1 };
    const ellipses = ellipsesOf(bentAxis, 0.03, 0.01, 0.5);
    const svg = planFigure(viewOf({ element, alongBearingRad: 1, ellipses }));
    expect(ellipsesIn(svg)[0]!.turn).toBeCloseTo((1.5 * 180) / Math.PI, 2);
  });
  test("too small to be seen are drawn larger by a round factor, and the drawing says so", () => {
    const svg = planFigure(viewOf({ ellipses: ellipsesOf(bentAxis, 0.001, 0.001) }));
    const factor = Number(/data-part="ellipses" data-factor="(\d+)"/.exec(svg)![1]);
    expect(factor).toBeGreaterThan(1);
    expect(Math.abs(ellipsesIn(svg)[0]!.ry - factor * 0.001 * unitsPerM(svg))).toBeLessThan(0.02);
    expect(words(svg)).toContain(`drawn ${factor} times larger than the offsets`);
  });
  test("stand at head, cut-off and toe at least, and beside the offset stands the radius", () => {
    const svg = planFigure(viewOf({ ellipses: ellipsesOf(bentAxis, 0.012, 0.008) }));
    const middles = ellipsesIn(svg).map(({ cx, cy }) => `${cx} ${cy}`);
    expect(new Set(middles).size).toBe(middles.length);
    expect(words(svg)).toMatch(/Toe(, worst)? \d+ mm ± 12 mm/);
  });
  test("keep inside the frame", () => {
    const svg = planFigure(viewOf({ ellipses: ellipsesOf(bentAxis, 0.5, 0.4) }));
    for (const { cx, ry } of ellipsesIn(svg)) {
      expect(cx - ry).toBeGreaterThan(70);
      expect(cx + ry).toBeLessThan(506);
    }
  });
});

describe("band in the section", () => {
  const axis = [axisRow(-4.5, 0, 0), axisRow(8, 0, 0), axisRow(20, 0, 0)];
  const widthsOf = (svg: string) =>
    [...svg.matchAll(/<g data-part="error-bars"><line x1="([^"]+)" y1="[^"]+" x2="([^"]+)"/g)].map(
      (match) => Number(match[2]) - Number(match[1]),
    );

  test("[E2] is 1.96 standard uncertainties either way: 1.96 / 2.4477 of the half axis of the ellipse", () => {
    const [ellipse] = ellipsesOf(axis, 0.024477, 0.0048954, 0);
    expect(lineBand95(ellipse!, 0)).toBeCloseTo(0.0196, 5);
    expect(lineBand95(ellipse!, Math.PI / 2)).toBeCloseTo(0.00392, 5);
    // halfway between the axes the variance is the mean of both
    expect(lineBand95(ellipse!, Math.PI / 4)).toBeCloseTo(Math.sqrt((0.0196 ** 2 + 0.00392 ** 2) / 2), 5);
  });
  test("has in each panel the width of that direction", () => {
    // along = grid north: the north panel shows the larger axis
    const svg = sectionFigure(viewOf({ axis, ellipses: ellipsesOf(axis, 0.02, 0.005, 0) }));
    const [east, north] = widthsOf(svg);
    expect(north! / east!).toBeCloseTo(4, 1);
  });
  test("is not drawn across a gap", () => {
    const whole = sectionFigure(viewOf({ ellipses: ellipsesOf(bentAxis, 0.02, 0.02) }));
    const torn = sectionFigure(
      viewOf({ ellipses: ellipsesOf(bentAxis, 0.02, 0.02), gaps: [{ fromM: 5.1, toM: 9.18 }] }),
    );
    const bands = (svg: string) => /<g data-part="band">(.*?)<\/g>/.exec(svg)![1]!.split("<path").length - 1;
    expect(bands(torn)).toBe(2 * bands(whole));
  });
  test("leaves out what was not read in one of several tubes, although the others have stations there", () => {
    const svg = sectionFigure(viewOf({ gaps: [{ fromM: 5.1, toM: 9.18 }] }));
    const upright = (svg: string) => /stroke-dasharray="2 4"[^>]*/.exec(svg);
    expect(upright(svg)).not.toBeNull();
    const dotted = /<path d="M[^"]*?,([\d.]+)L[^"]*?,([\d.]+)"[^>]*stroke-dasharray="2 4"/.exec(svg)!;
    const frame = 452 / (24.5 * 1.07);
    expect((Number(dotted[2]) - Number(dotted[1])) / frame).toBeCloseTo(4.08, 1);
  });
  test("says that it holds one direction", () => {
    const svg = sectionFigure(viewOf({ ellipses: ellipsesOf(bentAxis, 0.02, 0.02) }));
    expect(words(svg)).toContain("1.96 standard uncertainties");
    expect(sectionFigure(viewOf())).not.toContain('data-part="band"');
  });
});
