import { expect, test } from "vitest";
import { shareOf } from "./share.ts";

/** Probability of at most `k` of `n`, added up term by term. */
function atMost(k: number, n: number, p: number): number {
  let term = (1 - p) ** n;
  let sum = term;
  for (let i = 1; i <= k; i++) {
    term *= ((n - i + 1) / i) * (p / (1 - p));
    sum += term;
  }
  return sum;
}

test("with none found the upper end is 1 - 0.025^(1/n), with all found the lower one mirrors it", () => {
  for (const n of [1, 5, 10, 60]) {
    const none = shareOf(0, n);
    expect(none.low).toBe(0);
    expect(none.high).toBeCloseTo(1 - 0.025 ** (1 / n), 9);
    const all = shareOf(n, n);
    expect(all.high).toBe(1);
    expect(all.low).toBeCloseTo(0.025 ** (1 / n), 9);
  }
});

test("at the ends of the interval the tails of the binomial are 2.5 %", () => {
  for (const [k, n] of [
    [1, 10],
    [3, 12],
    [7, 40],
    [19, 20],
  ] as const) {
    const { low, high } = shareOf(k, n);
    expect(1 - atMost(k - 1, n, low)).toBeCloseTo(0.025, 8);
    expect(atMost(k, n, high)).toBeCloseTo(0.025, 8);
  }
});

test("nothing judged has no share, and few are flagged", () => {
  expect(shareOf(0, 0).share).toBeNaN();
  expect(shareOf(0, 0).isSmall).toBe(true);
  expect(shareOf(1, 19).isSmall).toBe(true);
  expect(shareOf(1, 20).isSmall).toBe(false);
});
