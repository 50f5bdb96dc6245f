import type { CriterionRequest, JudgedAxis } from "../criteria/criterion.ts";
import { isMeasured, type ValueUncertainty } from "../criteria/decide.ts";
import { criterion } from "../criteria/registry.ts";
import { mean, sampleStandardDeviation } from "../num/moments.ts";
import { shortestInterval } from "../uncertainty/coverage-interval.ts";
import { numericalTolerance } from "../uncertainty/propagate-adaptively.ts";
import type { ElementWork } from "./axis-of-element.ts";
import type { TrialSummary } from "./results.ts";
import { type TrialOptions, trialAxis } from "./trials.ts";

/** Trials where nobody asked for a number: in batches, until the verdict is clear or this many are done. */
const MOST_UNASKED = 400;
const BATCH_UNASKED = 50;
/** trials "auto": batches until the result stands, or this many are done */
const MOST_ADAPTIVE = 20_000;
const BATCH_ADAPTIVE = 200;
const LEAST_BATCHES = 3;
/** part of the trials that must give a value */
const LEAST_MEASURED = 0.9;
/** a verdict is clear when its probability lies this many standard deviations off what is asked for */
const CLEAR = 3;

interface Outcome {
  readonly values: number[];
  within: number;
  measured: number;
}

/** Trials of one element, made once and used by all its rules. */
export class TrialSeries {
  readonly #work: ElementWork;
  readonly #tubeStandardM: number;
  readonly #options: TrialOptions;
  /** axes only: what a trial was made from would fill the memory */
  readonly #axes: (JudgedAxis | undefined)[] = [];
  readonly #summaries: TrialSummary[] = [];

  constructor(work: ElementWork, tubeStandardM: number, options: TrialOptions) {
    this.#work = work;
    this.#tubeStandardM = tubeStandardM;
    this.#options = options;
  }

  /** @returns undefined where too few trials can be measured to speak of a probability. */
  ofValue(request: CriterionRequest): ValueUncertainty | undefined {
    const outcome: Outcome = { values: [], within: 0, measured: 0 };
    const { most, batch } = this.#plan();
    let done = 0;
    while (done < most && !(done > 0 && this.#isEnough(outcome, done))) {
      const until = Math.min(most, done + batch);
      for (; done < until; done++) this.#measure(request, done, outcome);
    }
    if (outcome.measured < LEAST_MEASURED * done || outcome.measured < 2) return undefined;
    const probabilityWithin = outcome.within / outcome.measured;
    const { standardUncertainty, ...rest } = summaryOf(Float64Array.from(outcome.values));
    this.#summaries.push({
      criterionId: request.id,
      trials: done,
      seed: this.#options.seed,
      standardUncertainty,
      ...rest,
      probabilityTolerance: Math.sqrt((probabilityWithin * (1 - probabilityWithin)) / done),
    });
    return { standardUncertainty, probabilityWithin };
  }

  summary(): readonly TrialSummary[] {
    return this.#summaries;
  }

  #plan(): { most: number; batch: number } {
    const { trials } = this.#options;
    if (trials === undefined) return { most: MOST_UNASKED, batch: BATCH_UNASKED };
    return trials === "auto"
      ? { most: MOST_ADAPTIVE, batch: BATCH_ADAPTIVE }
      : { most: trials, batch: trials };
  }

  #isEnough(outcome: Outcome, done: number): boolean {
    const { trials } = this.#options;
    if (trials === "auto") return hasSettled(Float64Array.from(outcome.values));
    return trials === undefined && this.#isClear(outcome, done);
  }

  #measure(request: CriterionRequest, trial: number, outcome: Outcome): void {
    const axis = this.#axisOf(trial);
    const measured = axis && criterion(request.kind)?.measure(axis, request);
    if (measured === undefined || !isMeasured(measured) || !Number.isFinite(measured.value)) return;
    outcome.measured += 1;
    outcome.values.push(measured.value);
    if (measured.value <= measured.limit) outcome.within += 1;
  }

  #axisOf(trial: number): JudgedAxis | undefined {
    while (this.#axes.length <= trial) {
      const found = trialAxis(this.#work, this.#tubeStandardM, this.#options.seed, this.#axes.length);
      this.#axes.push(found?.axis);
    }
    return this.#axes[trial];
  }

  /** Whether more trials could hardly change the verdict: the share lies well off both probabilities that decide. */
  #isClear({ within, measured }: Outcome, done: number): boolean {
    const asked = this.#work.decision.probability;
    const share = (within + 1) / (measured + 2);
    const spread = Math.sqrt((share * (1 - share)) / done);
    return [asked, 1 - asked].every((edge) => Math.abs(share - edge) > CLEAR * spread);
  }
}

function summaryOf(
  values: Float64Array,
): Pick<TrialSummary, "mean" | "standardUncertainty" | "from95" | "to95"> {
  const sorted = values.slice().sort();
  const { lower, upper } = shortestInterval(sorted, 0.95);
  return {
    mean: mean(sorted),
    standardUncertainty: sampleStandardDeviation(sorted),
    from95: lower,
    to95: upper,
  };
}

/**
 * Whether mean, standard uncertainty and both ends of the interval stand to the first digit of the uncertainty: twice the standard
 * deviation of each, averaged over the batches, within half a unit of that digit.
 *
 * Source: JCGM 101:2008, clause 7.9 (from memory).
 */
function hasSettled(values: Float64Array): boolean {
  const batches = Math.floor(values.length / BATCH_ADAPTIVE);
  if (batches < LEAST_BATCHES) return false;
  const each = Array.from({ length: batches }, (_, i) =>
    summaryOf(values.subarray(i * BATCH_ADAPTIVE, (i + 1) * BATCH_ADAPTIVE)),
  );
  const tolerance = numericalTolerance(sampleStandardDeviation(values), 1);
  return (["mean", "standardUncertainty", "from95", "to95"] as const).every((key) => {
    const spread = sampleStandardDeviation(each.map((summary) => summary[key]));
    return (2 * spread) / Math.sqrt(batches) <= tolerance;
  });
}
