import type { CriterionRequest, Language, SourceStatus } from "../criterion.ts";

/** One rule of a set: a request without the elements it is for. */
export interface CriteriaSetRule {
  readonly id: string;
  readonly kind: string;
  readonly numbers?: CriterionRequest["numbers"];
  readonly words?: CriterionRequest["words"];
  readonly tables?: CriterionRequest["tables"];
  readonly clause: string;
  /** how the number is known */
  readonly status: SourceStatus;
}

/** The tolerances of one document for one kind of work, to be copied into a job and checked there. */
export interface CriteriaSetEntry {
  readonly id: string;
  readonly document: string;
  readonly edition: string;
  /** kinds of element that the document means */
  readonly kinds: readonly string[];
  readonly text: Readonly<Record<Language, string>>;
  readonly rules: readonly CriteriaSetRule[];
  /** what the rules leave out or how an open wording was taken, in English */
  readonly notes: readonly string[];
}

export interface CriteriaSet extends CriteriaSetEntry {
  /** some of its numbers are from memory: every output says that the clause must be confirmed */
  readonly mustConfirm: boolean;
}
