import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** Any other drilled hole. */
export const borehole: ElementKind = {
  id: "borehole",
  sections: ["round"],
  needsSection: false,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "borehole", plural: "boreholes" },
    de: { name: "Bohrung", plural: "Bohrungen" },
  },
};
