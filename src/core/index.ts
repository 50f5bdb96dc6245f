// The door of the core: what other layers may use, listed one by one, a block a folder.

// calibration
export type {
  AccelerometerCalibration,
  AllanRecord,
  Calibration,
  CalibrationKind,
  DepthScaleCalibration,
  FaceReading,
  GyroScaleCalibration,
  GyroZeroCalibration,
  HangingCable,
  Instrument,
  ReadOff,
  TiltZeroCalibration,
  Validity,
} from "./calibration/calibration.ts";
export { type DepthScale, depthScale } from "./calibration/depth-scale.ts";
export {
  assessRestLog,
  type RestDisturbance,
  type RestLog,
  type RestResult,
  SHORT_REST_S,
  SHORTEST_REST_S,
} from "./calibration/rest-log.ts";
// correction
export { usualInterval } from "./correction/combine-passes.ts";
export { layOutRun, type Pass, type RunLayout } from "./correction/passes.ts";
export type { StepReport } from "./correction/step-report.ts";
// criteria
export { APPLIES_TO_KEYS, appliesTo } from "./criteria/applies-to.ts";
export type {
  Choice,
  Criterion,
  CriterionRequest,
  CriterionSource,
  JudgedAxis,
  Language,
  Measured,
  NotMeasured,
  OffsetForm,
  Parameter,
  SourceStatus,
  TableParameter,
  Verdict,
} from "./criteria/criterion.ts";
export { VERDICTS } from "./criteria/criterion.ts";
export type { Decided, Reason, ValueUncertainty } from "./criteria/decide.ts";
export { decide, isMeasured } from "./criteria/decide.ts";
export type { Decision, DecisionRuleName } from "./criteria/decision.ts";
export { DECISION_RULES } from "./criteria/decision.ts";
export type { Judgement } from "./criteria/judge.ts";
export { judge, sourceReasons } from "./criteria/judge.ts";
export type { Lean } from "./criteria/lean.ts";
export { leanOfChord, worstChord, worstSegment } from "./criteria/lean.ts";
export type { DepthRange } from "./criteria/read-range.ts";
export { readRange } from "./criteria/read-range.ts";
export { criteria, criterion } from "./criteria/registry.ts";
export type { CriteriaSet, CriteriaSetEntry, CriteriaSetRule } from "./criteria/sets/criteria-set.ts";
export {
  CONFIRM_BEFORE_USE,
  criteriaSet,
  criteriaSets,
  expandCriteriaSet,
} from "./criteria/sets/registry.ts";
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
export type { TiltSines } from "./frames/attitude.ts";
export { tangentFromInclination, tangentFromTilt, tiltFromAcceleration } from "./frames/attitude.ts";
export { EARTH_RATE_RAD_PER_S, earthRateGrid, earthRateNed, normalGravity } from "./frames/earth.ts";
export { holonomy } from "./frames/holonomy.ts";
// frames
export type { TangentProfile } from "./frames/tangent-profile.ts";
export type { ClosestOnSegment, ClosestPoints } from "./geometry/closest-points.ts";
export {
  closestOnSegment,
  closestPointsOfLines,
  closestPointsOfSegments,
} from "./geometry/closest-points.ts";
export type { NorthEastDown } from "./geometry/vector.ts";
// geometry
export { add, angleBetween, cross, dot, ned, norm, scale, subtract, unit } from "./geometry/vector.ts";
// num
export type {
  AdjustedObservation,
  Adjustment,
  AdjustmentTest,
  GlobalTest,
} from "./num/adjustment.ts";
export { adjust, USUAL_ADJUSTMENT_TEST } from "./num/adjustment.ts";
export { type AllanCurve, type AllanCurveOptions, allanCurve } from "./num/allan-curve.ts";
export { type AllanEstimator, allanDeviation } from "./num/allan-deviation.ts";
export { type AllanTerms, readAllanTerms } from "./num/allan-terms.ts";
export { chiSquareCdf, chiSquareQuantile, chiSquareUpper } from "./num/chi-square.ts";
export { choleskyFactor } from "./num/cholesky.ts";
export { erf, erfc } from "./num/error-function.ts";
export { fCdf, fQuantile, fUpper } from "./num/f-distribution.ts";
export { findRoot } from "./num/find-root.ts";
export { fitLine, type LineFit } from "./num/fit-line.ts";
export { logGamma } from "./num/gamma.ts";
export { incompleteBeta } from "./num/incomplete-beta.ts";
export { incompleteGamma } from "./num/incomplete-gamma.ts";
export { integrate } from "./num/integrate.ts";
export {
  type LeastSquaresSolution,
  solveCorrelatedLeastSquares,
  solveLeastSquares,
} from "./num/least-squares.ts";
export { marcumQ } from "./num/marcum-q.ts";
export { type Matrix, matrixElement, matrixFromRows, zeroMatrix } from "./num/matrix.ts";
export { median } from "./num/median.ts";
export {
  autocorrelation,
  lag1Autocorrelation,
  mean,
  sampleStandardDeviation,
  sampleVariance,
} from "./num/moments.ts";
export { normalBetween, normalCdf, normalDensity, normalQuantile, normalUpper } from "./num/normal.ts";
export {
  fillNormals,
  fillUniforms,
  normalAt,
  type RandomStream,
  uniformAt,
} from "./num/random-stream.ts";
export { reverseArrangements, reverseArrangementsCdf } from "./num/reverse-arrangements.ts";
export { type SeriesMean, seriesMean } from "./num/series-mean.ts";
export {
  judgeSteadiness,
  type Steadiness,
  type SteadinessLimits,
  type UnsteadyReason,
} from "./num/steadiness.ts";
export { studentTCdf, studentTQuantile } from "./num/student-t.ts";
export { threefry } from "./num/threefry.ts";
export { vonNeumannLimit, vonNeumannRatio } from "./num/von-neumann.ts";
// path
export { computePath } from "./path/compute-path.ts";
export { dogleg, ratioFactor } from "./path/dogleg.ts";
export type { HolePath } from "./path/hole-path.ts";
export type { PathPoint } from "./path/interpolate-path.ts";
export { depthAtDown, interpolatePath, positionAt, tangentAt } from "./path/interpolate-path.ts";
export type { PathMethodId } from "./path/path-method.ts";
export { PATH_METHODS } from "./path/path-method.ts";
// readings
export { type AssessedWindow, assessWindow } from "./readings/assess-window.ts";
export { type CondensedLog, condenseLog } from "./readings/condense-log.ts";
export {
  type CondenseOptions,
  type ContinuousLog,
  type NoReadingReason,
  type PassedOver,
  type SteadySettings,
  type StopReading,
  type Stretch,
  USUAL_STEADY,
} from "./readings/continuous-log.ts";
export type { DeclaredError } from "./readings/declared-error.ts";
export type {
  ClosureModel,
  HeadingReference,
  Leg,
  Measures,
  Readings,
  SurveyRun,
} from "./readings/survey-run.ts";
export { CLOSURE_MODELS, LEGS, MEASURES } from "./readings/survey-run.ts";
export type { Issue, Place, Result, Severity } from "./result.ts";
// (root)
export { ContractError, contract, fail, ok } from "./result.ts";
export { endAllowanceM } from "./survey/end-allowance.ts";
export type { Job, SitePlace } from "./survey/job.ts";
export type { RunUncertainty, SharedEffect } from "./survey/propagate-run.ts";
export { budgetOfRun, propagateRun } from "./survey/propagate-run.ts";
export type { ReduceOptions } from "./survey/reduce-job.ts";
// survey
export { reduceJob } from "./survey/reduce-job.ts";
export type { ReducedRun } from "./survey/reduce-run.ts";
export { reduceRun } from "./survey/reduce-run.ts";
export type {
  AxisRow,
  ElementResult,
  ElementUncertaintyResult,
  JobResults,
  OffsetEllipse,
  RunResult,
  SourceShare,
  TrialSummary,
  VerdictResult,
  VerticalityResult,
} from "./survey/results.ts";
export { type RuleRisk, ruleRisks } from "./survey/rule-risks.ts";
export type { RunContext } from "./survey/run-context.ts";
export { stepRevisions } from "./survey/steps.ts";
export type { Covariance, Effect, UncertainAxis } from "./survey/uncertain-axis.ts";
export { covarianceOf, differenceBetween, effectsOf } from "./survey/uncertain-axis.ts";
export type { OffsetCovariance } from "./survey/value-uncertainty.ts";
export { offsetCovariance } from "./survey/value-uncertainty.ts";
export type { Budget, BudgetEntry } from "./uncertainty/budget.ts";
// uncertainty
export {
  budgetKey,
  budgetKeys,
  sourceValueFromSi,
  sourceValueToSi,
} from "./uncertainty/budget.ts";
export { coverageCircle } from "./uncertainty/coverage-circle.ts";
export {
  type CoverageInterval,
  shortestInterval,
  symmetricInterval,
} from "./uncertainty/coverage-interval.ts";
export {
  coverageFactor,
  type ErrorEllipse,
  errorEllipse,
  type PlanCovariance,
} from "./uncertainty/error-ellipse.ts";
export type { SourceId, SourceKind } from "./uncertainty/error-source.ts";
export {
  DISTRIBUTION_SHAPES,
  type DistributionShape,
  sourceKind,
  sourceKinds,
} from "./uncertainty/error-source.ts";
export { type InputDistribution, momentsOf } from "./uncertainty/input-distribution.ts";
export type { InstrumentClass } from "./uncertainty/instrument-class.ts";
export {
  DEFAULT_INSTRUMENT_CLASS,
  instrumentClasses,
  instrumentClassOf,
} from "./uncertainty/instrument-class.ts";
export { probabilityInsideCircle } from "./uncertainty/probability-inside-circle.ts";
export { probabilityBelow, probabilityBetween } from "./uncertainty/probability-of-value.ts";
export {
  type AdaptiveOptions,
  type AdaptiveResult,
  propagateAdaptively,
} from "./uncertainty/propagate-adaptively.ts";
export {
  effectiveDegreesOfFreedom,
  type FirstOrderResult,
  type Model,
  propagateFirstOrder,
} from "./uncertainty/propagate-first-order.ts";
export {
  type MonteCarloOptions,
  propagateMonteCarlo,
  type SampleSummary,
  summariseSample,
} from "./uncertainty/propagate-monte-carlo.ts";
export {
  type DecisionRisk,
  decisionRisk,
  gammaPopulation,
  guardBand,
  type Interval,
  normalPopulation,
  type Population,
  testUncertaintyRatio,
} from "./uncertainty/risk.ts";
export { type Evidence, TYPE_A_USES, type TypeAUse } from "./uncertainty/type-a/evidence.ts";
export { fromAllanCurve } from "./uncertainty/type-a/from-allan-curve.ts";
export {
  type Closure,
  type ClosureTest,
  fromClosures,
  testClosures,
} from "./uncertainty/type-a/from-closures.ts";
export { fromDoubleRuns } from "./uncertainty/type-a/from-double-runs.ts";
export { fromFaceSums } from "./uncertainty/type-a/from-face-sums.ts";
export type { TypeAOrigin, TypeAValue } from "./uncertainty/type-a/type-a-value.ts";
export { type HalvingAnswer, type VariancePart, whatWouldHalve } from "./uncertainty/what-would-halve.ts";
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
