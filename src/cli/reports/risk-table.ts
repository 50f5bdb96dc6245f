import type { Decision, ElementResult } from "#core";
import { ruleRisks } from "#core";
import { formatNumber, formatProbability } from "#text";
import { tableLines } from "../terminal/table.ts";

/** What each rule leads to over all elements like those of the job; no lines where too few are known. */
export function riskLines(elements: readonly ElementResult[], decision: Decision): readonly string[] {
  const risks = ruleRisks(elements, decision);
  if (risks.length === 0) return [];
  const share = (value: number) => formatProbability(value, "en");
  return tableLines(
    [
      { heading: "Rule over all elements like these", cell: ({ criterionId }) => criterionId },
      { heading: "Elements", align: "right", cell: (risk) => String(risk.elements) },
      {
        heading: "Limit / U",
        align: "right",
        cell: (risk) => formatNumber(risk.testUncertaintyRatio, 1, "en"),
      },
      { heading: "Within", align: "right", cell: (risk) => share(risk.withinShare) },
      { heading: "Accepted though outside", align: "right", cell: (risk) => share(risk.consumersRisk) },
      { heading: "Not accepted though within", align: "right", cell: (risk) => share(risk.producersRisk) },
    ],
    risks,
  );
}
