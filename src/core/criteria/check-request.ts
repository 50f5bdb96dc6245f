import { APPLIES_TO_KEYS } from "./applies-to.ts";
import type { Criterion, CriterionRequest, Parameter } from "./criterion.ts";

export interface RequestFault {
  readonly field: string;
  readonly expected: string;
  readonly found: string;
}
type Declared = Pick<Criterion, "parameters" | "choices" | "tables">;

/**
 * What of a request does not fit the declaration of its criterion: keys that nobody knows, numbers out of range,
 * words that are no choice, tables with the wrong columns.
 *
 * Frame: none.
 * Source: docs/method/criteria.md.
 */
export function checkAgainstDeclaration(declared: Declared, request: CriterionRequest): RequestFault[] {
  return [
    ...unknownKeys("applies_to.", Object.keys(request.appliesTo), APPLIES_TO_KEYS),
    ...checkNumbers("", declared.parameters, request.numbers),
    ...checkWords(declared, request),
    ...checkTables(declared, request),
  ];
}

function unknownKeys(prefix: string, found: readonly string[], known: readonly string[]): RequestFault[] {
  const expected = known.length > 0 ? `one of ${known.join(", ")}` : "nothing here";
  return found
    .filter((key) => !known.includes(key))
    .map((key) => ({ field: `${prefix}${key}`, expected, found: key }));
}

function checkNumbers(
  prefix: string,
  parameters: readonly Parameter[],
  numbers: Readonly<Record<string, number>>,
): RequestFault[] {
  const faults = unknownKeys(
    prefix,
    Object.keys(numbers),
    parameters.map((parameter) => parameter.key),
  );
  for (const { key, unit, min, max, required } of parameters) {
    const value = numbers[key];
    const expected = `a number from ${min} to ${max}${unit === "1" ? "" : ` ${unit}`}`;
    if (value === undefined && required)
      faults.push({ field: `${prefix}${key}`, expected, found: "nothing" });
    if (value !== undefined && !(value >= min && value <= max))
      faults.push({ field: `${prefix}${key}`, expected, found: String(value) });
  }
  return faults;
}

function checkWords({ choices }: Declared, { words }: CriterionRequest): RequestFault[] {
  const faults = unknownKeys(
    "",
    Object.keys(words),
    choices.map((choice) => choice.key),
  );
  for (const { key, values } of choices) {
    const word = words[key];
    if (word !== undefined && !values.includes(word))
      faults.push({ field: key, expected: `one of ${values.join(", ")}`, found: word });
  }
  return faults;
}

function checkTables(declared: Declared, { tables }: CriterionRequest): RequestFault[] {
  const faults = unknownKeys(
    "",
    Object.keys(tables),
    declared.tables.map((table) => table.key),
  );
  for (const { key, columns } of declared.tables)
    for (const [i, row] of (tables[key] ?? []).entries())
      faults.push(...checkNumbers(`${key}[${i}].`, columns, row));
  return faults;
}

/** A finding unless exactly one of the keys is given. */
export function exactlyOne(given: readonly string[], keys: readonly string[]): RequestFault[] {
  const found = keys.filter((key) => given.includes(key));
  if (found.length === 1) return [];
  return [
    {
      field: found[1] ?? keys[0]!,
      expected: `exactly one of ${keys.join(", ")}`,
      found: found.join(", ") || "none",
    },
  ];
}

/** A finding unless at least one of the keys is given. */
export function atLeastOne(given: readonly string[], keys: readonly string[]): RequestFault[] {
  if (keys.some((key) => given.includes(key))) return [];
  return [{ field: keys[0]!, expected: `at least one of ${keys.join(", ")}`, found: "none" }];
}

/** Every parameter that a request gives, of whatever form. */
export const givenKeys = (request: CriterionRequest): string[] => [
  ...Object.keys(request.numbers),
  ...Object.keys(request.words),
  ...Object.keys(request.tables),
];

/** The word of a choice: the first one where none is given. */
export function wordOf(declared: Pick<Criterion, "choices">, request: CriterionRequest, key: string): string {
  return request.words[key] ?? declared.choices.find((choice) => choice.key === key)?.values[0] ?? "";
}
