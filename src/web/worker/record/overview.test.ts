import { expect, test } from "vitest";
import { weekOf } from "./overview.ts";

test("weeks are those of the calendar at the turn of years", () => {
  // known calendar weeks: 2020 has 53, 1 January 2021 is a Friday of the last week of 2020
  expect(weekOf("2021-01-01T10:00:00+01:00")).toBe("2020-W53");
  expect(weekOf("2021-01-04T00:00:00Z")).toBe("2021-W01");
  expect(weekOf("2024-12-30T08:00:00Z")).toBe("2025-W01");
  expect(weekOf("2026-03-03T07:30:00Z")).toBe("2026-W10");
});

test("a run without a time belongs to no week", () => {
  expect(weekOf(undefined)).toBe("");
  expect(weekOf("yesterday")).toBe("");
});
