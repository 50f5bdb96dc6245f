import { describe, expect, test } from "vitest";
import { DISTRIBUTION_SHAPES } from "./error-source.ts";
import { standardDraws } from "./standard-draws.ts";

const COUNT = 40_000;
/** fourth moment of each form at variance 1 */
const FOURTH = { normal: 3, rectangular: 1.8, triangular: 2.4, arcsine: 1.5 };
const LARGEST = { normal: 6, rectangular: Math.sqrt(3), triangular: Math.sqrt(6), arcsine: Math.SQRT2 };

describe("[E4] numbers for trials", () => {
  test.each(DISTRIBUTION_SHAPES)("%s: mean 0, variance 1, its own fourth moment (seed 5)", (shape) => {
    const values = standardDraws(shape, 5, "seating R1", 0, COUNT);
    const moment = (k: number) => values.reduce((sum, value) => sum + value ** k, 0) / COUNT;
    expect(Math.abs(moment(1))).toBeLessThan(4 / Math.sqrt(COUNT));
    expect(Math.abs(moment(2) - 1)).toBeLessThan(4 * Math.sqrt((FOURTH[shape] - 1) / COUNT));
    expect(Math.abs(moment(4) / FOURTH[shape] - 1)).toBeLessThan(0.1);
    for (const value of values) expect(Math.abs(value)).toBeLessThanOrEqual(LARGEST[shape]);
  });

  test.each(DISTRIBUTION_SHAPES)(
    "%s: a trial is the same whenever it is made; trials, names and seeds differ",
    (shape) => {
      const of = (seed: number, name: string, trial: number) => standardDraws(shape, seed, name, trial, 3);
      expect(of(1, "a", 7)).toEqual(of(1, "a", 7));
      const all = [of(1, "a", 7), of(1, "a", 8), of(1, "b", 7), of(2, "a", 7)].flatMap((each) =>
        Array.from(each),
      );
      expect(new Set(all).size).toBe(all.length);
    },
  );
});
