import type { Measured, NotMeasured, Verdict } from "./criterion.ts";
import type { Decision, DecisionRuleName } from "./decision.ts";

/** What is known of the uncertainty of one measured value. */
export interface ValueUncertainty {
  /** in the unit of the value */
  readonly standardUncertainty: number | undefined;
  /** probability that the true value is within the limit, [0, 1] */
  readonly probabilityWithin: number | undefined;
}

/** Why a verdict is what it is: a code for `text/` and its values. */
export interface Reason {
  readonly code: string;
  readonly values: Readonly<Record<string, string | number>>;
}

export interface Decided {
  readonly verdict: Verdict;
  /** the rule that was really used: simple where no probability is known */
  readonly rule: DecisionRuleName;
  readonly reasons: readonly Reason[];
}

/**
 * Whether there is a value to hold against a limit.
 *
 * Frame: none. Source: definition.
 */
export const isMeasured = (outcome: Measured | NotMeasured): outcome is Measured => "value" in outcome;

/**
 * Holds a measured value against its limit by the rule that was agreed beforehand.
 *
 * simple: within when value <= limit, unrounded. guarded at p: within when P >= p, else outside. four-way: within when
 * P >= p, outside when P <= 1 - p, else too close to call. P = probability that the true value is within the limit;
 * without it the simple rule is used and the reasons say so. A value from a part of the length can show "outside" only.
 * A missing or non-finite number is always "not judged": every branch asks for what must be true to reach it.
 *
 * Frame: none.
 * Source: rule F4; JCGM 106:2012, decision rules and guard bands (from memory).
 */
export function decide(
  outcome: Measured | NotMeasured,
  uncertainty: ValueUncertainty | undefined,
  decision: Decision,
): Decided {
  if (!isMeasured(outcome))
    return notJudged(decision.rule, { code: outcome.reason, values: outcome.values ?? {} });
  const { value, limit, partial } = outcome;
  if (!(Number.isFinite(value) && Number.isFinite(limit)))
    return notJudged(decision.rule, { code: "criteria.not-a-number", values: {} });
  const probability = uncertainty?.probabilityWithin;
  const byRule =
    decision.rule === "simple" || probability === undefined
      ? bySimpleRule(value, limit, decision.rule)
      : byProbability(probability, decision);
  if (!partial || byRule.verdict === "not-judged") return byRule;
  if (byRule.verdict === "outside" && value > limit)
    return withReason(byRule, { code: "criteria.outside-on-part", values: {} });
  return notJudged(byRule.rule, { code: "criteria.only-part-read", values: {} });
}

function bySimpleRule(value: number, limit: number, asked: DecisionRuleName): Decided {
  const verdict = value <= limit ? "within" : "outside";
  const reasons = asked === "simple" ? [] : [{ code: "criteria.no-probability", values: { rule: asked } }];
  return { verdict, rule: "simple", reasons };
}

function byProbability(probability: number, { rule, probability: asked }: Decision): Decided {
  if (!(probability >= 0 && probability <= 1 && asked > 0.5 && asked < 1))
    return notJudged(rule, { code: "criteria.not-a-number", values: {} });
  if (probability >= asked) return { verdict: "within", rule, reasons: [] };
  if (rule === "four-way" && probability > 1 - asked)
    return {
      verdict: "too-close-to-call",
      rule,
      reasons: [{ code: "criteria.neither-shown", values: { probability, asked } }],
    };
  if (rule === "four-way") return { verdict: "outside", rule, reasons: [] };
  return {
    verdict: "outside",
    rule,
    reasons: [{ code: "criteria.within-not-shown", values: { probability, asked } }],
  };
}

const withReason = (decided: Decided, reason: Reason): Decided => ({
  ...decided,
  reasons: [...decided.reasons, reason],
});

const notJudged = (rule: DecisionRuleName, reason: Reason): Decided => ({
  verdict: "not-judged",
  rule,
  reasons: [reason],
});
