import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** One unit of a diaphragm wall between joints. */
export const panel: ElementKind = {
  id: "panel",
  sections: ["rectangle"],
  needsSection: true,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "wall panel", plural: "wall panels" },
    de: { name: "Schlitzwandlamelle", plural: "Schlitzwandlamellen" },
  },
};
