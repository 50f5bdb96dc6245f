import type { CriterionSource, Verdict } from "../criteria/criterion.ts";
import type { HolePath } from "../path/hole-path.ts";
import type { PathMethodId } from "../path/path-method.ts";
import type { Issue } from "../result.ts";
import type { DecisionRuleName } from "./job.ts";

/** What a named step of the computation changed, and by how much. Units are in the keys. */
export interface StepReport {
  readonly step: string;
  readonly revision: number;
  readonly effect: Readonly<Record<string, number | string>>;
}

/** One run, reduced. `path` is undefined where the run could not be worked out; the findings say why. */
export interface RunResult {
  readonly runId: string;
  readonly elementId: string;
  readonly tubeId: string | undefined;
  readonly method: PathMethodId;
  readonly steps: readonly StepReport[];
  readonly findings: readonly Issue[];
  readonly path: HolePath | undefined;
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

export interface VerdictResult {
  readonly criterionId: string;
  readonly kind: string;
  readonly verdict: Verdict;
  /** NaN where nothing was measured */
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly atDownM: number;
  readonly standardUncertainty: number | undefined;
  readonly probabilityWithin: number | undefined;
  readonly rule: DecisionRuleName;
  /** why it was not judged, or why it is what it is: codes for text/ with values */
  readonly reasons: readonly {
    readonly code: string;
    readonly values: Readonly<Record<string, string | number>>;
  }[];
  readonly revision: number;
  readonly source: CriterionSource | undefined;
}

export interface ElementResult {
  readonly elementId: string;
  readonly runIds: readonly string[];
  /** undefined where no run of the element could be worked out */
  readonly path: HolePath | undefined;
  readonly axis: readonly AxisRow[];
  readonly verticality: VerticalityResult | undefined;
  readonly verdicts: readonly VerdictResult[];
  readonly findings: readonly Issue[];
}

export interface JobResults {
  readonly runs: readonly RunResult[];
  readonly elements: readonly ElementResult[];
}
