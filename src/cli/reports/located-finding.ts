import type { Severity } from "#core";
import type { ReportFinding } from "#report";
import { sentenceOf, severityWords } from "#text";
import { paintSeverity } from "../terminal/colour.ts";
import { counted } from "../terminal/counted.ts";
import { tableLines } from "../terminal/table.ts";
import type { Terminal } from "../terminal/terminal.ts";

const ORDER: readonly Severity[] = ["error", "warning", "note"];

/** Where to look: "readings/P12-1.csv:14 tilt_x_deg"; what the finding is about where it has no file. */
export function placeOf({ issue, about }: ReportFinding): string {
  const { file, line, field } = issue.place;
  const where = file === undefined ? "" : line === undefined ? file : `${file}:${line}`;
  return [where, field ?? "", where === "" ? about : ""].filter((part) => part !== "").join(" ") || "job";
}

export const countOf = (findings: readonly ReportFinding[], severity: Severity): number =>
  findings.filter(({ issue }) => issue.severity === severity).length;

/** One line a finding: severity, place, sentence. */
export function findingLines(terminal: Terminal, findings: readonly ReportFinding[]): readonly string[] {
  const word = ({ issue }: ReportFinding) => severityWords.en[issue.severity];
  const columns = [
    {
      heading: "",
      cell: word,
      paint: (row: ReportFinding, text: string) => paintSeverity(terminal, row.issue.severity, text),
    },
    { heading: "", cell: placeOf },
    { heading: "", cell: ({ issue }: ReportFinding) => sentenceOf(issue) },
  ];
  return tableLines(columns, findings).slice(1);
}

/** "3 errors, 1 warning, 12 notes"; "no findings" where there are none. */
export function findingCounts(findings: readonly ReportFinding[]): string {
  const parts = ORDER.map((severity) => ({ severity, count: countOf(findings, severity) }))
    .filter(({ count }) => count > 0)
    .map(({ severity, count }) => counted(count, severity));
  return parts.length > 0 ? parts.join(", ") : "no findings";
}
