import { fail, type Issue, ok, type Place, type Result, radiansFromDegrees } from "#core";
import { geodesyIssue } from "../geodesy-issue.ts";
import { decimalYear } from "./decimal-year.ts";
import { MODEL_NAME, mainField, VALID_FROM, VALID_TO } from "./main-field.ts";

export interface PlaceAndDate {
  /** WGS 84 latitude, radians; any datum will do */
  readonly latRad: number;
  /** longitude from Greenwich, radians, positive east */
  readonly lonRad: number;
  /** metres above the ellipsoid; height above sea level will do */
  readonly heightM: number;
  /** ISO 8601 date or time */
  readonly date: string;
}

export interface Declination {
  /** true = magnetic + declination; positive where the needle points east of true north. Radians, (-pi, pi]. */
  readonly declinationRad: number;
  /** of the model against the undisturbed field in the open, k = 1, radians; steel nearby is not in it */
  readonly standardUncertaintyRad: number;
  readonly annualChangeRad: number;
  readonly horizontalNt: number;
  readonly totalNt: number;
  readonly model: string;
  /** ISO 8601 days between which the model holds; the second one is the first that is too late */
  readonly validFrom: string;
  readonly validTo: string;
  readonly warnings: readonly Issue[];
}

/** Parts of the model's declination error: a constant one, degrees, and one that grows as the horizontal field weakens. */
const CONSTANT_ERROR_DEG = 0.26;
const FIELD_ERROR_DEG_NT = 5417;

/** Horizontal field below which the makers say not to use a compass, and below which to use it with caution, nT (from memory). */
const NO_COMPASS_BELOW_NT = 2000;
const CAUTION_BELOW_NT = 6000;

/**
 * Magnetic declination with its uncertainty, from the World Magnetic Model 2025.
 *
 * The model holds the field of the earth's core only: rock, storms and above all steel come on top. Inside casings, cages,
 * sheet piles or beside rigs a compass heading means nothing, whatever the model.
 *
 * Errors: geodesy.bad-date, geodesy.bad-place, geodesy.date-outside-model, geodesy.no-compass-here.
 * Warnings: geodesy.weak-horizontal-field.
 * Frame: true north.
 * Source: WMM2025 through geomagnetism 0.2.0; uncertainty sqrt(0.26^2 + (5417/H)^2) degrees: constants from the makers' own
 * package, the root of the sum of squares from memory.
 * Checked against: test/published/wmm2025
 */
export function declinationAt(where: PlaceAndDate, place: Place = {}): Result<Declination, readonly Issue[]> {
  const { latRad, lonRad, heightM, date } = where;
  const year = decimalYear(date);
  if (year === undefined) return fail([geodesyIssue("geodesy.bad-date", { date }, place)]);
  if (!(Math.abs(latRad) <= Math.PI / 2 && Math.abs(lonRad) <= 2 * Math.PI && Number.isFinite(heightM)))
    return fail([geodesyIssue("geodesy.bad-place", {}, place)]);
  if (!(year >= VALID_FROM && year < VALID_TO))
    return fail([
      geodesyIssue(
        "geodesy.date-outside-model",
        { date, model: MODEL_NAME, from: VALID_FROM, to: VALID_TO },
        place,
      ),
    ]);
  const field = mainField(latRad, lonRad, heightM, year);
  const horizontal = field.horizontalNt;
  const values = { horizontal: Math.round(horizontal) };
  if (!(horizontal >= NO_COMPASS_BELOW_NT))
    return fail([geodesyIssue("geodesy.no-compass-here", values, place)]);
  return ok({
    declinationRad: Math.atan2(field.eastNt, field.northNt),
    standardUncertaintyRad: radiansFromDegrees(
      Math.hypot(CONSTANT_ERROR_DEG, FIELD_ERROR_DEG_NT / horizontal),
    ),
    annualChangeRad:
      (field.northNt * field.eastNtPerYear - field.eastNt * field.northNtPerYear) / horizontal ** 2,
    horizontalNt: horizontal,
    totalNt: field.totalNt,
    model: MODEL_NAME,
    validFrom: `${VALID_FROM}-01-01`,
    validTo: `${VALID_TO}-01-01`,
    warnings:
      horizontal < CAUTION_BELOW_NT
        ? [geodesyIssue("geodesy.weak-horizontal-field", values, place, "warning")]
        : [],
  });
}
