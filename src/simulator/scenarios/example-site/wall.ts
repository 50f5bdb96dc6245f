import type { RandomSource } from "../../random.ts";
import type { ScenarioElement, ScenarioRun, ScenarioTube } from "../../scenario.ts";
import { builtHole, round } from "../built-hole.ts";
import type { Diary } from "../diary.ts";
import { builtOffset, fromShaft, GROUND_LEVEL_M, numbered, type SitePart } from "./site.ts";

const PANELS = 3;
const LENGTH_M = 2.8;
const BEARING_DEG = 62;
const TUBES = [
  ["A", -0.95],
  ["B", 0.95],
] as const;

/** Three panels of a wall, each with two grooved tubes that are read on both faces. */
export function wallPanels(random: RandomSource, diary: Diary): SitePart {
  const start = fromShaft(310, 30);
  const bearing = (BEARING_DEG * Math.PI) / 180;
  const elements: ScenarioElement[] = [];
  const tubes: ScenarioTube[] = [];
  const runs: ScenarioRun[] = [];
  for (let n = 1; n <= PANELS; n++) {
    const id = numbered("W", n);
    const part = random.fork(id);
    const hole = builtHole({ leanDeg: 0.09, waveDeg: 0.03 }, part);
    elements.push({
      id,
      kind: "panel",
      lengthM: LENGTH_M,
      widthM: 0.8,
      orientationDeg: BEARING_DEG,
      eastingM: round(start.eastingM + LENGTH_M * (n - 1) * Math.sin(bearing), 3),
      northingM: round(start.northingM + LENGTH_M * (n - 1) * Math.cos(bearing), 3),
      headLevelM: GROUND_LEVEL_M,
      cutoffLevelM: 3,
      toeLevelM: -20,
      group: "wall",
      sequence: n,
      role: n === 2 ? "secondary" : "primary",
      ...builtOffset(0.01, part),
      // the second one leans out of the wall, about 1 in 120
      hole: n === 2 && hole.shape === "waves" ? { ...hole, rakeDeg: 0.48, bearingDeg: 150 } : hole,
    });
    for (const [tube, along] of TUBES) {
      tubes.push({
        element: id,
        tube,
        offsetEastM: round(along * Math.sin(bearing), 3),
        offsetNorthM: round(along * Math.cos(bearing), 3),
        topLevelM: GROUND_LEVEL_M,
        innerDiameterMm: 60,
        lengthM: 24,
      });
      runs.push(keyedRun(id, tube, diary));
    }
  }
  return { elements, tubes, runs };
}

function keyedRun(element: string, tube: string, diary: Diary): ScenarioRun {
  return {
    id: `${element}${tube}-1`,
    element,
    tube,
    instrument: "probe-a",
    measures: "keyed-tilt",
    calibrations: ["tz-a2"],
    operator: "AB",
    startedAt: diary.next(),
    intervalM: 0.5,
    passes: [
      { leg: "down", face: 1 },
      { leg: "down", face: 2 },
    ],
    grooveBearingDeg: BEARING_DEG + 90,
    // one tube was not plumbed for twist: its table shows it
    ...(element === "W03" && tube === "B"
      ? {
          spiral: [
            { depthM: 0, twistDeg: 0 },
            { depthM: 10, twistDeg: 3.5 },
            { depthM: 24, twistDeg: 9 },
          ],
        }
      : {}),
  };
}
