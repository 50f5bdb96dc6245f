import type { Command } from "commander";
import { allFindings } from "#report";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { limitsToConfirm } from "../reports/element-table.ts";
import { countOf, findingCounts, findingLines } from "../reports/located-finding.ts";
import { counted } from "../terminal/counted.ts";
import { workOutJob } from "../work-out-job.ts";

const EXAMPLES = `
Examples:
  toeline check site-4
  toeline check site-4.zip

Exit code: 0 no errors, 1 errors were found, 2 the job cannot be read at all.`;

export function addCheck(program: Command, surroundings: Surroundings, done: (code: ExitCode) => void): void {
  program
    .command("check")
    .summary("every finding of a job, with file, line and column")
    .description(
      "Reads a job and works it out, and lists every finding with file, line and column. Writes nothing.",
    )
    .argument("<job>", "folder with job.json, or a .zip of it")
    .addHelpText("after", EXAMPLES)
    .action(async (path: string) => done(await check(path, surroundings)));
}

async function check(path: string, surroundings: Surroundings): Promise<ExitCode> {
  const { terminal } = surroundings;
  const worked = await workOutJob(path, { verdicts: false }, surroundings);
  if (!worked.ok) {
    terminal.tell(worked.error);
    return EXIT.nothing;
  }
  const { read, job, results } = worked.value;
  const findings = allFindings(read, job, results);
  for (const line of findingLines(terminal, findings)) terminal.print(line);
  if (findings.length > 0) terminal.print("");
  if (job === undefined) {
    terminal.print(`The job cannot be read: ${findingCounts(findings)}.`);
    return EXIT.nothing;
  }
  for (const line of limitsToConfirm(job)) terminal.print(line);
  const runs = job.runs.length + read.unusableRuns.length;
  terminal.print(
    `${job.name}: ${counted(job.elements.length, "element")}, ${counted(runs, "run")}; ${findingCounts(findings)}.`,
  );
  return countOf(findings, "error") > 0 ? EXIT.partly : EXIT.done;
}
