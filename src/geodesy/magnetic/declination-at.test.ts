import { describe, expect, test } from "vitest";
import { degreesFromRadians, RADIANS_PER_DEGREE } from "#core";
import report from "../../../test/published/wmm2025/test-12.json" with { type: "json" };
import precise from "../../../test/published/wmm2025/test-100.json" with { type: "json" };
import { codesOf, valueFrom } from "../../../test/support/results.ts";
import { decimalYear } from "./decimal-year.ts";
import { declinationAt } from "./declination-at.ts";
import { type MainField, mainField } from "./main-field.ts";

/** Values of a row by the first part of the column's name ("X_nT" -> X, "Xdot_nT_yr" -> Xdot). */
function named(columns: readonly string[], row: readonly number[]): (name: string) => number {
  return (name) => {
    const index = columns.indexOf(name);
    if (index < 0) throw new Error(`no column ${name}`);
    return row[index] ?? Number.NaN;
  };
}

const fieldOf = (value: (name: string) => number, height: string): MainField =>
  mainField(
    value("lat_deg") * RADIANS_PER_DEGREE,
    value("lon_deg") * RADIANS_PER_DEGREE,
    value(height) * 1000,
    value("date_decimal_year"),
  );

/** Rates of a field by the rules of differentiation. */
function ratesOf(field: MainField): {
  horizontal: number;
  total: number;
  declinationDeg: number;
  dipDeg: number;
} {
  const { northNt: x, eastNt: y, downNt: z, horizontalNt: h, totalNt: f } = field;
  const horizontal = (x * field.northNtPerYear + y * field.eastNtPerYear) / h;
  return {
    horizontal,
    total: (h * horizontal + z * field.downNtPerYear) / f,
    declinationDeg: degreesFromRadians((x * field.eastNtPerYear - y * field.northNtPerYear) / h ** 2),
    dipDeg: degreesFromRadians((h * field.downNtPerYear - z * horizontal) / f ** 2),
  };
}

/** At most half the last printed digit, with a little for the rounding of halves. */
function expectPrinted(computed: number, printed: number, digit: number, what: string): void {
  expect(Math.abs(computed - printed), `${what}: ${computed} printed ${printed}`).toBeLessThanOrEqual(
    0.5 * digit + 0.01 * digit,
  );
}

describe("[C6] World Magnetic Model 2025", () => {
  test.each(report.rows.map((row, index) => [index + 1, row] as const))(
    "test value row %i of the report",
    (_n, row) => {
      const value = named(report.columns, row);
      const field = fieldOf(value, "height_km_wgs84");
      const rates = ratesOf(field);
      expectPrinted(field.northNt, value("X_nT"), 0.1, "X");
      expectPrinted(field.eastNt, value("Y_nT"), 0.1, "Y");
      expectPrinted(field.downNt, value("Z_nT"), 0.1, "Z");
      expectPrinted(field.horizontalNt, value("H_nT"), 0.1, "H");
      expectPrinted(field.totalNt, value("F_nT"), 0.1, "F");
      expectPrinted(degreesFromRadians(Math.atan2(field.eastNt, field.northNt)), value("D_deg"), 0.01, "D");
      expectPrinted(
        degreesFromRadians(Math.atan2(field.downNt, field.horizontalNt)),
        value("I_deg"),
        0.01,
        "I",
      );
      expectPrinted(field.northNtPerYear, value("Xdot_nT_yr"), 0.1, "rate of X");
      expectPrinted(field.eastNtPerYear, value("Ydot_nT_yr"), 0.1, "rate of Y");
      expectPrinted(field.downNtPerYear, value("Zdot_nT_yr"), 0.1, "rate of Z");
      expectPrinted(rates.horizontal, value("Hdot_nT_yr"), 0.1, "rate of H");
      expectPrinted(rates.total, value("Fdot_nT_yr"), 0.1, "rate of F");
      expectPrinted(rates.declinationDeg, value("Ddot_deg_yr"), 0.01, "rate of D");
      expectPrinted(rates.dipDeg, value("Idot_deg_yr"), 0.01, "rate of I");
    },
  );

  test("100 rows of high precision", () => {
    expect(precise.rows).toHaveLength(100);
    for (const [index, row] of precise.rows.entries()) {
      const value = named(precise.columns, row);
      const field = fieldOf(value, "height_km");
      const rates = ratesOf(field);
      const near = (computed: number, name: string, tolerance: number): void =>
        expect(Math.abs(computed - value(name)), `row ${index + 1}, ${name}`).toBeLessThan(tolerance);
      near(field.northNt, "X_nT", 1e-3);
      near(field.eastNt, "Y_nT", 1e-3);
      near(field.downNt, "Z_nT", 1e-3);
      near(field.horizontalNt, "H_nT", 1e-3);
      near(field.totalNt, "F_nT", 1e-3);
      near(field.northNtPerYear, "dX_nT_yr", 1e-4);
      near(field.eastNtPerYear, "dY_nT_yr", 1e-4);
      near(field.downNtPerYear, "dZ_nT_yr", 1e-4);
      near(rates.horizontal, "dH_nT_yr", 1e-4);
      near(rates.total, "dF_nT_yr", 1e-4);
      near(rates.declinationDeg, "dD_deg_yr", 1e-5);
      near(rates.dipDeg, "dI_deg_yr", 1e-5);
      near(degreesFromRadians(Math.atan2(field.eastNt, field.northNt)), "D_deg", 0.0051);
      near(degreesFromRadians(Math.atan2(field.downNt, field.horizontalNt)), "I_deg", 0.0051);
    }
  });
});

