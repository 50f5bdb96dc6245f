import type { Calibration } from "../calibration/calibration.ts";
import { depthScale } from "../calibration/depth-scale.ts";
import type { DeclaredError } from "../readings/declared-error.ts";
import type { HeadingReference, SurveyRun } from "../readings/survey-run.ts";
import { type Budget, type BudgetEntry, budgetEntry, budgetOf, classBudget } from "./budget.ts";
import { type SourceId, sourceKind } from "./error-source.ts";
import type { InstrumentClass } from "./instrument-class.ts";
import type { Evidence } from "./type-a/evidence.ts";
import type { TypeAOrigin } from "./type-a/type-a-value.ts";

/** What the budget of a run is made from, weakest first. */
export interface BudgetGrounds {
  readonly run: SurveyRun;
  readonly instrumentClass: InstrumentClass;
  /** values that the job gives for the instrument */
  readonly ofInstrument: readonly DeclaredError[];
  readonly calibrations: readonly Calibration[];
  /** what the job's own runs show; only what is to be used */
  readonly evidence: readonly Evidence[];
}

/**
 * The budget of a run: usual values of the class, then what the job says of the instrument, then what calibrations and references
 * say of themselves, then what the job's own runs show where that is to count, then what the job says of the run.
 *
 * Sources that cannot act in a run of this kind are left out.
 *
 * Frame: none. Source: rule E1.
 */
export function resolveBudget(grounds: BudgetGrounds): Budget {
  const { run } = grounds;
  const before = [
    ...classBudget(grounds.instrumentClass),
    ...declared(grounds.ofInstrument, "job, instrument"),
    ...grounds.calibrations.flatMap(calibrationEntries),
    ...referenceEntries(run),
  ];
  const all = budgetOf([
    ...before,
    ...grounds.evidence.flatMap((each) => evidenceEntries(each, budgetOf(before))),
    ...declared(run.declaredErrors, "job, run"),
  ]);
  return new Map(
    [...all].filter(([id, { value }]) => value > 0 && sourceKind(id)!.measures.includes(run.measures)),
  );
}

const ORIGIN_WORDS: Readonly<Record<TypeAOrigin, string>> = {
  "double-runs": "double runs of the job",
  "face-sums": "face sums of the job",
  closures: "closures of the job",
  "allan-curve": "log at rest of the job",
};

/**
 * Evidence in place of declared values. Where it speaks of two sources together, the first keeps its declared value and the second
 * takes what is left; where nothing is left, the first takes all.
 */
function evidenceEntries(evidence: Evidence, before: Budget): readonly BudgetEntry[] {
  const { sources, value, degreesOfFreedom, origin } = evidence;
  const from = `${ORIGIN_WORDS[origin]}, ${Math.round(degreesOfFreedom)} degrees of freedom`;
  const first = before.get(sources[0]!)?.value ?? 0;
  const kept = sources.length > 1 ? Math.min(value, first) : value;
  const values = [kept, Math.sqrt(Math.max(0, value * value - kept * kept))];
  return sources.map((source, i) => ({
    source,
    value: values[i]!,
    distribution: "normal",
    from,
    degreesOfFreedom,
  }));
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
