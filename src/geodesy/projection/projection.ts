import proj4 from "proj4";
import {
  degreesFromRadians,
  type Issue,
  ok,
  type Place,
  type Result,
  radiansFromDegrees,
  wrapToPi,
} from "#core";
import type { CrsDefinition } from "../epsg/crs-definition.ts";
import { findCrs } from "../epsg/find-crs.ts";
import { type LocalScale, localScale } from "./local-scale.ts";

/** Latitude and longitude on the ellipsoid of the CRS's own datum, radians, longitude from Greenwich. */
export interface Geodetic {
  readonly latitudeRad: number;
  readonly longitudeRad: number;
}

/** Map coordinates, metres, also where the CRS counts in feet; east and north, also where it counts west and south. */
export interface EastNorth {
  readonly east: number;
  readonly north: number;
}

/**
 * A map projection on its own ellipsoid. Latitude and longitude are those of the CRS's own datum everywhere: no
 * method moves between datums, because that needs grid files for anything better than metres.
 */
export interface Projection {
  readonly definition: CrsDefinition;
  /** NaN where the projection cannot reach. */
  forward(place: Geodetic): EastNorth;
  /** NaN where the projection cannot reach. */
  inverse(point: EastNorth): Geodetic;
  /** Convergence, scale and distortion at a place. */
  at(place: Geodetic): LocalScale;
}

/** Map coordinates further than this from the middle of the area, half way round the earth, belong to no place; proj4 may throw on them. */
const REACH_M = 2e7;

const NOWHERE: Geodetic = { latitudeRad: Number.NaN, longitudeRad: Number.NaN };

/** Middle of the area of use. */
function middleOf({ area }: CrsDefinition): Geodetic {
  const width = (((area.eastDeg - area.westDeg) % 360) + 360) % 360 || 360;
  return {
    latitudeRad: radiansFromDegrees((area.southDeg + area.northDeg) / 2),
    longitudeRad: wrapToPi(radiansFromDegrees(area.westDeg + width / 2)),
  };
}

/**
 * The projection of a definition.
 *
 * Accuracy: published worked examples are met within 1 mm (test/published/transverse-mercator) and
 * 2 cm (other methods, test/published/map-projections); forward and inverse agree within 1 mm for every CRS of the table.
 */
export function projectionOf(definition: CrsDefinition): Projection {
  const projected = new proj4.Proj(definition.projection);
  const ellipsoid = { semiMajorM: projected.a as number, eccentricitySquared: projected.es };
  // Same ellipsoid on both sides and no datum named: proj4 shifts nothing between the two.
  const converter = proj4(
    `+proj=longlat +a=${ellipsoid.semiMajorM} +b=${projected.b as number}`,
    definition.projection,
  );
  const forward = (place: Geodetic): EastNorth => {
    const [east = Number.NaN, north = Number.NaN] = converter.forward([
      degreesFromRadians(place.longitudeRad),
      degreesFromRadians(place.latitudeRad),
    ]);
    return { east, north };
  };
  const inverse = (point: EastNorth): Geodetic => {
    const [longitude = Number.NaN, latitude = Number.NaN] = converter.inverse([point.east, point.north]);
    const place = { latitudeRad: radiansFromDegrees(latitude), longitudeRad: radiansFromDegrees(longitude) };
    return isPlace(place) ? place : NOWHERE;
  };
  const middle = forward(middleOf(definition));
  const isNear = (point: EastNorth): boolean =>
    Math.hypot(point.east - middle.east, point.north - middle.north) <= REACH_M;
  return {
    definition,
    forward: (place) => (isPlace(place) ? forward(place) : { east: Number.NaN, north: Number.NaN }),
    inverse: (point) => (isNear(point) ? inverse(point) : NOWHERE),
    at: (place) => localScale(forward, ellipsoid, place),
  };
}

/** Finite, and on the globe: proj4 throws on anything else. */
export function isPlace(place: Geodetic): boolean {
  return Math.abs(place.latitudeRad) <= Math.PI / 2 && Math.abs(place.longitudeRad) <= 2 * Math.PI;
}

/**
 * The map projection of a CRS.
 *
 * @param crs "EPSG:n".
 * Errors: those of findCrs.
 * Frame: map grid, east and north, metres.
 * Source: proj4 2.22.0; definitions from the EPSG Geodetic Parameter Dataset.
 * Checked against: test/published/transverse-mercator, test/published/map-projections
 */
export function projectionFor(crs: string, place: Place = {}): Result<Projection, readonly Issue[]> {
  const definition = findCrs(crs, place);
  return definition.ok ? ok(projectionOf(definition.value)) : definition;
}
