import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { erf, erfc } from "./error-function.ts";

describe("erf and erfc", () => {
  // Abramowitz & Stegun tables 7.1 and 7.3 to 15 and more digits (from memory).
  test.each([
    [0.5, 0.5204998778130465],
    [1, 0.8427007929497149],
    [1.5, 0.9661051464753108],
    [2, 0.9953222650189527],
  ])("erf(%d)", (x, value) => {
    expect(Math.abs(erf(x) / value - 1)).toBeLessThan(1e-15);
    expect(erf(-x)).toBe(-erf(x));
  });

  test.each([
    [0.5, 0.4795001221869535],
    [2, 0.004677734981047266],
    [3, 2.209049699858544e-5],
    [5, 1.537459794428035e-12],
    [10, 2.088487583762545e-45],
    [20, 5.395865611607901e-176],
  ])("erfc(%d) keeps its digits where 1 - erf has none", (x, value) => {
    expect(Math.abs(erfc(x) / value - 1)).toBeLessThan(5e-15);
  });

  test("series and continued fraction meet, and both parts make one", () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), (x) => {
        expect(Math.abs(erf(x) + erfc(x) - 1)).toBeLessThan(5e-16);
        expect(Math.abs(erfc(x) + erfc(-x) - 2)).toBeLessThan(5e-16);
      }),
    );
    expect(Math.abs(erfc(1.4 - 1e-13) / erfc(1.4 + 1e-13) - 1)).toBeLessThan(1e-12);
  });

  test("at the ends and without a number", () => {
    expect([erf(0), erfc(0)]).toEqual([0, 1]);
    expect([erfc(Number.POSITIVE_INFINITY), erfc(Number.NEGATIVE_INFINITY)]).toEqual([0, 2]);
    expect(erf(Number.NaN)).toBeNaN();
    expect(erfc(Number.NaN)).toBeNaN();
  });
});
