import type { DesignElement } from "../elements/element.ts";
import type { NorthEastDown } from "../geometry/vector.ts";
import type { PathMethodId } from "../path/path-method.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { contract } from "../result.ts";
import type { Job } from "./job.ts";
import { type ElementWork, reduceElement } from "./reduce-element.ts";
import { type ReducedRun, reduceRun } from "./reduce-run.ts";
import type { JobResults } from "./results.ts";
import type { RunContext } from "./run-context.ts";

export interface ReduceOptions {
  /** default: minimum curvature */
  readonly method?: PathMethodId;
  /** ids of the elements to work out; all when left out */
  readonly only?: readonly string[];
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
  const runs: ReducedRun["result"][] = [];
  const results = elements.map((element, i) => {
    const tubes = tubesOf.get(element.id) ?? [];
    const work: ElementWork = {
      element,
      tubes,
      runs: (runsOf.get(element.id) ?? []).map((run) => {
        const top = topOf(run, element, tubes);
        const own = context(run, top);
        return {
          reduced: reduceRun(run, own),
          top,
          stationLimitM: run.stationLimitM,
          instrument: own.instrument,
        };
      }),
      criteria: job.criteria,
      decision: job.decision,
      method,
    };
    runs.push(...work.runs.map(({ reduced }) => reduced.result));
    const result = reduceElement(work);
    options.onProgress?.(i + 1, elements.length);
    return result;
  });
  return { runs, elements: results };
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
