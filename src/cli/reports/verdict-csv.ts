import type { ElementResult, VerdictResult } from "#core";
import { sentenceOf, verdictWords } from "#text";
import { csv } from "./csv.ts";

const HEADINGS = [
  "element",
  "rule",
  "kind",
  "verdict",
  "value",
  "limit",
  "unit",
  "standard_uncertainty",
  "probability_within",
  "level_m",
  "decision",
  "document",
  "edition",
  "clause",
  "limit_from_memory",
  "remarks",
];

const precise = (value: number): number | undefined =>
  Number.isFinite(value) ? Number(value.toPrecision(8)) : undefined;

/** Every verdict of every element for a spreadsheet, with the document its limit stands in. */
export function verdictCsv(elements: readonly ElementResult[]): string {
  return csv(
    HEADINGS,
    elements.flatMap((element) => element.verdicts.map((one) => row(element, one))),
  );
}

function row(element: ElementResult, one: VerdictResult): readonly (string | number | undefined)[] {
  const { source } = one;
  return [
    element.elementId,
    one.criterionId,
    one.kind,
    verdictWords.en[one.verdict],
    precise(one.value),
    precise(one.limit),
    one.unit,
    precise(one.standardUncertainty ?? Number.NaN),
    precise(one.probabilityWithin ?? Number.NaN),
    Number.isFinite(one.atDownM) ? (-one.atDownM).toFixed(3) : undefined,
    one.rule,
    source?.document,
    source?.edition,
    source?.clause,
    source?.status === "memory" ? "yes: confirm the clause" : "",
    one.reasons.map((reason) => sentenceOf(reason)).join(" "),
  ];
}
