import {
  degreesFromRadians,
  fail,
  type Issue,
  ok,
  type Place,
  type Result,
  radiansFromDegrees,
  wrapToPi,
} from "#core";
import type { CrsDefinition } from "../epsg/crs-definition.ts";
import { geodesyIssue } from "../geodesy-issue.ts";
import { type EastNorth, type Geodetic, isPlace, type Projection, projectionFor } from "./projection.ts";

/**
 * How far apart the latitude and longitude of two datums are taken to be, metres.
 * "global" datums (WGS 84, ETRS89, NAD83, GDA94 and the like) agree within about 2 m (from memory; plate motion since
 * their epochs included). Older national datums lie up to several hundred metres off (from memory).
 */
const GLOBAL_DATUM_M = 3;
const OTHER_DATUM_M = 1000;

/** Beyond this the map turns bearings by direction, and one convergence does not do. Well below what any heading is known to. */
const LARGEST_DISTORTION_RAD = radiansFromDegrees(0.05);

/** Survey grids stay within this of scale 1 (UTM: 0.9996 to 1.001); more means the wrong grid or a map of the world. */
const LARGEST_SCALE_DIFFERENCE = 0.005;

/** Mean radius; three digits do. */
const EARTH_RADIUS_M = 6.37e6;

/** Slack round the area of use, degrees: sites stand on borders. */
const AREA_MARGIN_DEG = 0.5;

/** The site on the globe and its map there. */
export interface SitePosition extends Geodetic {
  /** how far the latitude and longitude may lie from those of WGS 84, metres: enough for north and earth rate, not for setting out */
  readonly datumAccuracyM: number;
  readonly convergenceRad: number;
  /** what `datumAccuracyM` can do to the convergence, radians */
  readonly convergenceUncertaintyRad: number;
  readonly scale: number;
  readonly warnings: readonly Issue[];
}

/** How far latitude and longitude of the CRS's own datum may lie from those of WGS 84, metres. */
export function datumAccuracyM(definition: CrsDefinition): number {
  return definition.datumShift.kind === "global" ? GLOBAL_DATUM_M : OTHER_DATUM_M;
}

function isInArea({ area }: CrsDefinition, place: Geodetic): boolean {
  const latitude = degreesFromRadians(place.latitudeRad);
  const fromWest = degreesFromRadians(place.longitudeRad) - area.westDeg + AREA_MARGIN_DEG;
  const width = (((area.eastDeg - area.westDeg) % 360) + 360) % 360 || 360;
  return (
    latitude >= area.southDeg - AREA_MARGIN_DEG &&
    latitude <= area.northDeg + AREA_MARGIN_DEG &&
    ((fromWest % 360) + 360) % 360 <= width + 2 * AREA_MARGIN_DEG
  );
}

function positionAt(
  projection: Projection,
  site: Geodetic,
  place: Place,
): Result<SitePosition, readonly Issue[]> {
  const { definition } = projection;
  const local = projection.at(site);
  const crs = definition.crs;
  const accuracyM = datumAccuracyM(definition);
  const convergenceUncertaintyRad = convergenceChange(projection, site, accuracyM);
  if (![local.convergenceRad, local.scale, convergenceUncertaintyRad].every(Number.isFinite))
    return fail([geodesyIssue("geodesy.place-out-of-reach", { crs, name: definition.name }, place)]);
  if (!(local.distortionRad <= LARGEST_DISTORTION_RAD))
    return fail([geodesyIssue("geodesy.no-single-convergence", { crs, name: definition.name }, place)]);
  const warnings: Issue[] = [];
  if (!isInArea(definition, site))
    warnings.push(
      geodesyIssue(
        "geodesy.outside-area",
        {
          crs,
          name: definition.name,
          latitude: degreesFromRadians(site.latitudeRad).toFixed(4),
          longitude: degreesFromRadians(site.longitudeRad).toFixed(4),
        },
        place,
        "warning",
      ),
    );
  if (!(Math.abs(local.scale - 1) <= LARGEST_SCALE_DIFFERENCE))
    warnings.push(
      geodesyIssue("geodesy.scale-far-from-one", { crs, scale: local.scale.toFixed(5) }, place, "warning"),
    );
  return ok({
    latitudeRad: site.latitudeRad,
    longitudeRad: site.longitudeRad,
    datumAccuracyM: accuracyM,
    convergenceRad: local.convergenceRad,
    convergenceUncertaintyRad,
    scale: local.scale,
    warnings,
  });
}

