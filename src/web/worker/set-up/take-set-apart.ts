import type { NewStatement } from "../desk.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { setIndexOf } from "./allowances-view.ts";
import { ruleStatement } from "./rule-statement.ts";

/** Writes the rules of a ready-made set out and takes the name of the set out of the job. */
export function takeSetApart({ log, read }: JobNow, ofSet: number): readonly NewStatement[] {
  const sets = log.state.things["job"]?.fields["criteria_sets"]?.at(-1)?.value;
  const rest = Array.isArray(sets) ? sets.filter((_, i) => i !== ofSet) : [];
  const rules = (read.job?.criteria ?? []).filter((rule) => setIndexOf(rule) === ofSet);
  return [
    { kind: "job", body: { set: { criteria_sets: rest.length === 0 ? null : rest } } },
    ...rules.map(ruleStatement),
  ];
}
