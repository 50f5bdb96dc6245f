import {
  criterion,
  type Decision,
  type ElementResult,
  type Job,
  type Language,
  normalQuantile,
  type Verdict,
  type VerdictResult,
} from "#core";
import { elementView, halvingSentences } from "#figures";
import { checkSeal, createVerifier, type JsonObject, type JsonValue, type Seal, thingKey } from "#records";
import type { RecordedVerdict, RuleView, SealView, VerdictView } from "../desk-review.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { elementRow, elementsInConflict } from "../view/job-view.ts";
import { runRows } from "../view/run-view.ts";
import { verdictOf } from "../view/verdict-of-element.ts";
import { type Decided, decisionOn, readingsAcceptance, VERDICT } from "./acceptance.ts";
import { restsOn } from "./rests-on.ts";

/** The verdict on an element with everything that stands behind it. */
export async function verdictView(
  now: JobNow,
  element: string,
  language: Language,
): Promise<VerdictView | undefined> {
  const { job } = now.read;
  const worked = now.results.get(element);
  const design = job?.elements.find(({ id }) => id === element);
  if (job === undefined || worked === undefined || design === undefined) return undefined;
  const { result } = worked;
  const runs = runRows(now, element);
  const { criteria, decision } = job;
  const view = elementView({ element: design, result, criteria, decision, language, jobName: job.name });
  const said = decisionOn(now.log.state.things[thingKey("element", element)], VERDICT);
  const recorded = said && (await recordedVerdict(now, element, said));
  const isSettled = result.verdicts.every(({ verdict }) => verdict === "within" || verdict === "outside");
  return {
    row: elementRow(design, runs.length, worked, elementsInConflict(now)),
    decision,
    rules: result.verdicts.map((judgement) => ruleView(job, judgement, language)),
    halving: isSettled ? [] : halvingSentences(view),
    recorded,
    seals: await sealViews(now, element, said, recorded?.isCurrent ?? false),
    runs: runs.map(({ id }) => ({ run: id, acceptance: readingsAcceptance(now, id).state })),
    takenBy: [...new Set(runs.flatMap(({ operator }) => operator ?? []))],
  };
}

function ruleView(job: Job, judgement: VerdictResult, language: Language): RuleView {
  const { kind, criterionId, value, limit, source } = judgement;
  const rule = criterion(kind);
  const request = job.criteria.find(({ id }) => id === criterionId);
  return {
    judgement,
    title: rule?.text[language].title ?? kind,
    sentence: request === undefined ? "" : (rule?.describe(request, language) ?? ""),
    source,
    margin: limit - value,
    settlesAt: settlesAt(judgement, job.decision),
  };
}

/**
 * Standard uncertainty at which the value found would be called one way or the other, if its error were normal: the distance from the
 * limit over the quantile of the probability asked for.
 *
 * Source: JCGM 106:2012, guard bands (from memory).
 */
function settlesAt({ verdict, value, limit }: VerdictResult, { probability }: Decision): number | undefined {
  if (verdict !== "too-close-to-call") return undefined;
  return Math.abs(limit - value) / normalQuantile(probability);
}

/** What goes into the log with a verdict: the numbers that were found, and which readings they rest on. */
export async function verdictAnswer(now: JobNow, element: string): Promise<JsonObject | undefined> {
  const result = now.results.get(element)?.result;
  const decision = now.read.job?.decision;
  if (result === undefined || decision === undefined) return undefined;
  return {
    verdict: verdictOf(result),
    rules: rulesOf(result),
    decision: { rule: decision.rule, probability: decision.probability },
    rests_on: await restsOn(now, element),
  };
}

const rulesOf = (result: ElementResult): readonly JsonObject[] =>
  result.verdicts.map((each) => ({
    criterion: each.criterionId,
    kind: each.kind,
    revision: each.revision,
    verdict: each.verdict,
    value: known(each.value),
    limit: known(each.limit),
    unit: each.unit,
    level_m: known(-each.atDownM),
    standard_uncertainty: known(each.standardUncertainty),
    probability_within: known(each.probabilityWithin),
  }));

/** JSON has no number for what is not known. */
const known = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? value : null;

async function recordedVerdict(
  now: JobNow,
  element: string,
  { answer, reason, by }: Decided,
): Promise<RecordedVerdict> {
  const answerNow = await verdictAnswer(now, element);
  return {
    ...by,
    reason,
    verdict: answer["verdict"] as Verdict,
    isCurrent: answerNow !== undefined && saysTheSame(answer, answerNow),
  };
}

/** Rounding of another machine is no change. */
const SAME = 1e-9;

function saysTheSame(before: JsonValue | undefined, now: JsonValue | undefined): boolean {
  if (typeof before === "number" && typeof now === "number")
    return Math.abs(before - now) <= SAME * Math.max(1, Math.abs(now));
  if (typeof before !== "object" || typeof now !== "object" || before === null || now === null)
    return before === now;
  const [one, other] = [before as JsonObject, now as JsonObject];
  const keys = Object.keys(other);
  return keys.length === Object.keys(one).length && keys.every((key) => saysTheSame(one[key], other[key]));
}

async function sealViews(
  now: JobNow,
  element: string,
  said: Decided | undefined,
  isRecordCurrent: boolean,
): Promise<readonly SealView[]> {
  const verifier = createVerifier();
  const { chains, state } = now.log;
  const seals = state.things[thingKey("element", element)]?.lists["seals"] ?? [];
  return Promise.all(
    seals.map(async ({ value }): Promise<SealView> => {
      const checked = await checkSeal(value, chains, state, verifier);
      const { statement, public_key: key } = value as unknown as Seal;
      const covered = said === undefined ? 0 : (statement.covers.up_to[said.device] ?? 0);
      return {
        meaning: statement.meaning,
        name: statement.name,
        at: statement.at,
        key,
        trouble: checked.ok ? undefined : checked.error,
        isCurrent: checked.ok && isRecordCurrent && said !== undefined && covered >= said.sequence,
      };
    }),
  );
}
