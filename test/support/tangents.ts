import { radiansFromDegrees, type TangentProfile, tangentFromInclination } from "#core";

/** Tangents from rows of depth, inclination and azimuth, angles in degrees. */
export function tangentsOfAngles(stations: readonly (readonly number[])[]): TangentProfile {
  const tangents = stations.map((row) =>
    tangentFromInclination(radiansFromDegrees(row[1]!), radiansFromDegrees(row[2]!)),
  );
  return {
    depthM: Float64Array.from(stations, (row) => row[0]!),
    north: Float64Array.from(tangents, (t) => t.north),
    east: Float64Array.from(tangents, (t) => t.east),
    down: Float64Array.from(tangents, (t) => t.down),
  };
}
