import { XMLValidator } from "fast-xml-parser";
import { describe, expect, test } from "vitest";
import { allanRecord, gyroZero } from "../../test/figure-views.ts";
import { allanFigure } from "./allan-figure.ts";
import { calibrationFigures } from "./registry.ts";

const draw = (changes: Partial<typeof allanRecord> = {}, language: "en" | "de" = "en") =>
  allanFigure({
    calibration: { ...gyroZero, allan: { ...allanRecord, ...changes } },
    jobName: "Example job",
    language,
  })!;
const words = (svg: string) => svg.replaceAll(/<[^>]*>/g, " ").replaceAll(/\s+/g, " ");
const axisValue = (svg: string, name: string): number[] =>
  [...svg.matchAll(new RegExp(`<circle [^>]*${name}="([^"]+)"`, "g"))].map((match) => Number(match[1]));

describe("[B3] Allan deviation", () => {
  test("is one well-formed document in both languages", () => {
    for (const language of ["en", "de"] as const) {
      const svg = draw({}, language);
      expect(XMLValidator.validate(svg)).toBe(true);
      expect(svg).not.toMatch(/="[^"]*(?:NaN|Infinity|undefined|e[+-]\d)/);
    }
  });
  test("both scales are logarithmic: white noise falls by one decade over two", () => {
    const count = 5;
    const times = Float64Array.from({ length: count }, (_, i) => 10 ** i);
    const deviation = times.map((time) => 1e-6 / Math.sqrt(time));
    const curve = {
      count,
      averagingTimeS: times,
      deviation,
      lower: deviation.map((value) => value * 0.9),
      upper: deviation.map((value) => value * 1.1),
      degreesOfFreedom: times.map(() => 100),
    };
    const svg = draw({ curve });
    const x = axisValue(svg, "cx").slice(0, count);
    const y = axisValue(svg, "cy").slice(0, count);
    const steps = x.slice(1).map((value, i) => [value - x[i]!, y[i + 1]! - y[i]!] as const);
    for (const [across, down] of steps) {
      expect(Math.abs(across - steps[0]![0])).toBeLessThan(0.03);
      expect(Math.abs(down - steps[0]![1])).toBeLessThan(0.03);
      expect(down).toBeGreaterThan(0);
    }
  });
  test("says what was read off, in the units of data sheets", () => {
    const drawn = words(draw());
    // 2.9e-6 rad/sqrt(s) = 2.9e-6 * 57.2958 * 60 deg/sqrt(h); 3e-7 rad/s = 3e-7 * 57.2958 * 3600 deg/h
    expect(drawn).toContain("0.0100°/√h (0.0089°/√h … 0.011°/√h)");
    expect(drawn).toContain("0.062°/h (0.041°/h … 0.10°/h)");
    expect(drawn).toContain("0.050°/h/√h");
  });
  test("a floor that was not reached is an upper bound; what the log is too short for is left out", () => {
    const instability = { ...allanRecord.instability, isReached: false };
    const drawn = words(draw({ instability, rateWalk: undefined }));
    expect(drawn).toContain("Bias instability, at most: the curve still falls");
    expect(drawn).not.toContain("Rate random walk");
  });
  test("calibrations without a record have no such drawing", () => {
    const { allan: _, ...bare } = gyroZero;
    for (const { draw: drawOne } of calibrationFigures)
      expect(drawOne({ calibration: bare, jobName: "", language: "en" })).toBeUndefined();
  });
});
