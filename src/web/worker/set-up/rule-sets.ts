import { criteriaSets, criterion, elementKind, expandCriteriaSet, type Language } from "#core";
import type { RuleSetView } from "../desk-set-up.ts";
import type { JobNow } from "../jobs/worked-job.ts";

/** The ready-made sets, those for elements of the job first. */
export function ruleSets({ read }: JobNow, language: Language): readonly RuleSetView[] {
  const elements = read.job?.elements ?? [];
  return criteriaSets
    .map(
      (set): RuleSetView => ({
        id: set.id,
        title: set.text[language],
        document: set.document,
        edition: set.edition,
        kinds: set.kinds.map((kind) => elementKind(kind)?.text[language].plural ?? kind),
        applies: elements.filter(({ kind }) => set.kinds.includes(kind)).length,
        mustConfirm: set.mustConfirm,
        notes: set.notes,
        rules: (expandCriteriaSet(set.id, { kind: set.kinds }) ?? []).map((request) => ({
          id: request.id,
          kind: request.kind,
          appliesTo: request.appliesTo,
          numbers: request.numbers,
          words: request.words,
          tables: request.tables,
          source: request.source,
          sentence: criterion(request.kind)?.describe(request, language) ?? request.kind,
        })),
      }),
    )
    .toSorted((a, b) => b.applies - a.applies);
}
