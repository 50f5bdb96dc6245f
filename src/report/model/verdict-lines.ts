import {
  appliesTo,
  criterion,
  type Decision,
  type DesignElement,
  type ElementResult,
  type Job,
  type Language,
  type Verdict,
  type VerdictResult,
} from "#core";
import { formatCoverage, MISSING, sentenceOf, verdictWords } from "#text";
import { say } from "../words/say.ts";
import { tableWords } from "../words/table-words.ts";
import type { Quantities } from "./quantities.ts";
import type { VerdictLine } from "./report-model.ts";
import { sourceText } from "./source-text.ts";

/** The one that a reader must see first. */
export const WORST_FIRST: readonly Verdict[] = ["outside", "too-close-to-call", "not-judged", "within"];

/** Share of the limit that is used up; a value that is missing comes last. */
const usedUp = (one: VerdictResult): number => {
  const share = one.value / one.limit;
  return Number.isNaN(share) ? Number.NEGATIVE_INFINITY : share;
};

/** The verdicts of an element, the one that stands for it first: the worst, and among equals the one nearest to or furthest over its limit. */
export const worstFirst = (result: ElementResult): readonly VerdictResult[] =>
  [...result.verdicts].sort(
    (a, b) => WORST_FIRST.indexOf(a.verdict) - WORST_FIRST.indexOf(b.verdict) || usedUp(b) - usedUp(a),
  );

/** One rule held against one element, written out. */
export function verdictLine(verdict: VerdictResult, decision: Decision, q: Quantities): VerdictLine {
  const { language } = q;
  const { value, limit } = q.against(verdict);
  const isMeasured = Number.isFinite(verdict.value);
  return {
    criterionId: verdict.criterionId,
    rule: criterion(verdict.kind)?.text[language].title ?? verdict.kind,
    verdict: verdict.verdict,
    word: verdictWords[language][verdict.verdict],
    value,
    limit,
    uncertainty: isMeasured ? q.expanded(verdict.standardUncertainty, verdict.unit) : { text: MISSING },
    level: q.level(verdict.atDownM),
    // no probability beside a value that is not judged: it would read like a verdict
    probability:
      verdict.verdict === "not-judged" ? { text: MISSING } : q.probability(verdict.probabilityWithin),
    decision: decisionText(verdict.rule, decision, language),
    source: sourceText(verdict.source, language),
    reasons: verdict.reasons.map((reason) => sentenceOf(reason, language)),
  };
}

/** The decision rule in words, with the probability that it asks for. */
export function decisionText(rule: Decision["rule"], decision: Decision, language: Language): string {
  const p = formatCoverage(decision.probability, language);
  const words = { simple: tableWords.simple, guarded: tableWords.guarded, "four-way": tableWords.fourWay };
  return say(words[rule], language, { p });
}

/** Why an element has no verdict at all. */
export function remarkOf(
  element: DesignElement,
  result: ElementResult,
  job: Job,
  language: Language,
): string {
  if (result.verdicts.length > 0) return "";
  if (!job.criteria.some((request) => appliesTo(request, element))) return say(tableWords.noRule, language);
  return say(result.runIds.length === 0 ? tableWords.noRun : tableWords.unusableRun, language);
}
