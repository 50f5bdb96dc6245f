import type { Language } from "#core";
import { MISSING } from "#text";
import { frame } from "../words/frame-words.ts";
import { say } from "../words/say.ts";
import type { Change, ReportElement, ReportModel } from "./report-model.ts";

/** What of a report is compared. */
export type ComparedReport = Pick<
  ReportModel,
  "revisionText" | "statusText" | "dateText" | "cover" | "elements"
>;

/** What a reader of the revision before must know: identity, elements that came or went, verdicts and values that are others now. */
export function reportChanges(
  before: ComparedReport,
  now: ComparedReport,
  language: Language,
): readonly Change[] {
  const changes: Change[] = [];
  const compare = (what: string, was: string, is: string) => {
    if (was !== is) changes.push({ what, was: was === "" ? MISSING : was, is: is === "" ? MISSING : is });
  };
  compare(say(frame.revisionName, language), before.revisionText, now.revisionText);
  compare(say(frame.status, language), before.statusText, now.statusText);
  compare(say(frame.date, language), before.dateText, now.dateText);
  compareNamed(rowsOf(before), rowsOf(now), compare);
  compareNamed(verdictsOf(before.elements), verdictsOf(now.elements), compare);
  return changes;
}

const rowsOf = ({ cover }: ComparedReport): ReadonlyMap<string, string> =>
  new Map(cover.map(({ name, value }) => [name, value]));

function verdictsOf(elements: readonly ReportElement[]): ReadonlyMap<string, string> {
  return new Map(
    elements.flatMap((element): [string, string][] => {
      if (element.verdicts.length === 0) return [[element.id, element.word]];
      return element.verdicts.map(({ criterionId, word, value, limit }) => [
        `${element.id} · ${criterionId}`,
        `${word}: ${value.text} / ${limit.text}`,
      ]);
    }),
  );
}

function compareNamed(
  before: ReadonlyMap<string, string>,
  now: ReadonlyMap<string, string>,
  compare: (what: string, was: string, is: string) => void,
): void {
  for (const name of new Set([...before.keys(), ...now.keys()]))
    compare(name, before.get(name) ?? "", now.get(name) ?? "");
}
