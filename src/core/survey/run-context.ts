import type { Calibration, CalibrationKind, Instrument } from "../calibration/calibration.ts";
import type { StepReport } from "../correction/step-report.ts";
import type { NorthEastDown } from "../geometry/vector.ts";
import type { PathMethodId } from "../path/path-method.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import type { Issue, Severity } from "../result.ts";
import {
  DEFAULT_INSTRUMENT_CLASS,
  type InstrumentClass,
  instrumentClassOf,
} from "../uncertainty/instrument-class.ts";
import type { Evidence } from "../uncertainty/type-a/evidence.ts";
import type { SitePlace } from "./job.ts";

/** What a run needs beside its own readings. */
export interface RunContext {
  readonly place: SitePlace;
  readonly instrument: Instrument | undefined;
  /** calibrations that the run names, in the order in which it names them */
  readonly calibrations: readonly Calibration[];
  /** as-built position of the reference top, where depth is 0 */
  readonly top: NorthEastDown;
  readonly method: PathMethodId;
  /** what the job's own runs show of the instrument, where that takes the place of declared values */
  readonly evidence?: readonly Evidence[];
}

export const classOf = (context: RunContext): InstrumentClass =>
  instrumentClassOf(context.instrument?.budget ?? DEFAULT_INSTRUMENT_CLASS) ??
  instrumentClassOf(DEFAULT_INSTRUMENT_CLASS)!;

/** The calibration of a kind that counts: the last one that the run names. */
export function calibrationOf<K extends CalibrationKind>(
  context: RunContext,
  kind: K,
): Extract<Calibration, { kind: K }> | undefined {
  const ofKind = context.calibrations.filter(
    (calibration): calibration is Extract<Calibration, { kind: K }> => calibration.kind === kind,
  );
  return ofKind[ofKind.length - 1];
}

/** Gathers the steps and the findings of one run. */
export class RunRecord {
  readonly steps: StepReport[] = [];
  readonly findings: Issue[] = [];
  readonly #run: SurveyRun;

  constructor(run: SurveyRun) {
    this.#run = run;
  }

  step(step: string, revision: number, effect: StepReport["effect"]): void {
    this.steps.push({ step, revision, effect });
  }

  /** @param row row of the readings that the finding is about; left out where it is about the whole run */
  find(severity: Severity, code: string, values: Issue["values"], row?: number): void {
    const line = row === undefined ? undefined : this.#run.readings.line[row];
    const place = { file: this.#run.file, ...(line === undefined ? {} : { line }) };
    this.findings.push({ code, severity, place, values: { run: this.#run.id, ...values } });
  }
}
