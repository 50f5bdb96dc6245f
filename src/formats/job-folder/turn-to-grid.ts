import {
  type DesignElement,
  fail,
  type HeadingReference,
  type Issue,
  ok,
  type Place,
  type Result,
  radiansFromDegrees,
  wrapToTurn,
} from "#core";
import {
  declinationAt,
  fitLocalGrid,
  gridConvergence,
  localGridRotation,
  type SitePosition,
  sitePosition,
} from "#geodesy";
import type { Finder } from "../finding/finder.ts";
import type { PlaceInput } from "./read-job-json.ts";

type North = HeadingReference["givenNorth"];

/** Taken where a reference gives none. Common practice, no source. */
const DEFAULT_UNCERTAINTY_DEG: Readonly<Record<North, number>> = { magnetic: 1.0, true: 0.5, grid: 0.5 };

/** What was given for one angle; the nearest to the angle counts: at the reference, else at the run, else at the place. */
export interface NorthGiven {
  readonly declination_deg?: number | undefined;
  readonly convergence_deg?: number | undefined;
}

/** From one north to grid north: grid = given + declination - convergence, radians. */
export interface GridTurn {
  readonly declinationRad: number;
  readonly declinationUncertaintyRad: number;
  readonly convergenceRad: number;
}

/** Where the site is, as far as its north matters. Works out the position once. */
export class SiteNorth {
  readonly #place: PlaceInput;
  readonly #elements: readonly DesignElement[];
  #position: Result<SitePosition, readonly Issue[]> | undefined;

  constructor(place: PlaceInput, elements: readonly DesignElement[]) {
    this.#place = place;
    this.#elements = elements;
  }

