import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sourceKinds } from "./error-source.ts";
import { whatWouldHalve } from "./what-would-halve.ts";

describe("what would halve the expanded uncertainty", () => {
  test("a single source has to come down to half its value", () => {
    expect(whatWouldHalve([{ source: "seating", share: 1 }])).toEqual({
      kind: "one-source",
      source: "seating",
      factor: 0.5,
    });
  });

  test("a source with 84 % has to come down to 0.3273 of its value: 0.84 (3/28) + 0.16 = 0.25", () => {
    const answer = whatWouldHalve([
      { source: "seating", share: 0.16 },
      { source: "opening-heading", share: 0.84 },
    ]);
    expect(answer).toMatchObject({ kind: "one-source", source: "opening-heading" });
    expect(answer.kind === "one-source" && answer.factor).toBeCloseTo(Math.sqrt(3 / 28), 12);
  });

  test("a source with exactly three quarters would have to go altogether", () => {
    const answer = whatWouldHalve([
      { source: "opening-heading", share: 0.75 },
      { source: "seating", share: 0.25 },
    ]);
    expect(answer).toEqual({ kind: "one-source", source: "opening-heading", factor: 0 });
  });

  test("just under three quarters no source can; the rest would leave sqrt(0.26)", () => {
    const answer = whatWouldHalve([
      { source: "opening-heading", share: 0.74 },
      { source: "seating", share: 0.2 },
      { source: "tilt-scale", share: 0.06 },
    ]);
    expect(answer).toMatchObject({
      kind: "several-sources",
      largest: "opening-heading",
      together: ["opening-heading", "seating"],
    });
    expect(answer.kind === "several-sources" && answer.leftWithoutLargest).toBeCloseTo(Math.sqrt(0.26), 12);
  });

  test("without a source that acts there is nothing to halve", () => {
    expect(whatWouldHalve([])).toEqual({ kind: "nothing" });
    expect(whatWouldHalve([{ source: "seating", share: Number.NaN }])).toEqual({ kind: "nothing" });
    expect(whatWouldHalve([{ source: "seating", share: 0 }])).toEqual({ kind: "nothing" });
  });

  test("[E2] doing what the answer says leaves a quarter of the variance, for any shares", () => {
    const shares = fc.array(fc.double({ min: 0.001, max: 1, noNaN: true }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(shares, (weights) => {
        const whole = weights.reduce((sum, weight) => sum + weight, 0);
        const parts = weights.map((weight, i) => ({ source: sourceKinds[i]!.id, share: weight / whole }));
        const answer = whatWouldHalve(parts);
        if (answer.kind === "one-source") {
          const left = parts.reduce(
            (sum, { source, share }) => sum + share * (source === answer.source ? answer.factor ** 2 : 1),
            0,
          );
          expect(left).toBeCloseTo(0.25, 9);
          return;
        }
        if (answer.kind !== "several-sources") throw new Error("shares were given");
        const leftWithout = (gone: readonly string[]) =>
          parts.reduce((sum, { source, share }) => sum + (gone.includes(source) ? 0 : share), 0);
        expect(answer.leftWithoutLargest).toBeGreaterThan(0.5);
        expect(leftWithout(answer.together)).toBeLessThanOrEqual(0.25 + 1e-12);
        expect(leftWithout(answer.together.slice(0, -1))).toBeGreaterThan(0.25);
      }),
    );
  });
});
