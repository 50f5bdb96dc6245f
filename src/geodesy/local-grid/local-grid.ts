import type { EastNorth } from "../projection/projection.ts";

/** A point whose coordinates are known in both grids, metres. */
export interface CommonPoint {
  readonly name: string;
  readonly local: EastNorth;
  readonly grid: EastNorth;
}

/**
 * A site grid laid on a map grid by turning, one scale and a shift:
 * east = east0 + a x - b y, north = north0 + b x + a y, with x east and y north in the site grid.
 * Kept about the centre of the common points, so that large map coordinates cost no digits.
 */
export interface LocalGrid {
  readonly a: number;
  readonly b: number;
  readonly localCentre: EastNorth;
  readonly gridCentre: EastNorth;
}

/** Map distance over site distance. */
export const localGridScale = (grid: LocalGrid): number => Math.hypot(grid.a, grid.b);

/** How far the site axes are turned in the map, radians, positive anticlockwise seen from above. */
export const localGridRotation = (grid: LocalGrid): number => Math.atan2(grid.b, grid.a);

/** Map coordinates of a point of the site grid, metres. Frame: map grid. Source: definition of LocalGrid. */
export function gridFromLocal(grid: LocalGrid, point: EastNorth): EastNorth {
  const x = point.east - grid.localCentre.east;
  const y = point.north - grid.localCentre.north;
  return {
    east: grid.gridCentre.east + grid.a * x - grid.b * y,
    north: grid.gridCentre.north + grid.b * x + grid.a * y,
  };
}

/** Site coordinates of a point of the map grid, metres. Frame: site grid. Source: definition of LocalGrid. */
export function localFromGrid(grid: LocalGrid, point: EastNorth): EastNorth {
  const east = point.east - grid.gridCentre.east;
  const north = point.north - grid.gridCentre.north;
  const squared = grid.a ** 2 + grid.b ** 2;
  return {
    east: grid.localCentre.east + (grid.a * east + grid.b * north) / squared,
    north: grid.localCentre.north + (grid.a * north - grid.b * east) / squared,
  };
}
