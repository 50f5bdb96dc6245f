/**
 * The axis of a hole in 3-D: stations and what is between them. North-east-down, metres, struct of arrays.
 *
 * Between two stations the axis is a circular arc (minimum curvature), see `interpolatePath`.
 */
export interface HolePath {
  readonly count: number;
  /** depth along the hole below the reference top, strictly increasing */
  readonly depthM: Float64Array;
  readonly northM: Float64Array;
  readonly eastM: Float64Array;
  /** positive down, = -level */
  readonly downM: Float64Array;
  /** unit tangent, pointing down the hole */
  readonly tangentNorth: Float64Array;
  readonly tangentEast: Float64Array;
  readonly tangentDown: Float64Array;
}
