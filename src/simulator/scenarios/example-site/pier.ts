import type { RandomSource } from "../../random.ts";
import type { ScenarioElement, ScenarioRun, ScenarioTube } from "../../scenario.ts";
import { builtHole, round } from "../built-hole.ts";
import type { Diary } from "../diary.ts";
import { builtOffset, fromShaft, numbered, type SitePart, sameMark, TEMPERATURE } from "./site.ts";

const HEAD_LEVEL_M = 3.5;
const TUBE_RING_M = 0.58;
const TUBES = ["A", "B", "C", "D"] as const;
const CORNERS = [
  [-2.25, 2.25],
  [2.25, 2.25],
  [2.25, -2.25],
  [-2.25, -2.25],
] as const;

/** Pier: four bored piles of 40 m, each read in four access tubes. */
export function pierPiles(random: RandomSource, diary: Diary): SitePart {
  const centre = fromShaft(105, 38);
  const elements: ScenarioElement[] = [];
  const tubes: ScenarioTube[] = [];
  const runs: ScenarioRun[] = [];
  for (const [i, [east, north]] of CORNERS.entries()) {
    const id = numbered("P", i + 1);
    const part = random.fork(id);
    elements.push({
      id,
      kind: "bored-pile",
      diameterM: 1.5,
      eastingM: round(centre.eastingM + east, 3),
      northingM: round(centre.northingM + north, 3),
      headLevelM: HEAD_LEVEL_M,
      cutoffLevelM: 1.8,
      toeLevelM: -36.5,
      group: "pier",
      sequence: i + 1,
      loadKn: 6500,
      ...builtOffset(0.02, part),
      hole: builtHole({ leanDeg: 0.2, waveDeg: 0.06 }, part),
    });
    for (const [k, tube] of TUBES.entries()) {
      // the cages were not turned alike
      const bearing = ((45 + 90 * k + 7 * i) * Math.PI) / 180;
      tubes.push({
        element: id,
        tube,
        offsetEastM: round(TUBE_RING_M * Math.sin(bearing), 3),
        offsetNorthM: round(TUBE_RING_M * Math.cos(bearing), 3),
        topLevelM: 4.1,
        innerDiameterMm: 50,
        lengthM: 40.4,
      });
      runs.push(tubeRun(id, tube, 30 * k + 10 * i, diary));
    }
  }
  return { elements, tubes, runs };
}

function tubeRun(element: string, tube: string, headingDeg: number, diary: Diary): ScenarioRun {
  const id = `${element}${tube}-1`;
  const faults: Readonly<Record<string, NonNullable<ScenarioRun["faults"]>>> = {
    // the cable was let go between two stations: a knock, and the gyro lost count
    "P03C-1": [{ fault: "gyro-jump", atM: 22, jumpDeg: 31 }],
    // rows lost
    "P02B-1": [{ fault: "gap", fromM: 13.5, toM: 20.5 }],
  };
  return {
    id,
    element,
    tube,
    instrument: "probe-a",
    measures: "tilt-turn",
    calibrations: ["tz-a2", "gz-a2", "gs-a"],
    operator: "EF",
    startedAt: diary.next(),
    intervalM: 1,
    toM: 40,
    ...sameMark(headingDeg, "true"),
    temperature: TEMPERATURE,
    ...(faults[id] === undefined ? {} : { faults: faults[id] }),
  };
}
