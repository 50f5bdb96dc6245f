import { allFindings } from "#report";
import { counted } from "../terminal/counted.ts";
import type { Terminal } from "../terminal/terminal.ts";
import type { WorkedOutJob } from "../work-out-job.ts";
import { elementTable, limitsToConfirm, verdictCounts } from "./element-table.ts";
import { findingLines } from "./located-finding.ts";
import { riskLines } from "./risk-table.ts";
import { runSection } from "./run-section.ts";

/** The reduction of a job for a person: verdicts, findings, and with `verbose` runs, steps and notes too. */
export function printReduction(terminal: Terminal, worked: WorkedOutJob, verbose: boolean): void {
  const { read, job, results } = worked;
  if (job === undefined || results === undefined) return;
  const lines = (some: readonly string[]) => {
    for (const line of some) terminal.print(line);
  };
  lines([job.name, ""]);
  if (verbose) lines(runSection(terminal, results.runs));
  const unusable = new Set(read.unusableRuns.map((run) => run.elementId));
  lines(elementTable(terminal, results.elements, { unusable, every: verbose }));
  lines(["", verdictCounts(results.elements)]);
  const risks = verbose ? riskLines(results.elements, job.decision) : [];
  if (risks.length > 0) lines(["", ...risks]);

  const findings = allFindings(read, job, results);
  const shown = verbose ? findings : findings.filter(({ issue }) => issue.severity !== "note");
  if (shown.length > 0) lines(["", ...findingLines(terminal, shown)]);
  const hidden = findings.length - shown.length;
  if (hidden > 0) lines(["", `--verbose shows ${counted(hidden, "note")} more.`]);
  const confirm = limitsToConfirm(job);
  if (confirm.length > 0) lines(["", ...confirm]);
}
