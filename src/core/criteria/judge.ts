import type { CriterionRequest, CriterionSource, JudgedAxis, NotMeasured, Verdict } from "./criterion.ts";
import { decide, isMeasured, type Reason, type ValueUncertainty } from "./decide.ts";
import type { Decision, DecisionRuleName } from "./decision.ts";
import { criterion } from "./registry.ts";

/** One rule held against one element. */
export interface Judgement {
  readonly criterionId: string;
  readonly kind: string;
  readonly verdict: Verdict;
  /** NaN where nothing was measured */
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly atDownM: number;
  readonly standardUncertainty: number | undefined;
  readonly probabilityWithin: number | undefined;
  readonly rule: DecisionRuleName;
  readonly reasons: readonly Reason[];
  readonly revision: number;
  readonly source: CriterionSource | undefined;
}

/** What every output must say of a limit that nobody has read in its document yet; empty for the others. */
export function sourceReasons(source: CriterionSource | undefined): readonly Reason[] {
  if (source?.status !== "memory") return [];
  return [
    {
      code: "criteria.clause-from-memory",
      values: { document: source.document, clause: source.clause ?? "" },
    },
  ];
}

/**
 * Measures one rule on one element and decides.
 *
 * @param outcome the axis to measure, or why there is none.
 * @param uncertainty of the value against the limit, where it is known.
 * Frame: site NED.
 * Source: rules F3 and F4.
 */
export function judge(
  outcome: JudgedAxis | NotMeasured,
  request: CriterionRequest,
  decision: Decision,
  uncertainty?: ValueUncertainty,
): Judgement {
  const kind = criterion(request.kind);
  const measured = measureOr(outcome, request);
  const decided = decide(measured, uncertainty, decision);
  const found = isMeasured(measured) ? measured : undefined;
  const foundOn = found?.foundOn === undefined ? [] : [found.foundOn];
  return {
    criterionId: request.id,
    kind: request.kind,
    verdict: decided.verdict,
    value: found?.value ?? Number.NaN,
    limit: found?.limit ?? Number.NaN,
    unit: kind?.unit ?? "",
    atDownM: found?.atDownM ?? Number.NaN,
    standardUncertainty: uncertainty?.standardUncertainty,
    probabilityWithin: uncertainty?.probabilityWithin,
    rule: decided.rule,
    reasons: [...decided.reasons, ...foundOn, ...sourceReasons(request.source)],
    revision: kind?.revision ?? 0,
    source: request.source,
  };
}

function measureOr(outcome: JudgedAxis | NotMeasured, request: CriterionRequest) {
  if ("reason" in outcome) return outcome;
  const kind = criterion(request.kind);
  return (
    kind?.measure(outcome, request) ?? { reason: "criteria.unknown-kind", values: { kind: request.kind } }
  );
}
