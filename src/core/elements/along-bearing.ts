import type { DesignElement } from "./element.ts";

/**
 * Bearing of the direction called "along" as most kinds have it: where a raked element leans to, else the long side
 * of a rectangular section, else grid north.
 *
 * @returns radians clockwise from grid north; NaN where the element is raked and its bearing is not given.
 * Frame: site NED.
 * Source: common practice, no source.
 */
export function alongRakeOrWall(element: DesignElement): number {
  if (element.rakeRad !== 0) return element.rakeBearingRad ?? Number.NaN;
  if (element.section?.shape === "rectangle") return element.section.orientationRad;
  return 0;
}
