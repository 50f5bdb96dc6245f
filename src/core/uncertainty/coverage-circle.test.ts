import { readFileSync } from "node:fs";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { coverageCircle } from "./coverage-circle.ts";

const rows = Papa.parse<Record<string, string>>(
  readFileSync(new URL("../../../test/published/circle-radius/radius.csv", import.meta.url), "utf8"),
  { header: true, skipEmptyLines: true },
).data;

describe("coverageCircle", () => {
  test.each(rows.map((row) => [Number(row["P"]), row] as const))(
    "[E5] agrees with the table for probability %f at every ratio",
    (probability, row) => {
      const ratios = Object.keys(row).filter((key) => key.startsWith("c_"));
      expect(ratios).toHaveLength(11);
      for (const key of ratios) {
        const ratio = Number(key.slice(2));
        const radius = coverageCircle(3, 3 * ratio, probability) / 3;
        expect(Math.abs(radius - Number(row[key])), key).toBeLessThan(ratio < 0.1 ? 1e-4 : 6e-6);
      }
    },
  );

  test("equal axes have the closed form sqrt(-2 ln(1 - P))", () => {
    for (const probability of [0.1, 0.5, 0.95, 0.999])
      expect(coverageCircle(2, 2, probability)).toBeCloseTo(
        2 * Math.sqrt(-2 * Math.log(1 - probability)),
        10,
      );
  });

  test("no spread gives 0, a missing one stays missing, an impossible probability is refused", () => {
    expect(coverageCircle(0, 0, 0.95)).toBe(0);
    expect(coverageCircle(1, Number.NaN, 0.95)).toBeNaN();
    expect(coverageCircle(Number.NaN, 0, 0.95)).toBeNaN();
    expect(() => coverageCircle(1, 1, 1)).toThrow("probability 1");
  });
});
