import { describe, expect, test } from "vitest";
import { ContractError } from "../result.ts";
import { depthScale } from "./depth-scale.ts";

describe("[B4] depth scale", () => {
  test("5 m, 20113 and 20108 counts: worked by hand", () => {
    // mean 20110.5; standard uncertainty of the mean |20113 - 20108| / 2 = 2.5 counts
    const scale = depthScale(5, [20113, 20108]);
    expect(scale.metresPerCount).toBeCloseTo(5 / 20110.5, 18);
    expect(scale.standardUncertainty).toBeCloseTo((5 / 20110.5) * (2.5 / 20110.5), 18);
    expect(scale.repeats).toBe(2);
  });

  test("a single pull has no scatter to judge it by: its uncertainty is not known, not 0", () => {
    expect(depthScale(10, [1000])).toEqual({
      metresPerCount: 0.01,
      standardUncertainty: Number.NaN,
      repeats: 1,
    });
  });

  test("a device that counts downwards has a negative scale and a positive uncertainty", () => {
    const scale = depthScale(1, [-99, -101]);
    expect(scale.metresPerCount).toBe(-0.01);
    expect(scale.standardUncertainty).toBeCloseTo(1e-4, 15);
  });

  test.each([[[]], [[Number.NaN]], [[5, Number.POSITIVE_INFINITY]], [[3, -3]]])("refuses %j", (counts) => {
    expect(() => depthScale(1, counts)).toThrow(ContractError);
  });
});
