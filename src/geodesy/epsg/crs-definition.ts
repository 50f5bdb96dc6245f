/**
 * How far the latitude and longitude of a CRS lie from those of WGS 84.
 * "global": the same within a few metres. "own": not known here. Otherwise the grid file that would tell.
 */
export type DatumShift =
  | { readonly kind: "global" }
  | { readonly kind: "own" }
  | { readonly kind: "grid-file"; readonly file: string };

/** A map projection of the EPSG dataset on the ellipsoid of its own datum. */
export interface CrsDefinition {
  /** "EPSG:n" */
  readonly crs: string;
  readonly name: string;
  /** map projection and ellipsoid for proj4, in metres, east and north, without any datum shift */
  readonly projection: string;
  /** area of use, degrees of latitude and longitude; west > east where it crosses the 180th meridian */
  readonly area: {
    readonly southDeg: number;
    readonly westDeg: number;
    readonly northDeg: number;
    readonly eastDeg: number;
  };
  readonly datumShift: DatumShift;
}
