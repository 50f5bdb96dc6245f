import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** Drill hole of a ground anchor. */
export const anchor: ElementKind = {
  id: "anchor",
  sections: ["round"],
  needsSection: false,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "anchor", plural: "anchors" },
    de: { name: "Anker", plural: "Anker" },
  },
};
