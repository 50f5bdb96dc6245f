import type { RandomSource } from "../../random.ts";
import type { ScenarioElement, ScenarioRun } from "../../scenario.ts";
import type { Diary } from "../diary.ts";
import { builtOffset, fromShaft, GROUND_LEVEL_M, type SitePart } from "./site.ts";

/** One borehole for the ground, read as inclination and azimuth. */
export function groundBorehole(random: RandomSource, diary: Diary): SitePart {
  return { elements: [borehole(random)], tubes: [], runs: [boreholeRun(diary)] };
}

function borehole(random: RandomSource): ScenarioElement {
  return {
    id: "B01",
    kind: "borehole",
    diameterM: 0.15,
    ...fromShaft(20, 12),
    headLevelM: GROUND_LEVEL_M,
    toeLevelM: -21,
    group: "ground",
    ...builtOffset(0.01, random),
    hole: {
      shape: "arc",
      rakeDeg: 0.6,
      bearingDeg: 48,
      bendDegPerM: 0.06,
      towardsDeg: 20,
    },
  };
}

function boreholeRun(diary: Diary): ScenarioRun {
  return {
    id: "B01-1",
    element: "B01",
    instrument: "probe-a",
    measures: "inclination-azimuth",
    calibrations: [],
    operator: "EF",
    startedAt: diary.next(),
    intervalM: 1,
    azimuthNorth: "magnetic",
    startUncertaintyM: 0.01,
  };
}