/** Change of the convergence when the place moves east by the given distance, radians; at the poles up to a quarter turn. */
function convergenceChange(projection: Projection, site: Geodetic, distanceM: number): number {
  const turn = Math.min(distanceM / (EARTH_RADIUS_M * Math.cos(site.latitudeRad)), Math.PI / 2);
  const moved = projection.at({ ...site, longitudeRad: wrapToPi(site.longitudeRad + turn) });
  return Math.abs(wrapToPi(moved.convergenceRad - projection.at(site).convergenceRad));
}

/**
 * Convergence and scale of a grid at a place given by latitude and longitude.
 *
 * Latitude and longitude of any datum will do: see `convergenceUncertaintyRad`, at most some 0.02 degrees below 60 degrees
 * of latitude, against 0.3 degrees and more for a declination. No grid file is needed for this.
 *
 * @param crs "EPSG:n".
 * @param latitudeRad, longitudeRad radians, longitude positive east of Greenwich.
 * Errors: those of findCrs; geodesy.place-out-of-reach, geodesy.no-single-convergence. Warnings: geodesy.outside-area,
 * geodesy.scale-far-from-one.
 * Frame: grid bearing = true bearing - convergence.
 * Source: see localScale.
 * Checked against: test/published/transverse-mercator
 */
export function gridConvergence(
  crs: string,
  latitudeRad: number,
  longitudeRad: number,
  place: Place = {},
): Result<SitePosition, readonly Issue[]> {
  const projection = projectionFor(crs, place);
  return projection.ok ? positionAt(projection.value, { latitudeRad, longitudeRad }, place) : projection;
}

/**
 * Where a point of the grid lies on the globe, with convergence and scale there.
 *
 * The latitude and longitude are those of the CRS's own datum; `datumAccuracyM` says how far they may be from WGS 84.
 *
 * @param crs "EPSG:n".
 * @param east, north metres, also where the CRS counts in feet.
 * Errors and warnings: as gridConvergence.
 * Frame: map grid.
 * Source: proj4 2.22.0, see projectionFor.
 * Checked against: test/published/transverse-mercator
 */
export function sitePosition(
  crs: string,
  east: number,
  north: number,
  place: Place = {},
): Result<SitePosition, readonly Issue[]> {
  const projection = projectionFor(crs, place);
  return projection.ok
    ? positionAt(projection.value, projection.value.inverse({ east, north }), place)
    : projection;
}

/**
 * Map coordinates of a WGS 84 position (a satellite receiver's), only where the program can keep the accuracy asked for.
 *
 * Refused for a datum whose distance from WGS 84 is not known here: such positions need the grid file or parameters of
 * the survey authority, and belong to the surveyor's own software.
 *
 * @param neededAccuracyM accuracy that the caller needs, metres; below 3 m everything is refused.
 * Errors: those of findCrs; geodesy.needs-grid-file, geodesy.datum-accuracy, geodesy.place-out-of-reach.
 * Frame: map grid.
 * Source: proj4 2.22.0; datum figures from memory, see GLOBAL_DATUM_M.
 */
export function gridFromWgs84(
  crs: string,
  site: Geodetic,
  neededAccuracyM: number,
  place: Place = {},
): Result<EastNorth, readonly Issue[]> {
  const projection = projectionFor(crs, place);
  if (!projection.ok) return projection;
  const { definition } = projection.value;
  const accuracyM = datumAccuracyM(definition);
  if (!(neededAccuracyM >= accuracyM)) {
    const { datumShift } = definition;
    return fail([
      datumShift.kind === "grid-file"
        ? geodesyIssue("geodesy.needs-grid-file", { crs: definition.crs, file: datumShift.file }, place)
        : geodesyIssue(
            "geodesy.datum-accuracy",
            { crs: definition.crs, found: accuracyM, expected: neededAccuracyM },
            place,
          ),
    ]);
  }
  const point = projection.value.forward(site);
  return isPlace(site) && Number.isFinite(point.east) && Number.isFinite(point.north)
    ? ok(point)
    : fail([
        geodesyIssue("geodesy.place-out-of-reach", { crs: definition.crs, name: definition.name }, place),
      ]);
}
