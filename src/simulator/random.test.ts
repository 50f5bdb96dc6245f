import { describe, expect, test } from "vitest";
import { createRandom, nextWord } from "./random.ts";

describe("createRandom", () => {
  test("gives the published first words of xoshiro128++ for the state 1, 2, 3, 4", () => {
    // the test vector that public implementations of the generator carry (from memory); the first word can be checked
    // by hand: rotate(1 + 4, 7) + 1 = 641
    const state = Uint32Array.of(1, 2, 3, 4);
    const words = Array.from({ length: 10 }, () => nextWord(state));
    expect(words).toEqual([
      641, 1573767, 3222811527, 3517856514, 836907274, 4247214768, 3867114732, 1355841295, 495546011,
      621204420,
    ]);
  });

  test("gives the same numbers for the same seed and others for another one", () => {
    const draw = (seed: number | string) => {
      const random = createRandom(seed);
      return Array.from({ length: 20 }, () => random.uniform());
    };
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
    expect(draw(7).every((u) => u >= 0 && u < 1)).toBe(true);
  });

  test("gives a named part numbers that do not depend on what was drawn before", () => {
    const fresh = createRandom(3);
    const used = createRandom(3);
    used.normal();
    used.uniform();
    expect(used.fork("spin").uniform()).toBe(fresh.fork("spin").uniform());
    expect(fresh.fork("spin").uniform()).not.toBe(fresh.fork("slip").uniform());
  });

  test("draws normal numbers with the moments of the normal distribution", () => {
    const random = createRandom(11);
    const n = 200_000;
    let [sum, squares, fourth] = [0, 0, 0];
    for (let i = 0; i < n; i++) {
      const z = random.normal();
      sum += z;
      squares += z * z;
      fourth += z ** 4;
    }
    // five standard errors of each moment
    expect(Math.abs(sum / n)).toBeLessThan(5 / Math.sqrt(n));
    expect(Math.abs(squares / n - 1)).toBeLessThan(5 * Math.sqrt(2 / n));
    expect(Math.abs(fourth / n - 3)).toBeLessThan(5 * Math.sqrt(96 / n));
  });
});
