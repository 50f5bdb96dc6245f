// The door of the layer: what other layers may use, listed one by one.

export type { CrsDefinition, DatumShift } from "./epsg/crs-definition.ts";
export { findCrs, listCrs } from "./epsg/find-crs.ts";
export { type FitLimits, fitLocalGrid, type LocalGridFit } from "./local-grid/fit-local-grid.ts";
export {
  type CommonPoint,
  gridFromLocal,
  type LocalGrid,
  localFromGrid,
  localGridRotation,
  localGridScale,
} from "./local-grid/local-grid.ts";
export { type Declination, declinationAt, type PlaceAndDate } from "./magnetic/declination-at.ts";
export {
  gridFromMagnetic,
  gridFromTrue,
  magneticFromTrue,
  trueFromGrid,
  trueFromMagnetic,
} from "./north/turn-azimuth.ts";
export type { LocalScale } from "./projection/local-scale.ts";
export { type EastNorth, type Geodetic, type Projection, projectionFor } from "./projection/projection.ts";
export {
  gridConvergence,
  gridFromWgs84,
  type SitePosition,
  sitePosition,
} from "./projection/site-position.ts";
