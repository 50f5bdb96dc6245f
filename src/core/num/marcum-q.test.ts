import { describe, expect, test } from "vitest";
import published from "../../../test/published/marcum-q/case.json" with { type: "json" };
import { ContractError } from "../result.ts";
import { marcumQ } from "./marcum-q.ts";

describe("marcumQ", () => {
  test.each(published.cases)(
    "order $order, a $a, b $b",
    ({ order, a, b, published: printed, recomputed }) => {
      const { lower, upper } = marcumQ(order, a, b);
      expect(Math.abs(upper / recomputed - 1)).toBeLessThan(3e-13);
      expect(Math.abs(upper / printed - 1)).toBeLessThan(1e-12);
      expect(Math.abs(lower + upper - 1)).toBeLessThan(1e-14);
    },
  );

  test("without offset: exp(-b^2/2), deep in the tail too", () => {
    for (const b of [0, 1, 5, 30])
      expect(Math.abs(marcumQ(1, 0, b).upper / Math.exp((-b * b) / 2) - 1)).toBeLessThan(1e-12);
  });

  test("Q_1(a, a) = (1 + exp(-a^2) I_0(a^2)) / 2, large offsets too", () => {
    for (const a of [0.5, 2, 10, 40]) {
      // exp(-x) I_0(x) as the mean of exp(-x (1 - cos t)) over half a turn.
      const steps = 20_000;
      let bessel = 0;
      for (let i = 0; i < steps; i++)
        bessel += Math.exp(-a * a * (1 - Math.cos((Math.PI * (i + 0.5)) / steps))) / steps;
      expect(Math.abs(marcumQ(1, a, a).upper - (1 + bessel) / 2)).toBeLessThan(1e-12);
    }
  });

  test("changing a and b over leaves exp(-(a^2 + b^2)/2) I_0(a b) beyond one", () => {
    for (const [a, b] of [
      [1, 3],
      [4, 0.5],
      [8, 9],
    ] as const) {
      const steps = 2000;
      let density = 0;
      for (let i = 0; i < steps; i++)
        density += Math.exp(-(a * a + b * b) / 2 + a * b * Math.cos((Math.PI * (i + 0.5)) / steps)) / steps;
      expect(Math.abs(marcumQ(1, a, b).upper + marcumQ(1, b, a).upper - 1 - density)).toBeLessThan(1e-13);
    }
  });

  test("without a number and outside", () => {
    expect(marcumQ(1, Number.NaN, 1).upper).toBeNaN();
    expect(() => marcumQ(0, 1, 1)).toThrow(ContractError);
    expect(() => marcumQ(1, -1, 1)).toThrow(ContractError);
  });
});
