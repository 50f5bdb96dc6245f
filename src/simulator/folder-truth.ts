import type { HolePath, NorthEastDown } from "#core";
import type { Scenario, ScenarioElement, ScenarioRun } from "./scenario.ts";
import type { SimulatedRun } from "./simulate-run.ts";
import { truePath } from "./true-path.ts";

/** True coordinates along an axis, column by column, metres; depth along the hole from its own top. */
export interface TrueAxis {
  readonly depth_m: readonly number[];
  readonly easting_m: readonly number[];
  readonly northing_m: readonly number[];
  readonly level_m: readonly number[];
}

/** What was really built, for checks: never read by the computation. */
export interface FolderTruth {
  readonly format: "toeline-truth/1";
  readonly remark: string;
  readonly name: string;
  readonly seed: string;
  readonly elements: readonly ({ readonly id: string } & TrueAxis)[];
  /** at the nominal stations of each run, whether they were read or not */
  readonly runs: readonly ({ readonly id: string } & TrueAxis)[];
}

const ELEMENT_STEP_M = 1;

export function folderTruth(
  scenario: Scenario,
  seed: number | string,
  places: ReadonlyMap<string, { readonly element: ScenarioElement; readonly head: NorthEastDown }>,
  simulated: readonly { readonly run: ScenarioRun; readonly result: SimulatedRun }[],
): FolderTruth {
  return {
    format: "toeline-truth/1",
    remark: "What the simulator really built. Not part of a job: for checks only.",
    name: scenario.name,
    seed: String(seed),
    elements: [...places.values()].map(({ element, head }) => ({
      id: element.id,
      ...axisOf(truePath(element.hole, head, depthsOf(element))),
    })),
    runs: simulated.map(({ run, result }) => ({ id: run.id, ...axisOf(result.truth.path) })),
  };
}

function depthsOf(element: ScenarioElement): readonly number[] {
  const length =
    (element.headLevelM - (element.toeLevelM ?? element.headLevelM)) /
    Math.cos(((element.rakeDeg ?? 0) * Math.PI) / 180);
  return Array.from({ length: Math.floor(length / ELEMENT_STEP_M + 1e-9) + 1 }, (_, i) => i * ELEMENT_STEP_M);
}

function axisOf(path: HolePath): TrueAxis {
  const column = (values: Float64Array, sign = 1): readonly number[] =>
    Array.from(values, (value) => Number((sign * value).toFixed(5)) + 0);
  return {
    depth_m: column(path.depthM),
    easting_m: column(path.eastM),
    northing_m: column(path.northM),
    level_m: column(path.downM, -1),
  };
}
