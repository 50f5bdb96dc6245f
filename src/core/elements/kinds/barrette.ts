import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** Bored pile of rectangular section, cast in one pour. */
export const barrette: ElementKind = {
  id: "barrette",
  sections: ["rectangle"],
  needsSection: true,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "barrette", plural: "barrettes" },
    de: { name: "Schlitzwandpfahl", plural: "Schlitzwandpfähle" },
  },
};
