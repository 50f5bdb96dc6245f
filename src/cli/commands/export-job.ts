import { existsSync, renameSync, writeFileSync } from "node:fs";
import type { Command } from "commander";
import { folderFromState, type GivenFolder } from "#exchange";
import { writeZip } from "#formats";
import { foldJob, utf8 } from "#records";
import type { Store } from "#store";
import { sentenceOf } from "#text";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { whyNotWritable, writeFolder } from "../files/output-folder.ts";
import { type LogPlace, openLog } from "../log/open-log.ts";
import { findingLines } from "../reports/located-finding.ts";
import { counted } from "../terminal/counted.ts";
import { nearest } from "../terminal/nearest.ts";

const EXAMPLES = `
Examples:
  toeline export-job wall-a --data office --out wall-a
  toeline export-job wall-a --data office --out wall-a.zip
  toeline reduce wall-a.zip

Exit code: 0 written, 1 written, with something missing or not settled in the log, 2 nothing was written.`;

interface ExportOptions extends LogPlace {
  readonly out: string;
}

export function addExportJob(
  program: Command,
  surroundings: Surroundings,
  done: (code: ExitCode) => void,
): void {
  program
    .command("export-job")
    .summary("from the log to a job folder")
    .description("Writes a job of a log as a job folder, or as a .zip of one, as it stands now.")
    .argument("<id>", "id of the job in the log")
    .option("--data <dir>", "data folder of the log")
    .option("--database <address>", "PostgreSQL database of the log")
    .requiredOption("--out <path>", "new or empty folder, or a file ending in .zip")
    .addHelpText("after", EXAMPLES)
    .action(async (job: string, options: ExportOptions) => done(await exportJob(job, options, surroundings)));
}

async function exportJob(job: string, options: ExportOptions, surroundings: Surroundings): Promise<ExitCode> {
  const { terminal } = surroundings;
  const refuse = (sentence: string): ExitCode => {
    terminal.tell(sentence);
    return EXIT.nothing;
  };
  const isZip = options.out.toLowerCase().endsWith(".zip");
  if (isZip && existsSync(options.out))
    return refuse(`${options.out} is there already. Choose another name.`);
  const unwritable = isZip ? undefined : whyNotWritable(options.out);
  if (unwritable !== undefined) return refuse(unwritable);
  const store = await openLog(options, false);
  if (!store.ok) return refuse(store.error);
  const given = await folderOf(store.value, job);
  await store.value.close();
  if (typeof given === "string") return refuse(given);
  const { files, findings } = given;
  const located = findings.map((issue) => ({ issue, about: "" }));
  for (const line of findingLines(terminal, located)) terminal.tell(line);
  const code = isZip ? writeArchive(options.out, given) : await writeFiles(options.out, given, surroundings);
  if (code !== EXIT.done) return code;
  terminal.tell(`${counted(files.size, "file")} written to ${options.out}.`);
  return findings.length > 0 ? EXIT.partly : EXIT.done;
}

/** The job as a folder, or in a sentence why not. */
async function folderOf(store: Store, job: string): Promise<GivenFolder | string> {
  const entries = await store.readJob(job);
  if (!entries.ok) return sentenceOf(entries.error);
  if (entries.value.length === 0) {
    const jobs = await store.jobs();
    const near = nearest(job, jobs.ok ? jobs.value : []);
    return `The log has no job ${job}${near === undefined ? "." : `; is ${near} meant?`}`;
  }
  return folderFromState(foldJob(entries.value), entries.value, async (blob) => {
    const bytes = await store.readBlob(blob);
    return bytes.ok ? bytes.value : undefined;
  });
}

/** Written beside and then moved, so that there is never half an archive. */
function writeArchive(out: string, { files }: GivenFolder): ExitCode {
  const bytes = new Map(
    [...files].map(([name, content]) => [name, typeof content === "string" ? utf8(content) : content]),
  );
  const unfinished = `${out}.unfinished-${process.pid}`;
  writeFileSync(unfinished, writeZip(bytes));
  renameSync(unfinished, out);
  return EXIT.done;
}

async function writeFiles(
  out: string,
  { files }: GivenFolder,
  { terminal, interrupted, holdInterrupt }: Surroundings,
): Promise<ExitCode> {
  holdInterrupt();
  const written = await writeFolder(out, files, interrupted);
  if (written.ok) return EXIT.done;
  terminal.tell(written.error);
  return interrupted() ? EXIT.interrupted : EXIT.nothing;
}