const london = { latRad: 51.5 * RADIANS_PER_DEGREE, lonRad: 0, heightM: 0 };

describe("[C6] declination with its uncertainty", () => {
  test("row 1 and row 7 of the report, by date", () => {
    const place = { latRad: 80 * RADIANS_PER_DEGREE, lonRad: 0, heightM: 0 };
    const first = valueFrom(declinationAt({ ...place, date: "2025-01-01" }));
    expect(degreesFromRadians(first.declinationRad)).toBeCloseTo(1.28, 2);
    const later = valueFrom(declinationAt({ ...place, date: "2027-07-02T12:00:00Z" }));
    expect(degreesFromRadians(later.declinationRad)).toBeCloseTo(2.59, 2);
    expect(degreesFromRadians(first.annualChangeRad)).toBeCloseTo(0.52, 2);
    expect(first.model).toBe("WMM2025");
  });

  test("uncertainty is the root of 0.26 degrees squared and 5417 nT over the horizontal field squared", () => {
    const found = valueFrom(declinationAt({ ...london, date: "2026-03-02" }));
    // Worked by hand: 20000 nT gives 0.375 degrees, 17500 nT 0.404.
    expect(found.horizontalNt).toBeGreaterThan(17500);
    expect(found.horizontalNt).toBeLessThan(20000);
    expect(degreesFromRadians(found.standardUncertaintyRad)).toBeGreaterThan(0.375);
    expect(degreesFromRadians(found.standardUncertaintyRad)).toBeLessThan(0.404);
    expect(found.warnings).toEqual([]);
  });

  test("holds to the last moment of 2029, in step with the years before", () => {
    const at = (date: string): number => valueFrom(declinationAt({ ...london, date })).declinationRad;
    const step = at("2029-12-31T23:59:59Z") - at("2028-12-31T23:59:59Z");
    expect(step / (at("2028-12-31T23:59:59Z") - at("2027-12-31T23:59:59Z"))).toBeCloseTo(1, 2);
  });

  test.each(["2024-12-31T23:59:59Z", "2030-01-01", "2019-06-01", "2031-01-01", "1999-01-01"])(
    "%s lies outside the model",
    (date) => {
      expect(codesOf(declinationAt({ ...london, date }))).toEqual(["geodesy.date-outside-model"]);
    },
  );

  test.each([
    "",
    "2026",
    "02.03.2026",
    "2026-13-01",
    "2026-02-29",
    "2026-00-10",
    "2026-04-31",
    "2026-03-02T25:00",
    "now",
  ])("%j is no date", (date) => {
    expect(codesOf(declinationAt({ ...london, date }))).toEqual(["geodesy.bad-date"]);
  });

  test("missing or impossible places are refused", () => {
    const date = "2026-03-02";
    for (const place of [
      { ...london, latRad: Number.NaN },
      { ...london, lonRad: Number.NaN },
      { ...london, heightM: Number.NaN },
      { ...london, latRad: 2 },
    ])
      expect(codesOf(declinationAt({ ...place, date }))).toEqual(["geodesy.bad-place"]);
  });

  test("near the magnetic poles a compass is refused, or warned of", () => {
    // Row 1 of the 100 rows: 1504 nT horizontal.
    const near = { latRad: 89 * RADIANS_PER_DEGREE, lonRad: -121 * RADIANS_PER_DEGREE, heightM: 28000 };
    expect(codesOf(declinationAt({ ...near, date: "2025-01-01" }))).toEqual(["geodesy.no-compass-here"]);
    // Row 2: 2164 nT.
    const further = { latRad: 80 * RADIANS_PER_DEGREE, lonRad: -96 * RADIANS_PER_DEGREE, heightM: 48000 };
    const found = valueFrom(declinationAt({ ...further, date: "2025-01-01" }));
    expect(found.warnings.map((one) => one.code)).toEqual(["geodesy.weak-horizontal-field"]);
  });
});

describe("decimal year", () => {
  test.each([
    ["2025-01-01", 2025],
    ["2028-07-02", 2028 + 183 / 366],
    ["2027-07-02T12:00:00Z", 2027.5],
    ["2028-12-31T24:00Z", 2029],
    ["2026-01-01T02:00:00+02:00", 2026],
    ["2026-01-01T00:00:00-0500", 2026 + 5 / 24 / 365],
    ["2025-12-31T23:59:59.5Z", 2026 - 0.5 / 86400 / 365],
    ["2028-02-29", 2028 + 59 / 366],
    ["2100-03-01", 2100 + 59 / 365],
  ])("%s", (iso, year) => {
    expect(decimalYear(iso)).toBeCloseTo(year, 10);
  });
});
