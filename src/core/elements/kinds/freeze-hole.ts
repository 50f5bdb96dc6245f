import { alongRakeOrWall } from "../along-bearing.ts";
import type { ElementKind } from "../element-kind.ts";

/** Hole for a pipe that carries the coolant of a ground freezing. */
export const freezeHole: ElementKind = {
  id: "freeze-hole",
  sections: ["round"],
  needsSection: false,
  alongBearingRad: alongRakeOrWall,
  text: {
    en: { name: "freeze hole", plural: "freeze holes" },
    de: { name: "Gefrierbohrung", plural: "Gefrierbohrungen" },
  },
};
