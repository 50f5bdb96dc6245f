import type { CriterionRequest, Language } from "../criterion.ts";
import { americanSets } from "./american.ts";
import { britishSets } from "./british.ts";
import { chineseSets } from "./chinese.ts";
import type { CriteriaSet } from "./criteria-set.ts";
import { europeanSets } from "./european.ts";
import { hongKongSets } from "./hong-kong.ts";
import { indianSets } from "./indian.ts";

/** What every output says beside a limit that is from memory. */
export const CONFIRM_BEFORE_USE: Readonly<Record<Language, string>> = {
  en: "The clause must be confirmed before use: value from memory.",
  de: "Die Klausel ist vor Gebrauch zu bestätigen: Wert aus dem Gedächtnis.",
};

/** Every ready-made set. A new document is an entry in the file of its region. */
export const criteriaSets: readonly CriteriaSet[] = [
  ...europeanSets,
  ...britishSets,
  ...indianSets,
  ...chineseSets,
  ...americanSets,
  ...hongKongSets,
].map((entry) => ({ ...entry, mustConfirm: entry.rules.some((rule) => rule.status === "memory") }));

const byId = new Map(criteriaSets.map((set) => [set.id, set]));

/**
 * The set with that id, or undefined if there is none.
 *
 * Frame: none. Source: docs/method/sets.md.
 */
export function criteriaSet(id: string): CriteriaSet | undefined {
  return byId.get(id);
}

/**
 * The rules of a set as requests for a job, each with its document, edition, clause and how its number is known.
 *
 * @param appliesTo the elements that they are for. @param field place in job.json, for findings.
 * @returns undefined where there is no such set.
 *
 * Frame: none. Source: docs/method/sets.md.
 */
export function expandCriteriaSet(
  setId: string,
  appliesTo: CriterionRequest["appliesTo"],
  field = "",
): readonly CriterionRequest[] | undefined {
  const set = byId.get(setId);
  return set?.rules.map((rule) => ({
    id: `${set.id}.${rule.id}`,
    kind: rule.kind,
    appliesTo,
    numbers: rule.numbers ?? {},
    words: rule.words ?? {},
    tables: rule.tables ?? {},
    source: { document: set.document, edition: set.edition, clause: rule.clause, status: rule.status },
    field,
  }));
}
