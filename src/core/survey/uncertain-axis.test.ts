import { describe, expect, test } from "vitest";
import { covarianceOf, differenceBetween, differenceOf, type Effect } from "./uncertain-axis.ts";

const effect = (key: string | undefined, ...values: number[]): Effect => ({
  source: "tilt-zero-x",
  key,
  values: Float64Array.from(values),
});

describe("[E2] sums of effects", () => {
  test("each unit of chance gives its outer product", () => {
    expect(covarianceOf([effect(undefined, 1, 2, 3, 0, 0, 4), effect("a", 2, 0, 0)])).toEqual([
      5, 2, 3, 4, 6, 25,
    ]);
    expect(covarianceOf([])).toEqual([0, 0, 0, 0, 0, 0]);
  });

  test("a missing effect makes the covariance missing, not small", () => {
    expect(covarianceOf([effect("a", Number.NaN, 0, 0), effect("b", 1, 1, 1)])[0]).toBeNaN();
  });
});

describe("[E3] differences", () => {
  const first = [effect("calibration 1", 1, 0, 0), effect(undefined, 0, 3, 0)];

  test("what two points of one axis share falls out", () => {
    expect(covarianceOf(differenceOf(first, first))).toEqual([0, 0, 0, 0, 0, 0]);
  });

  test("two axes: one value for the same key, independent values for all that has none", () => {
    const [nn, , , ee] = covarianceOf(differenceBetween(first, first));
    expect(nn).toBe(0);
    expect(ee).toBe(18);
    const other = [effect("calibration 2", 1, 0, 0)];
    expect(covarianceOf(differenceBetween(first, other))[0]).toBe(2);
  });
});
