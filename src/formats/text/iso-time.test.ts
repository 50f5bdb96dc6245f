import { describe, expect, test } from "vitest";
import { isDateOnly, momentOf } from "./iso-time.ts";

describe("a moment", () => {
  test.each([
    ["2026-03-02T07:10:00Z", "2026-03-02T07:10:00.000Z", true],
    ["2026-03-02T08:10:00+01:00", "2026-03-02T07:10:00.000Z", true],
    ["2026-03-02 08:10+0100", "2026-03-02T07:10:00.000Z", true],
    ["2026-03-01T22:10:00-09:00", "2026-03-02T07:10:00.000Z", true],
    ["2026-03-02T07:10:00.25Z", "2026-03-02T07:10:00.250Z", true],
    ["2026-03-02T07:10:00", "2026-03-02T07:10:00.000Z", false],
    ["2026-03-02", "2026-03-02T00:00:00.000Z", false],
    ["2024-02-29", "2024-02-29T00:00:00.000Z", false],
  ])("%s is %s", (text, iso, zoned) => {
    const moment = momentOf(text);
    expect(new Date(moment!.ms).toISOString()).toBe(iso);
    expect(moment?.zoned).toBe(zoned);
  });

  test.each([
    "2026-02-29",
    "2026-13-01",
    "2026-03-02T25:00",
    "2026-03-02T07:61",
    "02.03.2026",
    "03/02/2026",
    "yesterday",
    "",
  ])("%s is none", (text) => {
    expect(momentOf(text)).toBeUndefined();
  });
});

test("a date alone is told from a moment of the day", () => {
  expect(isDateOnly("2026-03-02")).toBe(true);
  expect(isDateOnly("2026-03-02T00:00")).toBe(false);
});
