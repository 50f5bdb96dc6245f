import type { HoleShape } from "../../hole-shape.ts";
import type { RandomSource } from "../../random.ts";
import type { ScenarioElement, ScenarioRun } from "../../scenario.ts";
import { builtHole, round } from "../built-hole.ts";
import type { Diary } from "../diary.ts";
import {
  builtOffset,
  fromShaft,
  GROUND_LEVEL_M,
  numbered,
  type SitePart,
  sameMark,
  TEMPERATURE,
} from "./site.ts";

const PILES = 6;
/** 1 in 5 */
const RAKE_DEG = round((Math.atan(1 / 5) * 180) / Math.PI, 3);
const LENGTH_M = 18;

/** Raked micropiles in a row, leaning away from the shaft to either side; the last two are read in a grooved casing. */
export function rakedMicropiles(random: RandomSource, diary: Diary): SitePart {
  const row = fromShaft(200, 24);
  const elements: ScenarioElement[] = [];
  const runs: ScenarioRun[] = [];
  for (let n = 1; n <= PILES; n++) {
    const id = numbered("M", n);
    const part = random.fork(id);
    const bearingDeg = n % 2 === 1 ? 155 : 245;
    elements.push({
      id,
      kind: "micropile",
      diameterM: 0.24,
      eastingM: round(row.eastingM + 1.8 * (n - 1), 3),
      northingM: round(row.northingM - 0.6 * (n - 1), 3),
      headLevelM: GROUND_LEVEL_M,
      cutoffLevelM: 3.6,
      toeLevelM: round(GROUND_LEVEL_M - LENGTH_M * Math.cos((RAKE_DEG * Math.PI) / 180), 3),
      rakeDeg: RAKE_DEG,
      rakeBearingDeg: bearingDeg,
      group: "micropiles",
      sequence: n,
      loadKn: 450,
      ...builtOffset(0.012, part),
      hole: micropileHole(n, bearingDeg, part),
    });
    runs.push(n <= 4 ? gyroRun(id, n, diary) : keyedRun(id, n, diary));
  }
  return { elements, tubes: [], runs };
}

function micropileHole(n: number, bearingDeg: number, random: RandomSource): HoleShape {
  // one whose bearing wanders, one that is drilled too steep
  if (n === 2)
    return {
      shape: "wandering-bearing",
      rakeDeg: RAKE_DEG,
      bearingDeg,
      amplitudeDeg: 4,
      wavelengthM: 21,
      phaseDeg: 15,
      turnDegPerM: 0,
    };
  const hole = builtHole({ leanDeg: 0.2, waveDeg: 0.08 }, random, { rakeDeg: RAKE_DEG, bearingDeg });
  return n === 3 && hole.shape === "waves" ? { ...hole, rakeDeg: RAKE_DEG - 3.4 } : hole;
}

function gyroRun(id: string, n: number, diary: Diary): ScenarioRun {
  return {
    id: `${id}-1`,
    element: id,
    instrument: "probe-a",
    measures: "tilt-turn",
    calibrations: ["tz-a2", "gz-a2", "gs-a"],
    operator: "CD",
    startedAt: diary.next(),
    intervalM: 0.5,
    passes: [
      { leg: "down", face: 1 },
      { leg: "up", face: 1 },
    ],
    ...sameMark(60 * n, "grid"),
    temperature: TEMPERATURE,
    startUncertaintyM: 0.003,
  };
}

function keyedRun(id: string, n: number, diary: Diary): ScenarioRun {
  return {
    id: `${id}-1`,
    element: id,
    instrument: "probe-a",
    measures: "keyed-tilt",
    calibrations: ["tz-a2"],
    operator: "CD",
    startedAt: diary.next(),
    intervalM: 0.5,
    // the first stop of one of them lies below the top
    fromM: n === 5 ? 0.5 : 0,
    passes: [
      { leg: "down", face: 1 },
      { leg: "down", face: 2 },
    ],
    grooveBearingDeg: n === 5 ? 155 : 65,
    spiral: [
      { depthM: 0, twistDeg: 0 },
      { depthM: 6, twistDeg: 0.8 },
      { depthM: 12, twistDeg: 2.1 },
      { depthM: 18, twistDeg: 2.9 },
    ],
    startUncertaintyM: 0.003,
    // the faces of the last one were written down the wrong way round
    ...(n === PILES ? { faults: [{ fault: "swapped-faces" }] as const } : {}),
  };
}
