// The door of the core: what other layers may use, listed one by one, a block a folder.

export type { Issue, Place, Result, Severity } from "./result.ts";
// (root)
export { ContractError, contract, fail, ok } from "./result.ts";
export type {
  GridAzimuth,
  MagneticAzimuth,
  Metres,
  Quantity,
  Radians,
  Seconds,
  TrueAzimuth,
} from "./units/quantity.ts";
// units
export {
  degreesFromRadians,
  gridAzimuth,
  magneticAzimuth,
  metres,
  RADIANS_PER_DEGREE,
  radians,
  radiansFromDegrees,
  SECONDS_PER_HOUR,
  trueAzimuth,
  wrapToPi,
  wrapToTurn,
} from "./units/quantity.ts";

// num

export type { NorthEastDown } from "./geometry/vector.ts";
// geometry
export { add, angleBetween, cross, dot, ned, norm, scale, subtract, unit } from "./geometry/vector.ts";

// frames
export { EARTH_RATE_RAD_PER_S, earthRateNed, normalGravity } from "./frames/earth.ts";

// calibration
export type {
  AccelerometerCalibration,
  Calibration,
  CalibrationKind,
  DepthScaleCalibration,
  FaceReading,
  GyroScaleCalibration,
  GyroZeroCalibration,
  Instrument,
  TiltZeroCalibration,
  Validity,
} from "./calibration/calibration.ts";
export type { DesignAxes, DesignOffset } from "./elements/design-axis.ts";
// elements
export {
  designAxes,
  designDirection,
  designLengthM,
  driftFromTop,
  offsetFromDesign,
  offsetFromLine,
} from "./elements/design-axis.ts";
export type { AccessTube, DesignElement, Section } from "./elements/element.ts";
export type { ElementKind } from "./elements/element-kind.ts";
export { elementKind, elementKinds } from "./elements/registry.ts";
export type {
  ClosureModel,
  HeadingReference,
  Leg,
  Measures,
  Readings,
  SurveyRun,
} from "./readings/survey-run.ts";
// readings
export { CLOSURE_MODELS, LEGS, MEASURES } from "./readings/survey-run.ts";

// correction
export type { StepReport } from "./correction/step-report.ts";

export type { HolePath } from "./path/hole-path.ts";
export type { PathMethodId } from "./path/path-method.ts";
// path
export { computePath } from "./path/compute-path.ts";
export type { TangentProfile } from "./path/compute-path.ts";
export { dogleg, ratioFactor } from "./path/dogleg.ts";
export { depthAtDown, interpolatePath, positionAt, tangentAt } from "./path/interpolate-path.ts";
export type { PathPoint } from "./path/interpolate-path.ts";
export { PATH_METHODS } from "./path/path-method.ts";

// uncertainty

export type {
  Choice,
  Criterion,
  CriterionRequest,
  CriterionSource,
  JudgedAxis,
  Language,
  Measured,
  NotMeasured,
  Parameter,
  Verdict,
} from "./criteria/criterion.ts";
// criteria
export { VERDICTS } from "./criteria/criterion.ts";

// survey
export type { Decision, DecisionRuleName, Job, SitePlace } from "./survey/job.ts";
export type {
  AxisRow,
  ElementResult,
  JobResults,
  RunResult,
  VerdictResult,
  VerticalityResult,
} from "./survey/results.ts";
