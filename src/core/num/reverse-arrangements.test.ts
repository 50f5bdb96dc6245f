import { describe, expect, test } from "vitest";
import univariate from "../../../test/published/nist-strd-univariate/case.json" with { type: "json" };
import published from "../../../test/published/series-tests/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { reverseArrangements, reverseArrangementsCdf } from "./reverse-arrangements.ts";

describe("reverseArrangements", () => {
  test("none for rising values, all pairs for falling ones, half for equal ones", () => {
    expect(reverseArrangements([1, 2, 3, 4])).toBe(0);
    expect(reverseArrangements([4, 3, 2, 1])).toBe(6);
    expect(reverseArrangements([5, 5, 5, 5])).toBe(3);
    expect(reverseArrangements([1, Number.NaN])).toBeNaN();
    expect(() => reverseArrangements([1])).toThrow(ContractError);
  });

  test("of the drifting record Mavro: 345 and half of its ties, outside 495 to 729", () => {
    const { mavro } = univariate;
    const ties = mavro.reduce((sum, x, i) => sum + mavro.slice(i + 1).filter((y) => x === y).length, 0);
    const found = reverseArrangements(mavro);
    expect(found - ties / 2).toBe(published.mavro.strictReverseArrangements);
    expect(reverseArrangementsCdf(found, mavro.length)).toBeLessThan(0.001);
  });
});

describe("reverseArrangementsCdf", () => {
  test("four values: 1 3 5 6 5 3 1 of 24 orders", () => {
    const orders = [0, 1, 2, 3, 4, 5, 6].map((a) => 24 * reverseArrangementsCdf(a, 4));
    for (const [a, count] of [1, 4, 9, 15, 20, 23, 24].entries()) expect(orders[a]).toBeCloseTo(count, 12);
  });

  test.each(published.reverseArrangements)("probabilities above the tabled limits, $count values", (row) => {
    for (const { arrangements, above } of row.limits)
      expect(Math.abs(1 - reverseArrangementsCdf(arrangements, row.count) - above)).toBeLessThan(5.1e-5);
  });

  test("exact and normal forms meet between 120 and 121 values", () => {
    for (const z of [-2.5, -1, 0, 1.5]) {
      const at = (n: number) =>
        Math.round((n * (n - 1)) / 4 + z * Math.sqrt((n * (2 * n + 5) * (n - 1)) / 72));
      const [exact, normal] = [120, 121].map((n) => reverseArrangementsCdf(at(n), n)) as [number, number];
      expect(Math.abs(exact - normal)).toBeLessThan(1e-3);
    }
  });

  test("at the ends, without a number and outside", () => {
    expect(reverseArrangementsCdf(-0.5, 10)).toBe(0);
    expect(reverseArrangementsCdf(1e6, 10)).toBeCloseTo(1, 12);
    expect(reverseArrangementsCdf(Number.NaN, 10)).toBeNaN();
    expect(() => reverseArrangementsCdf(1, 1)).toThrow(ContractError);
  });
});
