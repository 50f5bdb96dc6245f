import { type Criterion, criterion, type SourceStatus } from "#core";
import { readTypedNumber } from "../../components/typed-number.ts";
import type { RuleDraft } from "../../worker/desk-set-up.ts";

/** A rule as it stands in the form: everything as it was typed. */
export interface TypedRule {
  readonly id: string;
  readonly kind: string;
  readonly numbers: Readonly<Record<string, string>>;
  readonly words: Readonly<Record<string, string>>;
  readonly tables: Readonly<Record<string, readonly Readonly<Record<string, string>>[]>>;
  readonly appliesTo: Readonly<Record<string, readonly string[]>>;
  readonly document: string;
  readonly edition: string;
  readonly clause: string;
  readonly status: SourceStatus;
}

const UNITS: Readonly<Record<string, string>> = { deg: "°", "1": "×", percent: "%" };

/** Unit of a parameter as it is shown. */
export const shownUnit = (unit: string): string => UNITS[unit] ?? unit;

/** An empty form for a kind of rule. @param taken names of rules that are there. */
export function emptyRule(kind: string, taken: ReadonlySet<string>): TypedRule {
  let number = 1;
  while (taken.has(`${kind}-${number}`)) number++;
  return {
    id: `${kind}-${number}`,
    kind,
    numbers: {},
    words: {},
    tables: {},
    appliesTo: {},
    document: "",
    edition: "",
    clause: "",
    status: "read",
  };
}

/** A rule that is there, as the form begins with it. @param mark the decimal mark of the language. */
export function typedRule(draft: RuleDraft, mark: string): TypedRule {
  const texts = (row: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(row).map(([key, value]) => [key, String(value).replace(".", mark)]));
  return {
    id: draft.id,
    kind: draft.kind,
    numbers: texts(draft.numbers),
    words: draft.words,
    tables: Object.fromEntries(Object.entries(draft.tables).map(([key, rows]) => [key, rows.map(texts)])),
    appliesTo: Object.fromEntries(
      Object.entries(draft.appliesTo).map(([key, asked]) => [key, [asked].flat()]),
    ),
    document: draft.source?.document ?? "",
    edition: draft.source?.edition ?? "",
    clause: draft.source?.clause ?? "",
    status: draft.source?.status ?? "read",
  };
}

/** What was typed as a rule; numbers that cannot be read are left out, and the form says so at their field. */
export function ruleOf(typed: TypedRule): RuleDraft {
  const kind = criterion(typed.kind);
  const { document, edition, clause, status } = typed;
  const given = (text: string) => text.trim();
  return {
    id: typed.id,
    kind: typed.kind,
    numbers: numbersOf(typed.numbers, kind?.parameters ?? []),
    words: Object.fromEntries(Object.entries(typed.words).filter(([, value]) => value !== "")),
    tables: Object.fromEntries(
      (kind?.tables ?? []).flatMap(({ key, columns }) => {
        const rows = (typed.tables[key] ?? []).map((row) => numbersOf(row, columns));
        return rows.length === 0 ? [] : [[key, rows] as const];
      }),
    ),
    appliesTo: Object.fromEntries(Object.entries(typed.appliesTo).filter(([, asked]) => asked.length > 0)),
    source:
      given(document) === ""
        ? undefined
        : {
            document: given(document),
            ...(given(edition) === "" ? {} : { edition: given(edition) }),
            ...(given(clause) === "" ? {} : { clause: given(clause) }),
            status,
          },
  };
}

function numbersOf(
  typed: Readonly<Record<string, string>>,
  parameters: Criterion["parameters"],
): Readonly<Record<string, number>> {
  return Object.fromEntries(
    parameters.flatMap(({ key, unit }) => {
      const read = readTypedNumber(typed[key] ?? "", shownUnit(unit));
      return read.kind === "number" ? [[key, read.value] as const] : [];
    }),
  );
}

/** Whether everything that was typed as a number can be read as one. */
export function isReadable(typed: TypedRule): boolean {
  const kind = criterion(typed.kind);
  const good = (row: Readonly<Record<string, string>>, parameters: Criterion["parameters"]) =>
    parameters.every(({ key, unit }) =>
      ["empty", "number"].includes(readTypedNumber(row[key] ?? "", shownUnit(unit)).kind),
    );
  return (
    good(typed.numbers, kind?.parameters ?? []) &&
    (kind?.tables ?? []).every(({ key, columns }) =>
      (typed.tables[key] ?? []).every((row) => good(row, columns)),
    )
  );
}
