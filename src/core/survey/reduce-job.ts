import type { DesignElement } from "../elements/element.ts";
import type { NorthEastDown } from "../geometry/vector.ts";
import type { PathMethodId } from "../path/path-method.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { contract } from "../result.ts";
import type { Evidence } from "../uncertainty/type-a/evidence.ts";
import type { ElementWork, WorkedRun } from "./axis-of-element.ts";
import { gatherEvidence } from "./gather-evidence.ts";
import type { Job } from "./job.ts";
import { propagateRun } from "./propagate-run.ts";
import { reduceElement } from "./reduce-element.ts";
import { reduceRun } from "./reduce-run.ts";
import type { JobResults, RunResult } from "./results.ts";
import type { RunContext } from "./run-context.ts";
import { covarianceOf, effectsOf } from "./uncertain-axis.ts";

export interface ReduceOptions {
  /** default: minimum curvature */
  readonly method?: PathMethodId;
  /** ids of the elements to work out; all when left out */
  readonly only?: readonly string[];
  /** ids of the elements whose runs give evidence, where that is not `only`: a share of a job speaks for all of it */
  readonly evidenceFrom?: readonly string[];
  /** trials of the budget for every verdict; without, only where no exact probability is known */
  readonly trials?: number | "auto";
  /** of the trials; 1 when left out */
  readonly seed?: number;
  /** false: paths, axes and findings only, without uncertainty and without holding anything against the rules; much quicker */
  readonly verdicts?: boolean;
  /** told after each element */
  readonly onProgress?: (done: number, total: number) => void;
}

/**
 * Works a whole job out: every run to a path, every element to an axis and its verdicts.
 *
 * Time grows in proportion to the readings. The same job always gives the same results.
 *
 * @param job read and checked; runs name elements and tubes that exist.
 * @throws ContractError if a run names an element or a tube that the job does not have.
 *
 * Frame: site NED. Source: rules A to F.
 * Checked against: the rigid-body simulator (test/jobs), test/published.
 */
export function reduceJob(job: Job, options: ReduceOptions = {}): JobResults {
  const method = options.method ?? "minimum-curvature";
  const elements = job.elements.filter(
    (element) => options.only === undefined || options.only.includes(element.id),
  );
  const runsOf = groupBy(job.runs, (run) => run.elementId);
  const tubesOf = groupBy(job.tubes, (tube) => tube.elementId);
  const context = contextMaker(job, method);
  const trials = { trials: options.trials, seed: options.seed ?? 1 };
  const verdicts = options.verdicts ?? true;
  const replaces = job.typeA === "replace";
  const firstPass = (element: DesignElement): readonly FirstPass[] =>
    (runsOf.get(element.id) ?? []).map((run) => {
      const own = context(run, topOf(run, element, tubesOf.get(element.id) ?? []));
      return { run, context: own, reduced: reduceRun(run, own) };
    });
  // evidence that goes into the budgets comes from the whole job, so that what is asked for changes no verdict
  const speaks = options.evidenceFrom;
  const asked = speaks === undefined ? elements : job.elements.filter(({ id }) => speaks.includes(id));
  const spoken = replaces ? job.elements : asked;
  const worked = new Map(spoken.map((element) => [element.id, firstPass(element)]));
  const evidence = gatherEvidence([...worked.values()].flat(), replaces);
  const usedOf = groupBy(
    evidence.filter(({ used }) => used),
    ({ instrumentId }) => instrumentId,
  );
  const runs: RunResult[] = [];
  const results = elements.map((element, i) => {
    const work: ElementWork = {
      element,
      tubes: tubesOf.get(element.id) ?? [],
      runs: worked
        .get(element.id)!
        .map((each) =>
          verdicts
            ? withUncertainty(each, usedOf.get(each.run.instrumentId))
            : { ...each, uncertainty: undefined },
        ),
      criteria: verdicts ? job.criteria : [],
      decision: job.decision,
      method,
    };
    runs.push(...work.runs.map(withCovariances));
    const result = reduceElement(work, trials);
    options.onProgress?.(i + 1, elements.length);
    return result;
  });
  return { runs, elements: results, evidence };
}

/** A run worked out, before its uncertainty is known: evidence of all runs may come in between. */
type FirstPass = Omit<WorkedRun, "uncertainty">;

function withUncertainty(
  { run, context, reduced }: FirstPass,
  evidence: readonly Evidence[] = [],
): WorkedRun {
  const own = { ...context, evidence };
  return { run, context: own, reduced, uncertainty: propagateRun(run, own, reduced) };
}

function contextMaker(job: Job, method: PathMethodId) {
  const instruments = new Map(job.instruments.map((instrument) => [instrument.id, instrument]));
  const calibrations = new Map(job.calibrations.map((calibration) => [calibration.id, calibration]));
  return (run: SurveyRun, top: NorthEastDown): RunContext => ({
    place: job.place,
    instrument: instruments.get(run.instrumentId),
    calibrations: run.calibrationIds.flatMap((id) => calibrations.get(id) ?? []),
    top,
    method,
  });
}

/** The covariance of every station of a run. */
function withCovariances({ reduced, uncertainty }: WorkedRun): RunResult {
  if (uncertainty === undefined) return reduced.result;
  const { path } = uncertainty;
  const axis = { path, parts: [{ uncertainty, share: 1 }], tubes: [] };
  return {
    ...reduced.result,
    covariances: Array.from(path.depthM, (depthM) => covarianceOf(effectsOf(axis, depthM))),
  };
}

/** Where depth is 0: the head of the tube, what the run says, or the design head of the element. */
function topOf(run: SurveyRun, element: DesignElement, tubes: ElementWork["tubes"]): NorthEastDown {
  if (run.tubeId === undefined) return run.start ?? element.head;
  const tube = tubes.find((each) => each.id === run.tubeId);
  contract(
    tube !== undefined,
    `reduceJob: run ${run.id} names tube ${run.tubeId}, which ${element.id} has not`,
  );
  return tube.head;
}

function groupBy<T>(values: readonly T[], keyOf: (value: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const value of values) {
    const group = groups.get(keyOf(value));
    if (group === undefined) groups.set(keyOf(value), [value]);
    else group.push(value);
  }
  return groups;
}
