import { createRandom } from "../random.ts";
import type { Scenario, ScenarioElement, ScenarioRun } from "../scenario.ts";
import { builtHole, round } from "./built-hole.ts";
import { Diary } from "./diary.ts";
import { usualProbe } from "./probes.ts";

/** Size of a job of plumb bored piles. */
export interface PlainSize {
  readonly elements: number;
  /** stations of each run, the one at the top included */
  readonly stations: number;
  readonly intervalM: number;
}

const HEAD_LEVEL_M = 10;
const SPACING_M = 4;

/** Plumb bored piles in rows, one run down each, one probe: a job of any size. */
export function plainScenario(name: string, size: PlainSize, seed: number | string): Scenario {
  const random = createRandom(seed).fork("built");
  const diary = new Diary("2026-03-03", 30);
  const lengthM = (size.stations - 1) * size.intervalM;
  const across = Math.max(1, Math.ceil(Math.sqrt(size.elements)));
  const ids = Array.from({ length: size.elements }, (_, i) => `P${String(i + 1).padStart(4, "0")}`);
  return {
    name,
    remark: "Everything in this job is invented: made by the simulator, with errors that are known.",
    place: { crs: "local", latitudeDeg: 51.5, levelDatum: "site datum" },
    criteria: [
      { id: "position", kind: "plan-position", applies_to: {}, limit_m: 0.075, at: "head", source: OWN },
      { id: "plumb", kind: "verticality", applies_to: {}, one_in: 75, measured: "chord", source: OWN },
    ],
    instruments: [usualProbe("probe-a", "0001")],
    calibrations: [
      { id: "tz-1", instrument: "probe-a", kind: "tilt-zero", madeAt: "2026-03-02T07:10:00Z" },
      { id: "gz-1", instrument: "probe-a", kind: "gyro-zero", madeAt: "2026-03-02T07:30:00Z" },
    ],
    elements: ids.map((id, i): ScenarioElement => {
      const part = random.fork(id);
      return {
        id,
        kind: "bored-pile",
        diameterM: 0.9,
        eastingM: 1000 + SPACING_M * (i % across),
        northingM: 2000 + SPACING_M * Math.floor(i / across),
        headLevelM: HEAD_LEVEL_M,
        cutoffLevelM: HEAD_LEVEL_M - 1,
        toeLevelM: round(HEAD_LEVEL_M - lengthM, 3),
        builtOffsetEastM: round(0.015 * part.normal(), 3),
        builtOffsetNorthM: round(0.015 * part.normal(), 3),
        hole: builtHole({ leanDeg: 0.25, waveDeg: 0.08 }, part),
      };
    }),
    runs: ids.map((id, i): ScenarioRun => {
      const headingDeg = (37 * i) % 360;
      const reference = { headingDeg, north: "grid", standardUncertaintyDeg: 0.5 } as const;
      return {
        id: `${id}-1`,
        element: id,
        instrument: "probe-a",
        measures: "tilt-turn",
        calibrations: ["tz-1", "gz-1"],
        operator: "AB",
        startedAt: diary.next(),
        intervalM: size.intervalM,
        opening: reference,
        closing: reference,
        startUncertaintyM: 0.003,
        stepM: 0.1,
      };
    }),
  };
}

const OWN = { document: "Invented project specification", clause: "4.2" };
