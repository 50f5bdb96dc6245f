import { appliesTo, type Decision, type Job, reduceJob, VERDICTS, type Verdict } from "#core";
import type { RuleDraft, Trial } from "../desk-set-up.ts";
import { breath } from "../jobs/breath.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { verdictOf } from "../view/verdict-of-element.ts";
import { requestOf } from "./allowances-view.ts";

/**
 * Judges the elements anew by other rules and another way of deciding. Elements without a run are left out: nothing can change.
 *
 * @param isWanted false ends it; undefined is answered then.
 */
export async function tryRules(
  { read, results }: JobNow,
  rules: readonly RuleDraft[],
  decision: Decision,
  progress: (done: number, total: number) => void,
  isWanted: () => boolean,
): Promise<Trial | undefined> {
  if (read.job === undefined) return undefined;
  const job: Job = { ...read.job, criteria: rules.map(requestOf), decision };
  const measured = new Set(job.runs.map(({ elementId }) => elementId));
  const elements = job.elements.filter(({ id }) => measured.has(id) && results.has(id));
  const [before, after] = [noVerdicts(), noVerdicts()];
  const changing: string[] = [];
  for (const [i, element] of elements.entries()) {
    progress(i, elements.length);
    await breath();
    if (!isWanted()) return undefined;
    const held = verdictOf(results.get(element.id)!.result);
    const isJudged = job.criteria.some((rule) => appliesTo(rule, element));
    const tried = isJudged ? reduceJob(job, { only: [element.id] }).elements[0] : undefined;
    const verdict = tried === undefined ? "not-judged" : verdictOf(tried);
    before[held]++;
    after[verdict]++;
    if (verdict !== held) changing.push(element.id);
  }
  return { elements: elements.length, before, after, changing };
}

const noVerdicts = (): Record<Verdict, number> =>
  Object.fromEntries(VERDICTS.map((verdict) => [verdict, 0])) as Record<Verdict, number>;
