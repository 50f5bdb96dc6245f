import type { CriterionSource, Language, SourceStatus } from "#core";
import { say, type Words } from "../words/say.ts";
import { tableWords } from "../words/table-words.ts";

const STATUS: Readonly<Record<SourceStatus, Words>> = {
  read: tableWords.read,
  quoted: tableWords.quoted,
  memory: tableWords.memory,
};

/** The document that a limit stands in: "Specification, edition 1, clause 3.2"; "own limit" where there is none. */
export function sourceText(source: CriterionSource | undefined, language: Language): string {
  if (source === undefined) return say(tableWords.ownLimit, language);
  const { document, edition, clause } = source;
  return [
    document,
    ...(edition === undefined ? [] : [say(tableWords.edition, language, { edition })]),
    ...(clause === undefined ? [] : [say(tableWords.clause, language, { clause })]),
  ].join(", ");
}

/** How the limit is known: read in its document, quoted, from memory, or typed. */
export const sourceStatusText = (source: CriterionSource | undefined, language: Language): string =>
  say(source?.status === undefined ? tableWords.own : STATUS[source.status], language);
