import {
  type Criterion,
  type CriterionRequest,
  criteria,
  criteriaSets,
  criterion,
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
 * formats.json-unknown-key.
 */
export function readCriteria(input: JobInput, found: Finder): CriterionRequest[] {
  const written = input.criteria.flatMap((item) => requestOf(item, found) ?? []);
  const taken = new Map(written.map((request) => [request.id, request.field]));
  const expanded: CriterionRequest[] = [];
  for (const { input: set, field } of input.criteriaSets) {
    if (!criteriaSets.some((known) => known.id === set.set)) {
      const known = criteriaSets.map((each) => each.id);
      const expected = nearestWord(set.set, known) ?? known.join(", ");
      found.error(
        "formats.criteria-set-unknown",
        { field: `${field}.set` },
        { found: excerpt(set.set), expected },
      );
      continue;
    }
    for (const request of expandCriteriaSet(set.set, set.applies_to ?? {}) ?? []) {
      const id = taken.has(request.id) ? `${request.id} (${field})` : request.id;
      taken.set(id, field);
      expanded.push({ ...request, id, field });
    }
  }
  if (input.criteria.length + input.criteriaSets.length === 0)
    found.warning("formats.no-criteria", { field: "criteria" }, { found: "none", expected: "at least one" });
  return [...written, ...expanded];
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
  const problems = kind.check(request);
  for (const problem of problems) {
    const values = { found: excerpt(problem.found), expected: problem.expected };
    found.error("formats.criterion-field", { field: `${field}.${problem.field}` }, values);
  }
  return problems.length === 0 ? request : undefined;
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
