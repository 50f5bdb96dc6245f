import {
  appliesTo,
  type Criterion,
  type CriterionRequest,
  criteria,
  criteriaSet,
  criteriaSets,
  criterion,
  type DesignElement,
  expandCriteriaSet,
} from "#core";
import { excerpt } from "../finding/excerpt.ts";
import type { Finder } from "../finding/finder.ts";
import { nearestWord } from "../finding/nearest-word.ts";
import { tellUnknownKey } from "./check-item.ts";
import type { Item, JobInput } from "./read-job-json.ts";
import type { CriterionInput } from "./schema/job-schema.ts";

const COMMON_KEYS = ["id", "kind", "applies_to", "source"];

/**
 * The rules of the job: those written out, then those of ready-made sets. Each is held against the declaration of its kind.
 *
 * Errors: formats.criterion-unknown, formats.criteria-set-unknown, formats.criterion-field. Warnings: formats.no-criteria,
 * formats.criterion-idle, formats.json-unknown-key.
 */
export function readCriteria(
  input: JobInput,
  elements: readonly DesignElement[],
  found: Finder,
): CriterionRequest[] {
  const written = input.criteria.flatMap((item) => requestOf(item, found) ?? []);
  const taken = new Set(written.map((request) => request.id));
  const expanded: CriterionRequest[] = [];
  for (const { input: asked, field } of input.criteriaSets) {
    const set = criteriaSet(asked.set);
    if (set === undefined) {
      const known = criteriaSets.map((each) => each.id);
      const expected = nearestWord(asked.set, known) ?? known.join(", ");
      found.error(
        "formats.criteria-set-unknown",
        { field: `${field}.set` },
        { found: excerpt(asked.set), expected },
      );
      continue;
    }
    for (const request of expandCriteriaSet(set.id, asked.applies_to ?? { kind: set.kinds }, field) ?? []) {
      const id = taken.has(request.id) ? `${request.id} (${field})` : request.id;
      taken.add(id);
      if (isSound({ ...request, id }, found)) expanded.push({ ...request, id });
    }
  }
  const requests = [...written, ...expanded];
  for (const request of requests) tellIdle(request, elements, found);
  if (input.criteria.length + input.criteriaSets.length === 0)
    found.warning("formats.no-criteria", { field: "criteria" }, { found: "none", expected: "at least one" });
  return requests;
}

function requestOf({ input, field }: Item<CriterionInput>, found: Finder): CriterionRequest | undefined {
  const kind = criterion(input.kind);
  if (kind === undefined) {
    const known = criteria.map((each) => each.id);
    const expected = nearestWord(input.kind, known) ?? known.join(", ");
    found.error(
      "formats.criterion-unknown",
      { field: `${field}.kind` },
      { found: excerpt(input.kind), expected },
    );
    return undefined;
  }
  const parts = sortParameters(input, kind, field, found);
  if (parts === undefined) return undefined;
  const { document, edition, clause, status } = input.source ?? {};
  const request: CriterionRequest = {
    id: input.id,
    kind: input.kind,
    appliesTo: input.applies_to ?? {},
    ...parts,
    source:
      document === undefined
        ? undefined
        : {
            document,
            ...(edition === undefined ? {} : { edition }),
            ...(clause === undefined ? {} : { clause }),
            ...(status === undefined ? {} : { status }),
          },
    field,
  };
  return isSound(request, found) ? request : undefined;
}

/** Holds a request against what its kind declares. */
function isSound(request: CriterionRequest, found: Finder): boolean {
  const problems = criterion(request.kind)?.check(request) ?? [];
  for (const problem of problems) {
    const values = { found: excerpt(problem.found), expected: problem.expected };
    found.error("formats.criterion-field", { field: `${request.field}.${problem.field}` }, values);
  }
  return problems.length === 0;
}

const wordsOf = ({ appliesTo: asked }: CriterionRequest): string =>
  excerpt(
    Object.entries(asked)
      .map(([key, value]) => `${key} ${[value].flat().join(" or ")}`)
      .join(", "),
  );

/** A rule that is for none of the elements is most likely mistyped: it would judge nothing, in silence. */
function tellIdle(request: CriterionRequest, elements: readonly DesignElement[], found: Finder): void {
  if (elements.length === 0 || elements.some((element) => appliesTo(request, element))) return;
  const values = { found: wordsOf(request), expected: "keys and words of at least one element" };
  found.warning("formats.criterion-idle", { field: `${request.field}.applies_to` }, values);
}

/** Numbers, words and tables by their type in the file; whether they belong to the kind is the kind's own matter. */
function sortParameters(
  input: CriterionInput,
  kind: Criterion,
  field: string,
  found: Finder,
): Pick<CriterionRequest, "numbers" | "words" | "tables"> | undefined {
  const numbers: Record<string, number> = {};
  const words: Record<string, string> = {};
  const tables: Record<string, readonly Readonly<Record<string, number>>[]> = {};
  const declared = [...kind.parameters, ...kind.choices, ...kind.tables].map((each) => each.key);
  let usable = true;
  for (const [key, value] of Object.entries(input)) {
    if (COMMON_KEYS.includes(key)) continue;
    const at = `${field}.${key}`;
    if (!declared.includes(key)) tellUnknownKey(at, key, [...declared, ...COMMON_KEYS], found);
    else if (kind.parameters.some((each) => each.key === key) && typeof value === "number")
      numbers[key] = value;
    else if (kind.choices.some((each) => each.key === key) && typeof value === "string") words[key] = value;
    else if (kind.tables.some((each) => each.key === key) && isTable(value)) tables[key] = value;
    else {
      usable = false;
      const values = { found: excerpt(value), expected: typeExpected(kind, key) };
      found.error("formats.json-type", { field: at }, values);
    }
  }
  return usable ? { numbers, words, tables } : undefined;
}

function typeExpected(kind: Criterion, key: string): string {
  if (kind.parameters.some((each) => each.key === key)) return "a number";
  const choice = kind.choices.find((each) => each.key === key);
  return choice === undefined ? "a list of objects with numbers" : choice.values.join(", ");
}

const isTable = (value: unknown): value is readonly Readonly<Record<string, number>>[] =>
  Array.isArray(value) &&
  value.every(
    (row: unknown) =>
      typeof row === "object" &&
      row !== null &&
      !Array.isArray(row) &&
      Object.values(row).every((cell) => typeof cell === "number"),
  );
