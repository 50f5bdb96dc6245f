import { wrapToPi } from "#core";
import type { EastNorth, Geodetic } from "./projection.ts";

/** How the map stands to the ground at a place. */
export interface LocalScale {
  /** C in: grid bearing = true bearing - C. Positive east of the central meridian in the northern hemisphere. Radians, (-pi, pi]. */
  readonly convergenceRad: number;
  /** map distance over distance on the ellipsoid, along the meridian */
  readonly scale: number;
  /** largest error of a bearing turned by the convergence alone, radians; 0 for a conformal projection */
  readonly distortionRad: number;
}

export interface Ellipsoid {
  readonly semiMajorM: number;
  readonly eccentricitySquared: number;
}

/**
 * Length of the step each way, metres. From 1 m to 1000 m the transverse Mercator examples come out alike to 0.01" and
 * 2e-9 in scale; below 1 m the rounding of map coordinates shows.
 */
const STEP_M = 10;

/**
 * Convergence and scale of a projection at a place, by small steps along the meridian and the parallel.
 *
 * NaN in any result where the projection cannot reach, at the poles, and for NaN input.
 *
 * Frame: map grid and true north.
 * Source: definition of convergence and point scale; radii of curvature of the ellipsoid in meridian and prime vertical.
 * Checked against: test/published/transverse-mercator
 */
export function localScale(
  forward: (place: Geodetic) => EastNorth,
  ellipsoid: Ellipsoid,
  place: Geodetic,
): LocalScale {
  const { semiMajorM, eccentricitySquared } = ellipsoid;
  const { latitudeRad, longitudeRad } = place;
  const w = 1 - eccentricitySquared * Math.sin(latitudeRad) ** 2;
  const stepLatitude = STEP_M / ((semiMajorM * (1 - eccentricitySquared)) / w ** 1.5);
  const stepLongitude = STEP_M / ((semiMajorM / Math.sqrt(w)) * Math.cos(latitudeRad));
  const reach =
    Math.abs(latitudeRad) + 2 * stepLatitude < Math.PI / 2 && Math.abs(longitudeRad) <= 2 * Math.PI;
  if (!reach) return { convergenceRad: Number.NaN, scale: Number.NaN, distortionRad: Number.NaN };
  const northward = difference(
    forward({ latitudeRad: latitudeRad + stepLatitude, longitudeRad }),
    forward({ latitudeRad: latitudeRad - stepLatitude, longitudeRad }),
  );
  const eastward = difference(
    forward({ latitudeRad, longitudeRad: longitudeRad + stepLongitude }),
    forward({ latitudeRad, longitudeRad: longitudeRad - stepLongitude }),
  );
  // The map of small steps is a turn with a scale plus a part that is neither; the latter bends bearings at most by asin of the ratio.
  const turning = Math.hypot(eastward.east + northward.north, eastward.north - northward.east);
  const bending = Math.hypot(eastward.east - northward.north, eastward.north + northward.east);
  return {
    // The grid bearing of true north is minus the convergence.
    convergenceRad: wrapToPi(-Math.atan2(northward.east, northward.north)),
    scale: Math.hypot(northward.east, northward.north) / (2 * STEP_M),
    distortionRad: Math.asin(Math.min(1, bending / turning)),
  };
}

const difference = (a: EastNorth, b: EastNorth): EastNorth => ({
  east: a.east - b.east,
  north: a.north - b.north,
});
