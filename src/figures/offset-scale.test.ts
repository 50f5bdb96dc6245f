import { describe, expect, test } from "vitest";
import { offsetUnit, roundFactor } from "./offset-scale.ts";

describe("roundFactor", () => {
  test.each([
    [1, 1],
    [1.7, 1],
    [2.4, 2],
    [9.99, 8],
    [10, 10],
    [19, 15],
    [24, 20],
    [61, 60],
    [999, 800],
    [0.9, 1 / 2],
    [0.3, 1 / 4],
    [0.0012, 1 / 1000],
  ])("%f gives %f", (limit, expected) => {
    expect(roundFactor(limit)).toBeCloseTo(expected, 12);
  });
  test("is never above its limit, and more than half of it from 1 on", () => {
    for (let limit = 1; limit < 1e6; limit *= 1.037) {
      expect(roundFactor(limit)).toBeLessThanOrEqual(limit);
      expect(roundFactor(limit)).toBeGreaterThan(limit / 2);
    }
    for (let limit = 1; limit > 1e-6; limit /= 1.037) expect(roundFactor(limit)).toBeLessThanOrEqual(limit);
  });
});

test("ticks are written with the decimals that their step needs", () => {
  expect(offsetUnit(0.3, 0.1).write(0.2, "en")).toBe("200");
  expect(offsetUnit(0.002, 0.0005).write(0.0015, "de")).toBe("1,5");
  expect(offsetUnit(50, 10)).toMatchObject({ name: "m" });
});
