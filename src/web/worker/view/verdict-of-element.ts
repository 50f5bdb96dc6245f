import type { ElementResult, Verdict, VerdictResult } from "#core";
import type { DecidingRule } from "../desk.ts";

/** The worse of two verdicts decides; what was not judged is worse than within: nobody can call the element good. */
const RANK: Readonly<Record<Verdict, number>> = {
  outside: 3,
  "too-close-to-call": 2,
  "not-judged": 1,
  within: 0,
};

/** The rule that speaks for the element: the worst verdict, and among equal ones the value nearest to its limit or furthest over. */
export function decidingRule(result: ElementResult): DecidingRule | undefined {
  const [worst] = result.verdicts.toSorted(
    (a, b) => RANK[b.verdict] - RANK[a.verdict] || shareOfLimit(b) - shareOfLimit(a),
  );
  if (worst === undefined) return undefined;
  const { criterionId, kind, verdict, value, limit, unit, standardUncertainty, probabilityWithin } = worst;
  const levelM = -worst.atDownM;
  return { criterionId, kind, verdict, value, limit, unit, standardUncertainty, probabilityWithin, levelM };
}

const shareOfLimit = ({ value, limit }: VerdictResult): number =>
  Number.isFinite(value / limit) ? value / limit : -1;

/** An element without any rule is not judged. */
export const verdictOf = (result: ElementResult): Verdict => decidingRule(result)?.verdict ?? "not-judged";
