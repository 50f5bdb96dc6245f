import type { StepReport } from "../correction/step-report.ts";
import type { Judgement } from "../criteria/judge.ts";
import type { HolePath } from "../path/hole-path.ts";
import type { PathMethodId } from "../path/path-method.ts";
import type { Issue } from "../result.ts";
import type { BudgetEntry } from "../uncertainty/budget.ts";
import type { SourceId } from "../uncertainty/error-source.ts";
import type { Evidence } from "../uncertainty/type-a/evidence.ts";
import type { Covariance } from "./uncertain-axis.ts";

/** One run, reduced. `path` is undefined where the run could not be worked out; the findings say why. */
export interface RunResult {
  readonly runId: string;
  readonly elementId: string;
  readonly tubeId: string | undefined;
  readonly method: PathMethodId;
  readonly steps: readonly StepReport[];
  readonly findings: readonly Issue[];
  readonly path: HolePath | undefined;
  /** covariance of each station's point: nn, ne, nd, ee, ed, dd, square metres; empty where there is no path */
  readonly covariances: readonly Covariance[];
  /** stretches between stations longer than the station limit, metres along the hole */
  readonly gaps: readonly { readonly fromM: number; readonly toM: number }[];
  /** false: a misclosure over its limit or the like; the path is shown, the element is not judged */
  readonly judgeable: boolean;
}

/** One row of the as-built axis against the design. Metres; offsets square to the design axis. */
export interface AxisRow {
  readonly depthM: number;
  readonly northM: number;
  readonly eastM: number;
  readonly downM: number;
  readonly offsetNorthM: number;
  readonly offsetEastM: number;
  readonly offsetM: number;
  /** towards the rake bearing (or along the wall) */
  readonly alongM: number;
  /** to the right of along */
  readonly acrossM: number;
  /** true where the row lies between two stations, on the arc */
  readonly interpolated: boolean;
}

export interface VerticalityResult {
  /** relative to the design axis: tangent of the angle of the chord from the commencing surface to the lowest station */
  readonly chordRatio: number;
  /** the worst tangent over the stated length; NaN if nothing was long enough */
  readonly worstSegmentRatio: number;
  readonly worstSegmentAtDownM: number;
}

/** One rule held against one element. */
export type VerdictResult = Judgement;

/** Part of one source in the variance of the offset at a place. */
export interface SourceShare {
  readonly source: SourceId;
  /** standard offset that the source alone would leave (along and across together), metres */
  readonly standardM: number;
  /** of the variance, [0, 1] */
  readonly share: number;
}

/** Outcome of the trials for one rule. */
export interface TrialSummary {
  readonly criterionId: string;
  readonly trials: number;
  readonly seed: number;
  readonly mean: number;
  readonly standardUncertainty: number;
  /** shortest interval that holds 95 % of the trials */
  readonly from95: number;
  readonly to95: number;
  /** standard deviation of the probability that comes from the number of trials */
  readonly probabilityTolerance: number;
}

/** Uncertainty of an offset in the plane square to the design axis. Metres. */
export interface OffsetEllipse {
  /** radius around the found point that holds the true one with 95 %: the one number that tables show */
  readonly u95M: number;
  readonly semiMajor95M: number;
  readonly semiMinor95M: number;
  /** direction of the larger axis, radians from "along" towards "across" */
  readonly majorFromAlongRad: number;
}

/** Uncertainty of the as-built axis of an element, row by row of its axis. */
export interface ElementUncertaintyResult {
  /** covariance of each row's point: nn, ne, nd, ee, ed, dd, square metres */
  readonly covariances: readonly Covariance[];
  /** ellipse that holds the true offset with 95 %, in the plane square to the design axis, row by row */
  readonly ellipses: readonly OffsetEllipse[];
  readonly budget: readonly {
    readonly place: "toe" | "worst";
    readonly atDownM: number;
    readonly shares: readonly SourceShare[];
  }[];
  /** standard values that were used, and where they come from */
  readonly sources: readonly BudgetEntry[];
  readonly trials: readonly TrialSummary[];
}

export interface ElementResult {
  readonly elementId: string;
  readonly runIds: readonly string[];
  /** undefined where no run of the element could be worked out */
  readonly path: HolePath | undefined;
  readonly axis: readonly AxisRow[];
  readonly gaps: RunResult["gaps"];
  readonly verticality: VerticalityResult | undefined;
  readonly verdicts: readonly VerdictResult[];
  /** undefined where there is no axis */
  readonly uncertainty: ElementUncertaintyResult | undefined;
  readonly findings: readonly Issue[];
}

export interface JobResults {
  readonly runs: readonly RunResult[];
  readonly elements: readonly ElementResult[];
  /** standard values that the runs and calibrations of the job show, beside the declared ones */
  readonly evidence: readonly Evidence[];
}
