import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** Tube cast in for testing, where the tube itself is what is judged. */
export const accessTube: ElementKind = {
  id: "access-tube",
  sections: ["round"],
  needsSection: false,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "access tube", plural: "access tubes" },
    de: { name: "Messrohr", plural: "Messrohre" },
  },
};
