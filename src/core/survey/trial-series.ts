import type { CriterionRequest } from "../criteria/criterion.ts";
import { isMeasured, type ValueUncertainty } from "../criteria/decide.ts";
import { criterion } from "../criteria/registry.ts";
import { mean, sampleStandardDeviation } from "../num/moments.ts";
import { shortestInterval } from "../uncertainty/coverage-interval.ts";
import type { ElementAxis, ElementWork } from "./axis-of-element.ts";
import type { TrialSummary } from "./results.ts";
import { type TrialOptions, trialAxis } from "./trials.ts";

/** Trials where nobody asked for a number: in batches, until the verdict is clear or this many are done. */
const MOST_UNASKED = 400;
const BATCH = 50;
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
  readonly #axes: (ElementAxis | undefined)[] = [];
  readonly #summaries: TrialSummary[] = [];

  constructor(work: ElementWork, tubeStandardM: number, options: TrialOptions) {
    this.#work = work;
    this.#tubeStandardM = tubeStandardM;
    this.#options = options;
  }

  /** @returns undefined where too few trials can be measured to speak of a probability. */
  ofValue(request: CriterionRequest): ValueUncertainty | undefined {
    const outcome: Outcome = { values: [], within: 0, measured: 0 };
    const asked = this.#options.trials;
    const most = asked ?? MOST_UNASKED;
    let done = 0;
    while (done < most && !(asked === undefined && done > 0 && this.#isClear(outcome, done))) {
      const until = Math.min(most, done + BATCH);
      for (; done < until; done++) this.#measure(request, done, outcome);
    }
    if (outcome.measured < 0.9 * done || outcome.measured < 2) return undefined;
    const probabilityWithin = outcome.within / outcome.measured;
    const sorted = Float64Array.from(outcome.values).sort();
    const interval = shortestInterval(sorted, 0.95);
    this.#summaries.push({
      criterionId: request.id,
      trials: done,
      seed: this.#options.seed,
      mean: mean(sorted),
      standardUncertainty: sampleStandardDeviation(sorted),
      from95: interval.lower,
      to95: interval.upper,
      probabilityTolerance: Math.sqrt((probabilityWithin * (1 - probabilityWithin)) / done),
    });
    return { standardUncertainty: sampleStandardDeviation(sorted), probabilityWithin };
  }

  summary(): readonly TrialSummary[] {
    return this.#summaries;
  }

  #measure(request: CriterionRequest, trial: number, outcome: Outcome): void {
    const found = this.#axisOf(trial);
    const measured = found && criterion(request.kind)?.measure(found.axis, request);
    if (measured === undefined || !isMeasured(measured) || !Number.isFinite(measured.value)) return;
    outcome.measured += 1;
    outcome.values.push(measured.value);
    if (measured.value <= measured.limit) outcome.within += 1;
  }

  #axisOf(trial: number): ElementAxis | undefined {
    while (this.#axes.length <= trial)
      this.#axes.push(trialAxis(this.#work, this.#tubeStandardM, this.#options.seed, this.#axes.length));
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
