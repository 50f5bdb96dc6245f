/** Directions of the hole at its stations: unit tangents by depth. Struct of arrays of equal length. */
export interface TangentProfile {
  /** depth along the hole, metres, strictly increasing */
  readonly depthM: Float64Array;
  readonly north: Float64Array;
  readonly east: Float64Array;
  readonly down: Float64Array;
}
