import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** Pile formed by boring and concreting; also the piles of secant and contiguous walls. */
export const boredPile: ElementKind = {
  id: "bored-pile",
  sections: ["round"],
  needsSection: true,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "bored pile", plural: "bored piles" },
    de: { name: "Bohrpfahl", plural: "Bohrpfähle" },
  },
};
