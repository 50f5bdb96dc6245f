import type {
  Criterion,
  CriterionRequest,
  CriterionSource,
  JudgedAxis,
  Measured,
  NotMeasured,
  Verdict,
} from "./criterion.ts";
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

/**
 * What every output must say of a limit that nobody has read in its document yet; empty for the others.
 *
 * Frame: none. Source: rule F3, docs/method/sets.md.
 */
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
 * @param outcome the axis to measure, or why nothing is to be measured.
 * @param uncertainty of the value against the limit, where it is known.
 *
 * Frame: site NED. Source: rules F3 and F4.
 */
export function judge(
  outcome: JudgedAxis | NotMeasured,
  request: CriterionRequest,
  decision: Decision,
  uncertainty?: ValueUncertainty,
): Judgement {
  const kind = criterion(request.kind);
  const found = measureOr(kind, outcome, request);
  const decided = decide(found, uncertainty, decision);
  const measured = isMeasured(found) ? found : undefined;
  const foundOn = measured?.foundOn === undefined ? [] : [measured.foundOn];
  return {
    criterionId: request.id,
    kind: request.kind,
    verdict: decided.verdict,
    value: measured?.value ?? Number.NaN,
    limit: measured?.limit ?? Number.NaN,
    unit: kind?.unit ?? "",
    atDownM: measured?.atDownM ?? Number.NaN,
    standardUncertainty: uncertainty?.standardUncertainty,
    probabilityWithin: uncertainty?.probabilityWithin,
    rule: decided.rule,
    reasons: [...decided.reasons, ...foundOn, ...sourceReasons(request.source)],
    revision: kind?.revision ?? 0,
    source: request.source,
  };
}

function measureOr(
  kind: Criterion | undefined,
  outcome: JudgedAxis | NotMeasured,
  request: CriterionRequest,
): Measured | NotMeasured {
  if (kind === undefined) return { reason: "criteria.unknown-kind", values: { kind: request.kind } };
  return "reason" in outcome ? outcome : kind.measure(outcome, request);
}
