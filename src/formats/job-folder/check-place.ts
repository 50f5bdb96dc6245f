import { type DesignElement, degreesFromRadians, radiansFromDegrees } from "#core";
import { sitePosition } from "#geodesy";
import type { Finder } from "../finding/finder.ts";
import type { PlaceInput } from "./read-job-json.ts";

/** The elements may lie this far from the place of the job, degrees; about 20 km. Common practice, no source. */
const NEAR_DEG = 0.2;

/**
 * Holds the coordinates of the elements against the latitude and longitude of the job.
 *
 * Where only the other order of easting and northing brings the elements to the place, the whole schedule is swapped.
 *
 * Error: formats.schedule-swapped. Warning: formats.place-far.
 */
export function checkPlace(place: PlaceInput, elements: readonly DesignElement[], found: Finder): void {
  const { crs = "local", latitude_deg: latitude, longitude_deg: longitude } = place;
  if (crs === "local" || latitude === undefined || longitude === undefined || elements.length === 0) return;
  const mean = (of: (element: DesignElement) => number): number =>
    elements.reduce((sum, element) => sum + of(element), 0) / elements.length;
  const east = mean(({ head }) => head.east);
  const north = mean(({ head }) => head.north);
  const isNear = (e: number, n: number): boolean => {
    const at = sitePosition(crs, e, n);
    if (!at.ok) return false;
    const eastward =
      (at.value.longitudeRad - radiansFromDegrees(longitude)) * Math.cos(radiansFromDegrees(latitude));
    const northward = at.value.latitudeRad - radiansFromDegrees(latitude);
    return degreesFromRadians(Math.hypot(Math.sin(eastward), Math.sin(northward))) <= NEAR_DEG;
  };
  if (isNear(east, north)) return;
  const where = `${east.toFixed(0)}, ${north.toFixed(0)}`;
  if (isNear(north, east)) {
    const values = { found: where, expected: `${north.toFixed(0)}, ${east.toFixed(0)}` };
    found.error("formats.schedule-swapped", { field: "place" }, values);
    return;
  }
  found.warning(
    "formats.place-far",
    { field: "place" },
    { found: where, expected: `${latitude}, ${longitude}`, crs },
  );
}
