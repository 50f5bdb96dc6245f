/** Ways to go from tangents at stations to coordinates. Minimum curvature is the default. */
export type PathMethodId =
  | "minimum-curvature"
  | "balanced-tangential"
  | "average-angle"
  | "radius-of-curvature"
  | "tangential";
export const PATH_METHODS: readonly PathMethodId[] = [
  "minimum-curvature",
  "balanced-tangential",
  "average-angle",
  "radius-of-curvature",
  "tangential",
];
