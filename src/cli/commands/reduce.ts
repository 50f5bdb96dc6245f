import { type Command, InvalidArgumentError, Option } from "commander";
import { type Job, type JobResults, PATH_METHODS, type PathMethodId } from "#core";
import { allFindings } from "#report";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { whyNotWritable, writeFolder } from "../files/output-folder.ts";
import { jobFiles, resultsJson } from "../reports/job-files.ts";
import { findingLines } from "../reports/located-finding.ts";
import { printReduction } from "../reports/print-reduction.ts";
import { counted } from "../terminal/counted.ts";
import { nearest } from "../terminal/nearest.ts";
import { progressBar } from "../terminal/progress.ts";
import { type ReductionOptions, type WorkedOutJob, workOutJob } from "../work-out-job.ts";

const EXAMPLES = `
Examples:
  toeline reduce site-4                          verdicts on the screen
  toeline reduce site-4 --out results            results.json, tables and figures too
  toeline reduce site-4 --only P12 P13 --verbose two elements, with what each step changed
  toeline reduce site-4 --json > results.json    for another program
  toeline reduce site-4 --trials 10000 --seed 1  every probability by trials of the budget

Exit code: 0 worked out (whatever the verdicts), 1 some runs could not be worked out, 2 nothing could.`;

interface ReduceOptions {
  readonly out?: string;
  readonly json?: true;
  readonly only?: readonly string[];
  readonly method?: PathMethodId;
  readonly trials?: number | "auto";
  readonly seed?: number;
  readonly workers?: number;
  readonly verbose?: true;
}

export function addReduce(
  program: Command,
  surroundings: Surroundings,
  done: (code: ExitCode) => void,
): void {
  program
    .command("reduce")
    .summary("from readings to paths and verdicts")
    .description("Works out the path of every hole, its offsets from design, and a verdict for every rule.")
    .argument("<job>", "folder with job.json, or a .zip of it")
    .option("--out <dir>", "write results.json, tables and figures into this folder")
    .option("--json", "print results.json and nothing else")
    .option("--only <element...>", "only these elements")
    .addOption(
      new Option("--method <name>", "how to go from tangents to coordinates")
        .choices(PATH_METHODS)
        .default(undefined, PATH_METHODS[0]),
    )
    .option(
      "--trials <n>",
      'probabilities from this many trials of the uncertainty budget; "auto" for as many as make them stand',
      (text: string) => (text === "auto" ? text : wholeNumber(2, 100_000)(text)),
    )
    .option("--seed <s>", "of the trials; the same seed gives the same numbers", wholeNumber(0, 2 ** 32 - 1))
    .option(
      "--workers <n>",
      "threads that share the work; the results do not depend on it",
      wholeNumber(1, 64),
    )
    .option("--verbose", "every rule, every note, and what each step of the computation changed")
    .addHelpText("after", EXAMPLES)
    .action(async (path: string, options: ReduceOptions) => done(await reduce(path, options, surroundings)));
}

async function reduce(path: string, options: ReduceOptions, surroundings: Surroundings): Promise<ExitCode> {
  const { terminal } = surroundings;
  const refuse = (sentence: string): ExitCode => {
    terminal.tell(sentence);
    return EXIT.nothing;
  };
  // before the work, so that nobody waits for results that cannot be written
  const unwritable = options.out === undefined ? undefined : whyNotWritable(options.out);
  if (unwritable !== undefined) return refuse(unwritable);

  const { only } = options;
  const worked = await workOutJob(path, reduceOptions(options), surroundings);
  if (!worked.ok) return refuse(worked.error);
  const { read, job, results } = worked.value;
  if (job === undefined || results === undefined) {
    for (const line of findingLines(terminal, allFindings(read, job, undefined))) terminal.tell(line);
    return refuse("The job cannot be read.");
  }
  const unknown = (only ?? []).filter((id) => !job.elements.some((element) => element.id === id));
  if (unknown.length > 0) return refuse(noSuchElement(job, unknown));

  const show = options.json
    ? () => {}
    : () => printReduction(terminal, worked.value, options.verbose ?? false);
  if (options.json) terminal.print(resultsJson(job, read, results));
  show();
  if (options.out !== undefined) {
    const code = await writeResults(options.out, job, results, worked.value, surroundings);
    if (code !== undefined) return code;
  }
  return exitCodeOf(worked.value, only);
}

/** A whole number on the command line. */
const wholeNumber = (min: number, max: number) => (text: string) => {
  const value = /^\d+$/.test(text) ? Number(text) : Number.NaN;
  if (!(value >= min && value <= max))
    throw new InvalidArgumentError(`A whole number from ${min} to ${max}.`);
  return value;
};

const reduceOptions = ({ method, only, trials, seed, workers }: ReduceOptions): ReductionOptions => ({
  ...(method !== undefined && { method }),
  ...(only !== undefined && { only }),
  ...(trials !== undefined && { trials }),
  ...(seed !== undefined && { seed }),
  ...(workers !== undefined && { workers }),
});

function noSuchElement(job: Job, unknown: readonly string[]): string {
  const known = job.elements.map((element) => element.id);
  return unknown
    .map((id) => {
      const near = nearest(id, known);
      return `The job has no element ${id}${near === undefined ? "" : `; is ${near} meant?`}`;
    })
    .join("\n");
}

/** @returns an exit code only where the files could not be written. */
async function writeResults(
  folder: string,
  job: Job,
  results: JobResults,
  worked: WorkedOutJob,
  { terminal, now, interrupted, holdInterrupt }: Surroundings,
): Promise<ExitCode | undefined> {
  holdInterrupt();
  const progress = progressBar(terminal, "elements written", now);
  const files = jobFiles(job, worked.read, results, progress.report);
  const written = await writeFolder(folder, files, interrupted);
  progress.finish();
  if (written.ok) {
    terminal.tell(`${counted(written.value, "file")} written to ${folder}.`);
    return undefined;
  }
  terminal.tell(written.error);
  return interrupted() ? EXIT.interrupted : EXIT.nothing;
}

function exitCodeOf({ read, results }: WorkedOutJob, only: readonly string[] | undefined): ExitCode {
  const asked = (elementId: string) => only === undefined || only.includes(elementId);
  const paths = (results?.runs ?? []).filter((run) => asked(run.elementId)).map((run) => run.path);
  const unusable = read.unusableRuns.filter((run) => asked(run.elementId)).length;
  const workedOut = paths.filter((path) => path !== undefined).length;
  if (workedOut === 0) return EXIT.nothing;
  return unusable > 0 || workedOut < paths.length ? EXIT.partly : EXIT.done;
}
