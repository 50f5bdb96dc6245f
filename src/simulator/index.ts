// The door of the layer: what other layers may use, listed one by one.

export { continuousLogText, simulateContinuousLog } from "./continuous-log.ts";
export type { FolderTruth, TrueAxis } from "./folder-truth.ts";
export type { HoleShape, LeanWave, TangentAndBend } from "./hole-shape.ts";
export { tangentOf } from "./hole-shape.ts";
export type { ProbeErrors } from "./probe-errors.ts";
export { NO_ERRORS } from "./probe-errors.ts";
export type { RandomSource } from "./random.ts";
export { createRandom } from "./random.ts";
export { namedScenario, readScenario } from "./read-scenario.ts";
export type {
  PassSpec,
  RecordResolution,
  ReferenceSpec,
  RunFault,
  RunSpec,
  SimulatedSite,
} from "./run-spec.ts";
export type {
  Scenario,
  ScenarioCalibration,
  ScenarioElement,
  ScenarioInstrument,
  ScenarioPlace,
  ScenarioRun,
  ScenarioTube,
} from "./scenario.ts";
export type { NamedScenario, ScenarioParameter } from "./scenarios/registry.ts";
export { namedScenarios } from "./scenarios/registry.ts";
export type { RunTruth, SimulatedRun } from "./simulate-run.ts";
export { simulateRun } from "./simulate-run.ts";
export { truePath } from "./true-path.ts";
export type { WrittenJob } from "./write-job-folder.ts";
export { writeJobFolder } from "./write-job-folder.ts";
