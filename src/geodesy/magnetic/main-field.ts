import geomagnetism, { type GeomagnetismPoint } from "geomagnetism";
import { degreesFromRadians } from "#core";

export const MODEL_NAME = "WMM2025";
/** Decimal years between which the model holds, as its makers state. */
export const VALID_FROM = 2025;
export const VALID_TO = 2030;

/** Magnetic field of the earth's core at a place and time, nanotesla, and its change in a year. */
export interface MainField {
  readonly northNt: number;
  readonly eastNt: number;
  readonly downNt: number;
  readonly horizontalNt: number;
  readonly totalNt: number;
  readonly northNtPerYear: number;
  readonly eastNtPerYear: number;
  readonly downNtPerYear: number;
}

/**
 * Field of the World Magnetic Model 2025.
 *
 * The coefficients of the model change linearly with time, so its three components do too, exactly. They are therefore
 * taken from the package at two fixed dates and drawn out to the year asked for. This goes round the package's own dates: it
 * counts years of 365 days and refuses the last seven weeks of the model.
 *
 * @param latitudeRad, longitudeRad WGS 84, radians. heightM above the ellipsoid, metres. year decimal year; the caller
 * keeps it between VALID_FROM and VALID_TO.
 * @returns NaN for NaN input.
 * Frame: true north-east-down.
 * Source: World Magnetic Model 2025 (NCEI and BGS) through the npm package geomagnetism 0.2.0.
 * Checked against: test/published/wmm2025
 */
export function mainField(
  latitudeRad: number,
  longitudeRad: number,
  heightM: number,
  year: number,
): MainField {
  const place = [degreesFromRadians(latitudeRad), degreesFromRadians(longitudeRad), heightM / 1000];
  const first = fieldAtStartOf(2025, place);
  const second = fieldAtStartOf(2027, place);
  const years = year - 2025;
  const rate = (component: "x" | "y" | "z"): number => (second[component] - first[component]) / 2;
  const north = first.x + years * rate("x");
  const east = first.y + years * rate("y");
  const down = first.z + years * rate("z");
  return {
    northNt: north,
    eastNt: east,
    downNt: down,
    horizontalNt: Math.hypot(north, east),
    totalNt: Math.hypot(north, east, down),
    northNtPerYear: rate("x"),
    eastNtPerYear: rate("y"),
    downNtPerYear: rate("z"),
  };
}

const fieldAtStartOf = (year: number, place: number[]): GeomagnetismPoint =>
  geomagnetism.model(new Date(Date.UTC(year, 0, 1))).point(place);