  /**
   * What must be added to an angle from the given north to count it from grid north (rule C6).
   *
   * On a grid of the site, `"local"`, a given declination alone will do: its north then counts as true north, with a warning.
   *
   * @param given what the reference and its run say, the nearest first.
   * @param date ISO 8601 moment of the run, for the magnetic model.
   * @param field of the angle, for findings.
   * @returns undefined when the run is blocked.
   * Errors: formats.convergence-missing, formats.declination-missing, formats.north-without-date, and those of #geodesy.
   */
  turn(
    north: North,
    given: readonly NorthGiven[],
    date: string | undefined,
    field: string,
    found: Finder,
  ): GridTurn | undefined {
    if (north === "grid") return { declinationRad: 0, declinationUncertaintyRad: 0, convergenceRad: 0 };
    const chain = [...given, this.#place];
    const declination = chain.find((each) => each.declination_deg !== undefined)?.declination_deg;
    const convergence = chain.find((each) => each.convergence_deg !== undefined)?.convergence_deg;
    const convergenceRad = this.#convergence(convergence, declination !== undefined, field, found);
    const magnetic =
      north === "magnetic" ? this.#declination(declination, date, field, found) : NO_DECLINATION;
    if (convergenceRad === undefined || magnetic === undefined) return undefined;
    return { ...magnetic, convergenceRad };
  }

  /** Convergence of the grid at the site, where it is known without asking anybody. */
  convergence(): number | undefined {
    if (this.#place.convergence_deg !== undefined) return radiansFromDegrees(this.#place.convergence_deg);
    if (this.#isUnplaced()) return undefined;
    const position = this.#positionOf({});
    return position.ok ? position.value.convergenceRad : undefined;
  }

  /** Latitude and longitude of the site, given or from the grid. Radians. */
  latitudeAndLongitude(): { latitudeRad: number; longitudeRad: number } | undefined {
    const { latitude_deg: latitude, longitude_deg: longitude } = this.#place;
    if (latitude !== undefined && longitude !== undefined)
      return { latitudeRad: radiansFromDegrees(latitude), longitudeRad: radiansFromDegrees(longitude) };
    if (this.#isUnplaced()) return undefined;
    const position = this.#positionOf({});
    return position.ok ? position.value : undefined;
  }

  /** Findings about the grid itself, told once for the job. */
  checkGrid(found: Finder): void {
    if (this.#isUnplaced()) return;
    const position = this.#positionOf({});
    const field = this.#place.crs === "local" ? "place.common_points" : "place.crs";
    for (const issue of position.ok ? position.value.warnings : position.error)
      tell(issue, field, found, "error");
  }

  /** A grid of the site that nothing lays on the map. */
  #isUnplaced(): boolean {
    return this.#place.crs === "local" && this.#place.common_points === undefined;
  }

  #convergence(
    given: number | undefined,
    declinationGiven: boolean,
    field: string,
    found: Finder,
  ): number | undefined {
    if (given !== undefined) return radiansFromDegrees(given);
    if (this.#isUnplaced()) {
      if (declinationGiven) {
        const values = { found: "local, without convergence_deg", expected: "convergence_deg" };
        found.warning("formats.local-north-as-true", { field }, values);
        return 0;
      }
      const values = { found: "local", expected: "convergence_deg, or declination_deg" };
      found.block("formats.convergence-missing", { field }, values);
      return undefined;
    }
    const position = this.#positionOf({});
    if (position.ok) return position.value.convergenceRad;
    const values = { found: this.#place.crs, expected: "convergence_deg, or a grid that can be worked out" };
    found.block("formats.convergence-missing", { field }, values);
    return undefined;
  }

  #declination(
    given: number | undefined,
    date: string | undefined,
    field: string,
    found: Finder,
  ): Omit<GridTurn, "convergenceRad"> | undefined {
    if (given !== undefined)
      return { declinationRad: radiansFromDegrees(given), declinationUncertaintyRad: 0 };
    const where = this.latitudeAndLongitude();
    if (where === undefined) {
      const values = { found: "no latitude and longitude", expected: "declination_deg, or the place" };
      found.block("formats.declination-missing", { field }, values);
      return undefined;
    }
    if (date === undefined) {
      const values = {
        found: "no date",
        expected: "started_at in the run, dates in its times, or declination_deg",
      };
      found.block("formats.north-without-date", { field }, values);
      return undefined;
    }
    const model = declinationAt({ latRad: where.latitudeRad, lonRad: where.longitudeRad, heightM: 0, date });
    if (!model.ok) {
      for (const issue of model.error) tell(issue, field, found, "block");
      return undefined;
    }
    for (const issue of model.value.warnings) tell(issue, field, found, "error");
    const { declinationRad, standardUncertaintyRad } = model.value;
    return { declinationRad, declinationUncertaintyRad: standardUncertaintyRad };
  }

  #positionOf(place: Place): Result<SitePosition, readonly Issue[]> {
    this.#position ??= this.#locate(place);
    return this.#position;
  }

  #locate(place: Place): Result<SitePosition, readonly Issue[]> {
    const { crs = "local", latitude_deg: latitude, longitude_deg: longitude, common_points } = this.#place;
    if (crs === "local" && common_points !== undefined) return locateByPoints(common_points, place);
    if (latitude !== undefined && longitude !== undefined)
      return gridConvergence(crs, radiansFromDegrees(latitude), radiansFromDegrees(longitude), place);
    const mean = (of: (element: DesignElement) => number): number =>
      this.#elements.reduce((sum, element) => sum + of(element), 0) / this.#elements.length;
    return sitePosition(
      crs,
      mean(({ head }) => head.east),
      mean(({ head }) => head.north),
      place,
    );
  }
}

/** Residual of a common point that counts as good where the job names none, metres. Common practice, no source. */
const USUAL_RESIDUAL_M = 0.05;

/**
 * A site grid laid on a map grid through common points: its convergence is that of the map less the turn of the site's axes in the
 * map (positive anticlockwise), because a bearing counts from the site's north.
 */
function locateByPoints(
  { map, points, residual_limit_m: residualM = USUAL_RESIDUAL_M }: NonNullable<PlaceInput["common_points"]>,
  place: Place,
): Result<SitePosition, readonly Issue[]> {
  const fitted = fitLocalGrid(
    points.map((point) => ({
      name: point.name,
      local: { east: point.local_east_m, north: point.local_north_m },
      grid: { east: point.map_east_m, north: point.map_north_m },
    })),
    { residualM, scale: undefined },
    place,
  );
  if (!fitted.ok) return fitted;
  const { grid, findings } = fitted.value;
  const wrong = findings.filter(({ severity }) => severity === "error");
  if (wrong.length > 0) return fail(wrong);
  const onMap = sitePosition(map, grid.gridCentre.east, grid.gridCentre.north, place);
  if (!onMap.ok) return onMap;
  return ok({
    ...onMap.value,
    convergenceRad: onMap.value.convergenceRad - localGridRotation(grid),
    warnings: [...onMap.value.warnings, ...findings],
  });
}

const NO_DECLINATION = { declinationRad: 0, declinationUncertaintyRad: 0 };

/** Passes a finding of another layer on, at the place where the angle stands. */
function tell(issue: Issue, field: string, found: Finder, as: "block" | "error"): void {
  if (issue.severity === "warning") found.warning(issue.code, { field }, issue.values);
  else if (as === "block") found.block(issue.code, { field }, issue.values);
  else found.error(issue.code, { field }, issue.values);
}

/** Azimuth counted from grid north, radians in [0, 2 pi). */
export const gridAngle = (givenRad: number, turn: GridTurn): number =>
  wrapToTurn(givenRad + turn.declinationRad - turn.convergenceRad);

/** Standard uncertainty of a heading by itself, without that of the declination: as given, else the usual one. */
export const ownUncertainty = (north: North, givenDeg: number | undefined): number =>
  radiansFromDegrees(givenDeg ?? DEFAULT_UNCERTAINTY_DEG[north]);
