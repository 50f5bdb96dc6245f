import type { Calibration } from "../calibration/calibration.ts";
import { depthScale } from "../calibration/depth-scale.ts";
import type { DeclaredError } from "../readings/declared-error.ts";
import type { HeadingReference, SurveyRun } from "../readings/survey-run.ts";
import { type Budget, type BudgetEntry, budgetEntry, budgetOf, classBudget } from "./budget.ts";
import { type SourceId, sourceKind } from "./error-source.ts";
import type { InstrumentClass } from "./instrument-class.ts";

/** What the budget of a run is made from, weakest first. */
export interface BudgetGrounds {
  readonly run: SurveyRun;
  readonly instrumentClass: InstrumentClass;
  /** values that the job gives for the instrument */
  readonly ofInstrument: readonly DeclaredError[];
  readonly calibrations: readonly Calibration[];
}

/**
 * The budget of a run: usual values of the class, then what the job says of the instrument, then what calibrations and references
 * say of themselves, then what the job says of the run.
 *
 * Sources that cannot act in a run of this kind are left out.
 *
 * Frame: none. Source: rule E1.
 */
export function resolveBudget(grounds: BudgetGrounds): Budget {
  const { run } = grounds;
  const all = budgetOf([
    ...classBudget(grounds.instrumentClass),
    ...declared(grounds.ofInstrument, "job, instrument"),
    ...grounds.calibrations.flatMap(calibrationEntries),
    ...referenceEntries(run),
    ...declared(run.declaredErrors, "job, run"),
  ]);
  return new Map(
    [...all].filter(([id, { value }]) => value > 0 && sourceKind(id)!.measures.includes(run.measures)),
  );
}

function declared(errors: readonly DeclaredError[], from: string): readonly BudgetEntry[] {
  return errors.flatMap(({ source, value, distribution }) => {
    const kind = sourceKind(source);
    if (kind === undefined) return [];
    const entry = budgetEntry(kind.id, value, from);
    return [distribution === undefined ? entry : { ...entry, distribution }];
  });
}

/** What a calibration says of its own uncertainty; an uncertainty that it does not show is left to the class. */
function calibrationEntries(calibration: Calibration): readonly BudgetEntry[] {
  const from = `calibration ${calibration.id}`;
  if (calibration.kind === "depth-scale") {
    const scale = depthScale(calibration.lengthM, calibration.counts);
    const relative = Math.abs(scale.standardUncertainty / scale.metresPerCount);
    if (!(relative > 0)) return [];
    return [{ ...budgetEntry("depth-scale", relative, from), degreesOfFreedom: scale.repeats - 1 }];
  }
  if (calibration.kind === "gyro-zero" && calibration.standardUncertaintyRadPerS !== undefined)
    return [budgetEntry("gyro-bias", calibration.standardUncertaintyRadPerS, from)];
  return [];
}

function referenceEntries(run: SurveyRun): readonly BudgetEntry[] {
  const entry = (source: SourceId, reference: HeadingReference | undefined) =>
    reference === undefined
      ? []
      : [budgetEntry(source, reference.standardUncertaintyRad, "reference of the run")];
  const declinations = [run.opening, ...run.ties, run.closing].map(
    (reference) => reference?.declinationUncertaintyRad ?? 0,
  );
  const declination = Math.max(run.azimuthDeclinationUncertaintyRad, ...declinations);
  const { azimuthUncertaintyRad, start } = run;
  return [
    ...entry("opening-heading", run.opening),
    ...entry("closing-heading", run.closing),
    ...(declination > 0 ? [budgetEntry("declination", declination, "magnetic model")] : []),
    ...(azimuthUncertaintyRad > 0
      ? [budgetEntry("azimuth-bias", azimuthUncertaintyRad, "azimuths of the run")]
      : []),
    ...(start?.standardUncertaintyM === undefined
      ? []
      : [
          budgetEntry("head-east", start.standardUncertaintyM, "start of the run"),
          budgetEntry("head-north", start.standardUncertaintyM, "start of the run"),
        ]),
  ];
}
