import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** Drilled pile of small diameter. */
export const micropile: ElementKind = {
  id: "micropile",
  sections: ["round"],
  needsSection: false,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "micropile", plural: "micropiles" },
    de: { name: "Mikropfahl", plural: "Mikropfähle" },
  },
};
