import type { RandomSource } from "../../random.ts";
import type { ScenarioElement, ScenarioRun, ScenarioTube } from "../../scenario.ts";
import { round } from "../built-hole.ts";

/** One group of elements of the example site with all that belongs to it. */
export interface SitePart {
  readonly elements: readonly ScenarioElement[];
  readonly tubes: readonly ScenarioTube[];
  readonly runs: readonly ScenarioRun[];
}

/** Centre of the shaft; in the open sea, so that no real site is meant. */
export const SHAFT = { eastingM: 459_362, northingM: 5_827_944 } as const;
export const GROUND_LEVEL_M = 4;
export const TEMPERATURE = { surfaceC: 14, groundC: 10.5 } as const;

/** A point at a bearing and distance from the centre of the shaft, to a millimetre. */
export function fromShaft(bearingDeg: number, distanceM: number): { eastingM: number; northingM: number } {
  const bearing = (bearingDeg * Math.PI) / 180;
  return {
    eastingM: round(SHAFT.eastingM + distanceM * Math.sin(bearing), 3),
    northingM: round(SHAFT.northingM + distanceM * Math.cos(bearing), 3),
  };
}

/** As-built offset of a head, to a millimetre. */
export function builtOffset(sigmaM: number, random: RandomSource) {
  return {
    builtOffsetEastM: round(sigmaM * random.normal(), 3),
    builtOffsetNorthM: round(sigmaM * random.normal(), 3),
  };
}

/** Opening and closing against the same mark. */
export function sameMark(headingDeg: number, north: "grid" | "true" | "magnetic") {
  const standardUncertaintyDeg = { grid: 0.3, true: 0.5, magnetic: 1 }[north];
  const reference = { headingDeg, north, standardUncertaintyDeg };
  return { opening: reference, closing: reference };
}

export const numbered = (letter: string, n: number): string => `${letter}${String(n).padStart(2, "0")}`;
