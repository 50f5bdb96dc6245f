import type { RandomSource } from "../../random.ts";
import type { ScenarioElement, ScenarioRun } from "../../scenario.ts";
import { builtHole } from "../built-hole.ts";
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

const HOLES = 24;
const RING_RADIUS_M = 5.6;
/** the hole that ran away: some 0.7 m at the toe */
const ASTRAY = 9;

/** Freeze holes round the shaft where the cross passage starts. */
export function freezeRing(random: RandomSource, diary: Diary): SitePart {
  const elements: ScenarioElement[] = [];
  const runs: ScenarioRun[] = [];
  for (let n = 1; n <= HOLES; n++) {
    const id = numbered("F", n);
    const part = random.fork(id);
    const hole = builtHole({ leanDeg: 0.19, waveDeg: 0.08 }, part);
    elements.push({
      id,
      kind: "freeze-hole",
      diameterM: 0.114,
      ...fromShaft(((n - 1) * 360) / HOLES + 5, RING_RADIUS_M),
      headLevelM: GROUND_LEVEL_M,
      toeLevelM: -26,
      group: "freeze-ring",
      sequence: n,
      ...builtOffset(0.01, part),
      hole: n === ASTRAY && hole.shape === "waves" ? { ...hole, rakeDeg: 1.35, bearingDeg: 120 } : hole,
    });
    runs.push(freezeRun(id, n, diary));
  }
  return { elements, tubes: [], runs };
}

function freezeRun(id: string, n: number, diary: Diary): ScenarioRun {
  const accelerations = n % 3 === 0;
  return {
    id: `${id}-1`,
    element: id,
    instrument: "probe-b",
    measures: accelerations ? "acceleration-turn" : "tilt-turn",
    calibrations: accelerations ? ["ac-b", "gz-b", "ds-b"] : ["tz-b", "gz-b", "ds-b"],
    operator: "EF",
    startedAt: diary.next(),
    intervalM: 2,
    ...sameMark((n * 15 + 4) % 360, "magnetic"),
    temperature: TEMPERATURE,
    startUncertaintyM: 0.005,
  };
}
