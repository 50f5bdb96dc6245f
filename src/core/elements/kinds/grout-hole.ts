import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** Injection hole, or the hole of a jet-grouted column. */
export const groutHole: ElementKind = {
  id: "grout-hole",
  sections: ["round"],
  needsSection: false,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "grout hole", plural: "grout holes" },
    de: { name: "Injektionsbohrung", plural: "Injektionsbohrungen" },
  },
};
