import { describe, expect, test } from "vitest";
import { formatAgainstLimit, formatMeasured, formatUncertainty } from "./format-against-limit.ts";
import { formatNumber } from "./format-number.ts";
import { formatCoverage, formatProbability } from "./format-probability.ts";
import {
  formatBearing,
  formatDepth,
  formatLevel,
  formatOffset,
  formatQuantity,
  formatTwoDigits,
} from "./format-quantity.ts";
import { formatRatio, formatRatioOneIn } from "./format-ratio.ts";

describe("formatNumber", () => {
  test("shows a dash, not zero, where nothing was measured", () => {
    for (const missing of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])
      expect(formatNumber(missing, 2, "en")).toBe("–");
  });
  test("writes the decimal mark of the language asked for and no thousands mark", () => {
    expect(formatNumber(1234567.891, 2, "en")).toBe("1234567.89");
    expect(formatNumber(1234567.891, 2, "de")).toBe("1234567,89");
  });
  test("never shows minus zero, and uses a true minus sign", () => {
    expect(formatNumber(-0.0004, 2, "en")).toBe("0.00");
    expect(formatNumber(-0, 0, "de", { signed: true })).toBe("0");
    expect(formatNumber(-1.5, 1, "en")).toBe("−1.5");
    expect(formatNumber(1.5, 1, "en", { signed: true })).toBe("+1.5");
  });
});

describe("quantities carry their unit and the decimals that suit it", () => {
  test.each([
    [formatQuantity(4.5, "m", "en"), "4.500 m"],
    [formatQuantity(0.377, "deg", "en"), "0.38°"],
    [formatQuantity(0.377, "deg", "de"), "0,38°"],
    [formatQuantity(Number.NaN, "mm", "en"), "–"],
    [formatOffset(0.0634, "en"), "63 mm"],
    [formatLevel(-18.2, "en"), "−18.200 m"],
    [formatLevel(4.5, "de"), "+4,500 m"],
    [formatDepth(12.5, "en"), "12.50 m"],
    [formatBearing(4.96, "en"), "005.0°"],
    [formatBearing(359.97, "en"), "000.0°"],
    [formatMeasured(0.0041, "m/m", "en"), "4.1 mm/m"],
    [formatMeasured(0.075, "m", "en"), "75 mm"],
    [formatMeasured(1.25, "deg", "de"), "1,25°"],
  ])("%s", (shown, expected) => {
    expect(shown).toBe(expected);
  });
  test("a bearing outside the circle is a mistake of ours", () => {
    expect(() => formatBearing(360, "en")).toThrow("formatBearing");
  });
});

describe("ratios", () => {
  test.each([
    [1 / 75, "1 in 75.0"],
    [1 / 13.34, "1 in 13.3"],
    [-1 / 244, "1 in 244"],
    [1 / 99.97, "1 in 100"],
    [0, "1 in ∞"],
    [1e-9, "1 in > 10000"],
    [Number.NaN, "–"],
  ])("%f is %s", (ratio, expected) => {
    expect(formatRatioOneIn(ratio, "en")).toBe(expected);
  });
  test("both ways of writing stand side by side", () => {
    expect(formatRatio(0.0041, "en")).toBe("4.1 mm/m (1 in 244)");
    expect(formatRatio(0.0041, "de")).toBe("4,1 mm/m (1 zu 244)");
  });
});

describe("a value against its limit", () => {
  test("is rounded as usual when the rounded numbers tell the story", () => {
    expect(formatAgainstLimit(0.0634, 0.075, "m", "en")).toEqual({ value: "63 mm", limit: "75 mm" });
  });
  test("gets one digit more when rounding would hide why it failed", () => {
    expect(formatAgainstLimit(0.0754, 0.075, "m", "en")).toEqual({ value: "75.4 mm", limit: "75.0 mm" });
  });
  test("gets as many digits as it takes", () => {
    expect(formatAgainstLimit(0.07500001, 0.075, "m", "en").value).toBe("75.00001 mm");
  });
  test("stays as usual when value and limit are equal, or one is missing", () => {
    expect(formatAgainstLimit(0.075, 0.075, "m", "de")).toEqual({ value: "75 mm", limit: "75 mm" });
    expect(formatAgainstLimit(Number.NaN, 0.075, "m", "en")).toEqual({ value: "–", limit: "75 mm" });
  });
  test("differences of less than a double can carry end the search", () => {
    const { value, limit } = formatAgainstLimit(0.1 + 0.2, 0.3, "deg", "en");
    expect(value).toBe(limit);
  });
});

describe("feet and inches, for those who work in them", () => {
  // 1 in = 25.4 mm exactly; 1/4 in per ft = 20.8333 mm/m
  test.each([
    [formatMeasured(0.0762, "m", "en", "us"), "3.00 in"],
    [formatMeasured(0.25 / 12, "m/m", "en", "us"), "0.250 in/ft"],
    [formatMeasured(1.25, "deg", "en", "us"), "1.25°"],
    [formatUncertainty(0.0254, "m", "de", "us"), "1,00 in"],
  ])("%s", (shown, expected) => {
    expect(shown).toBe(expected);
  });
  test("a value over its limit is seen to be over it", () => {
    expect(formatAgainstLimit(0.07621, 0.0762, "m", "en", "us")).toEqual({
      value: "3.0004 in",
      limit: "3.0000 in",
    });
  });
});

describe("uncertainty", () => {
  test.each([
    [0.0204, "m", "20 mm"],
    [0.0003, "m", "0.3 mm"],
    [0.00049, "m", "0.5 mm"],
    [0.0005, "m", "1 mm"],
    [0, "m", "0 mm"],
    [0.00006, "m/m", "0.1 mm/m"],
    [0.00004, "m/m", "0.04 mm/m"],
    [Number.NaN, "m", "–"],
  ])("%f %s is %s, never nothing", (value, unit, expected) => {
    expect(formatUncertainty(value, unit, "en")).toBe(expected);
  });
  test.each([
    [0.92297, "92.3 %"],
    [0.9991, "> 99.9 %"],
    [1, "> 99.9 %"],
    [0.0002, "< 0.1 %"],
    [Number.NaN, "–"],
  ])("a probability of %f is %s", (probability, expected) => {
    expect(formatProbability(probability, "en")).toBe(expected);
  });
  test.each([
    [0.95, "95 %"],
    [0.975, "97.5 %"],
    [0.29, "29 %"],
    [Number.NaN, "–"],
  ])("a chosen probability of %f is %s", (probability, expected) => {
    expect(formatCoverage(probability, "en")).toBe(expected);
  });
  test.each([
    [0.02, "0.020°"],
    [0.5, "0.50°"],
    [15, "15°"],
    [153, "153°"],
    [0, "0°"],
  ])("%f to two digits is %s", (value, expected) => {
    expect(formatTwoDigits(value, "deg", "en")).toBe(expected);
  });
});
