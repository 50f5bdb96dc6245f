import { userInfo } from "node:os";
import { basename, resolve } from "node:path";
import type { Command } from "commander";
import type { Issue } from "#core";
import { type FolderStatements, statementsFromJobFolder } from "#exchange";
import type { FolderReader } from "#formats";
import { type Entry, foldJob, type Signer, type Statement } from "#records";
import { keepBlobs, type Store } from "#store";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { openJob } from "../files/open-job.ts";
import { appendToLog } from "../log/append-to-log.ts";
import { deviceSigner } from "../log/device-key.ts";
import { type LogPlace, openLog } from "../log/open-log.ts";
import { findingLines } from "../reports/located-finding.ts";

const EXAMPLES = `
Examples:
  toeline import site-4 --data office              the job becomes "site-4" in the log of the folder office
  toeline import site-4.zip --data office --job wall-a
  toeline import site-4 --database postgres://toeline@localhost/toeline

Importing the same folder again adds nothing; of a changed folder only what differs is added.

Exit code: 0 everything of the folder is in the log, 2 nothing was written.`;

interface ImportOptions extends LogPlace {
  readonly job?: string;
  readonly name?: string;
  readonly author?: string;
}

export function addImport(
  program: Command,
  surroundings: Surroundings,
  done: (code: ExitCode) => void,
): void {
  program
    .command("import")
    .summary("from a job folder into the log of an office or a device")
    .description("Writes what a job folder says into a log, as signed entries that are never changed.")
    .argument("<job>", "folder with job.json, or a .zip of it")
    .option("--data <dir>", "data folder of the log; made if it is not there")
    .option("--database <address>", "PostgreSQL database of the log")
    .option("--job <id>", "id of the job in the log; without it the folder's name")
    .option("--name <text>", "name of the job, in place of the one in job.json")
    .option("--author <name>", "who is named as the author; without it the user of this machine")
    .addHelpText("after", EXAMPLES)
    .action(async (path: string, options: ImportOptions) =>
      done(await importJob(path, options, surroundings)),
    );
}

async function importJob(
  path: string,
  options: ImportOptions,
  surroundings: Surroundings,
): Promise<ExitCode> {
  const refuse = refusal(surroundings);
  const job = options.job ?? jobIdOf(path);
  if (job === "" || job.length > 100) return refuse("Give the job an id of 1 to 100 letters with --job.");
  const folder = openJob(path);
  if (!folder.ok) return refuse(folder.error);
  const store = await openLog(options, true);
  if (!store.ok) return refuse(store.error);
  const signer = await deviceSigner(options);
  const code = signer.ok
    ? await importInto(store.value, job, folder.value, signer.value, options, surroundings)
    : refuse(signer.error);
  await store.value.close();
  return code;
}

const refusal =
  ({ terminal }: Surroundings) =>
  (...sentences: readonly string[]): ExitCode => {
    for (const sentence of sentences) terminal.tell(sentence);
    return EXIT.nothing;
  };

/** The folder's name as an id. */
const jobIdOf = (path: string): string =>
  basename(resolve(path))
    .replace(/\.zip$/i, "")
    .trim();

async function importInto(
  store: Store,
  job: string,
  folder: FolderReader,
  signer: Signer,
  options: ImportOptions,
  surroundings: Surroundings,
): Promise<ExitCode> {
  const { terminal } = surroundings;
  const refuse = refusal(surroundings);
  const tell = (issues: readonly Issue[]) =>
    findingLines(
      terminal,
      issues.map((issue) => ({ issue, about: "" })),
    );
  const held = await store.readJob(job);
  if (!held.ok) return refuse(...tell([held.error]));
  const author = options.author ?? userInfo().username;
  const said = await statementsFromJobFolder(folder, { author, state: foldJob(held.value) });
  if (!said.ok) return refuse(...tell(said.error), "The folder cannot be taken over; nothing was written.");
  for (const line of tell(said.value.findings)) terminal.tell(line);
  const statements = named(said.value, held.value, author, options.name);
  const kept = await keepBlobs(store, said.value.blobs);
  if (!kept.ok) return refuse(...tell([kept.error]));
  const added = await appendToLog(store, job, held.value, statements, signer);
  if (!added.ok) return refuse(...tell(added.error));
  terminal.print(
    added.value === 0
      ? `Job ${job}: the log holds all of it already.`
      : `Job ${job}: ${added.value} ${added.value === 1 ? "entry" : "entries"} added.`,
  );
  return EXIT.done;
}

/** The statements with another name for the job, if one was asked for. */
function named(
  { statements }: FolderStatements,
  held: readonly Entry[],
  author: string,
  name: string | undefined,
): readonly Statement[] {
  if (name === undefined) return statements;
  const without = statements.flatMap((statement) => {
    if (statement.kind !== "job") return [statement];
    const { name: _folders, ...set } = statement.body["set"] as Readonly<Record<string, never>>;
    return Object.keys(set).length === 0 ? [] : [{ ...statement, body: { set } }];
  });
  const values = foldJob(held).things["job"]?.fields["name"] ?? [];
  const isThere = values.length === 1 && values[0]?.value === name;
  return isThere ? without : [{ author, kind: "job", body: { set: { name } } }, ...without];
}
