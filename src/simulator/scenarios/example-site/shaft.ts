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

const PILES = 36;
const RING_RADIUS_M = 4.1;
const RIG = { leanDeg: 0.075, waveDeg: 0.04 };
/** the pile that left its ring: about 1 in 92 */
const ASTRAY = 17;

/** Access shaft: a ring of secant piles, every one read in its own bore. */
export function accessShaft(random: RandomSource, diary: Diary): SitePart {
  const elements: ScenarioElement[] = [];
  const runs: ScenarioRun[] = [];
  for (let n = 1; n <= PILES; n++) {
    const id = numbered("S", n);
    const part = random.fork(id);
    const hole = builtHole(RIG, part);
    elements.push({
      id,
      kind: "bored-pile",
      diameterM: 0.9,
      ...fromShaft(((n - 1) * 360) / PILES, RING_RADIUS_M),
      headLevelM: GROUND_LEVEL_M,
      cutoffLevelM: 3.2,
      toeLevelM: -18,
      group: "shaft",
      sequence: n,
      role: n % 2 === 1 ? "primary" : "secondary",
      ...builtOffset(0.008, part),
      hole: n === ASTRAY && hole.shape === "waves" ? { ...hole, rakeDeg: 0.62, bearingDeg: 338 } : hole,
    });
    const downAndUp = n % 4 === 0;
    runs.push({
      id: `${id}-1`,
      element: id,
      instrument: "probe-a",
      measures: "tilt-turn",
      calibrations: ["tz-a", "gz-a", "gs-a"],
      operator: n % 2 === 1 ? "AB" : "CD",
      startedAt: diary.next(),
      intervalM: 1,
      ...(downAndUp
        ? {
            passes: [
              { leg: "down", face: 1 },
              { leg: "up", face: 1 },
            ] as const,
          }
        : {}),
      ...sameMark((n * 50) % 360, "grid"),
      temperature: TEMPERATURE,
      startUncertaintyM: 0.003,
    });
  }
  return { elements, tubes: [], runs };
}
