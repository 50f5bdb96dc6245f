import { describe, expect, test } from "vitest";
import {
  budgetEntry,
  budgetKey,
  budgetKeys,
  budgetOf,
  classBudget,
  sourceValueFromSi,
  sourceValueToSi,
} from "./budget.ts";
import { sourceKinds } from "./error-source.ts";
import { instrumentClasses } from "./instrument-class.ts";

describe("[E1] budgets as data", () => {
  test("every source has a key of its own, with its unit, that leads back to it", () => {
    expect(budgetKeys.size).toBe(sourceKinds.length);
    for (const { id } of sourceKinds) expect(budgetKeys.get(budgetKey(id))).toBe(id);
    expect(budgetKey("tilt-noise")).toBe("tilt-noise_deg");
    expect(budgetKey("gyro-noise")).toBe("gyro-noise_deg_per_sqrt_h");
    expect(budgetKey("depth-scale")).toBe("depth-scale");
  });

  test("units: a degree an hour is pi / 648,000 rad/s, a degree per root hour pi / 10,800 rad per root second", () => {
    expect(sourceValueToSi("gyro-bias", 1)).toBeCloseTo(Math.PI / 648_000, 18);
    expect(sourceValueToSi("gyro-noise", 1)).toBeCloseTo(Math.PI / 10_800, 15);
    for (const { id } of sourceKinds)
      expect(sourceValueFromSi(id, sourceValueToSi(id, 0.37))).toBeCloseTo(0.37, 14);
  });

  test("the later entry of a source counts", () => {
    const budget = budgetOf([budgetEntry("seating", 1, "first"), budgetEntry("seating", 2, "second")]);
    expect([...budget.values()].map(({ value, from }) => [value, from])).toEqual([[2, "second"]]);
  });

  test.each(instrumentClasses)("class $id names no source twice and no value below 0", (instrument) => {
    const entries = classBudget(instrument);
    expect(new Set(entries.map(({ source }) => source)).size).toBe(entries.length);
    for (const { value } of entries) expect(value).toBeGreaterThan(0);
  });
});
