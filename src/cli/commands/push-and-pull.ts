import type { Command } from "commander";
import type { Store } from "#store";
import {
  createOfficeClient,
  type OfficeClient,
  type SyncOutcome,
  type SyncSettings,
  synchronize,
} from "#sync";
import { sentenceOf } from "#text";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { officeToken } from "../log/office-token.ts";
import { type LogPlace, openLog } from "../log/open-log.ts";
import { counted } from "../terminal/counted.ts";
import type { Terminal } from "../terminal/terminal.ts";

const SECRET = `
The token of a team's office comes from TOELINE_TOKEN, or from a file: --token-file FILE or TOELINE_TOKEN_FILE. It is never
an argument, because arguments can be read by every user of a machine. An office on this machine for one person needs none.`;

const AGAIN = `Breaking off loses nothing: the same command goes on where the last one stopped.`;

const PUSH_HELP = `
Examples:
  toeline push --job site-4 --data office --to https://office.example.org
${SECRET}

${AGAIN}

Exit code: 0 everything is at the office, 1 the office keeps some of it aside, 2 it was not all sent.`;

const PULL_HELP = `
Examples:
  toeline pull --job site-4 --data office --from https://office.example.org
${SECRET}

${AGAIN}

Exit code: 0 everything is here, 1 some of it came damaged or not at all, 2 it was not all fetched.`;

interface OfficeOptions extends LogPlace {
  readonly job: string;
  readonly tokenFile?: string;
}

export function addPushAndPull(
  program: Command,
  surroundings: Surroundings,
  done: (code: ExitCode) => void,
): void {
  const withLog = (command: Command) =>
    command
      .requiredOption("--job <id>", "id of the job in the log")
      .option("--data <dir>", "data folder of the log")
      .option("--database <address>", "PostgreSQL database of the log")
      .option("--token-file <file>", "file that holds the token");
  withLog(program.command("push"))
    .summary("sends what an office does not hold yet")
    .description("Sends a job's entries that the office does not hold yet, then the files they name.")
    .requiredOption("--to <address>", "address of the office")
    .addHelpText("after", PUSH_HELP)
    .action(async (options: OfficeOptions & { readonly to: string }) =>
      done(await push(options, options.to, surroundings)),
    );
  withLog(program.command("pull"))
    .summary("fetches what an office holds and the log does not")
    .description("Fetches a job's entries from an office, then the files they name.")
    .requiredOption("--from <address>", "address of the office")
    .addHelpText("after", PULL_HELP)
    .action(async (options: OfficeOptions & { readonly from: string }) =>
      done(await pull(options, options.from, surroundings)),
    );
}

async function push(options: OfficeOptions, address: string, surroundings: Surroundings): Promise<ExitCode> {
  const { terminal } = surroundings;
  return withOffice(options, address, false, terminal, async (store, client) => {
    const job = await store.size(options.job);
    if (job.ok && job.value === 0) return stopped(terminal, `There is no job ${options.job} in the log.`);
    const outcome = await watched(store, client, options.job, { entries: "send", files: "send" }, terminal);
    if (outcome.stoppedBy !== undefined) return stopped(terminal, sentenceOf(outcome.stoppedBy));
    for (const [id, code] of outcome.refused) terminal.tell(`Entry ${id} is kept aside (${code}).`);
    const { sent, filesSent } = outcome;
    terminal.print(`${options.job}: ${entriesAndFiles(sent, filesSent)} sent to ${address}.`);
    return outcome.refused.size > 0 ? EXIT.partly : EXIT.done;
  });
}

async function pull(options: OfficeOptions, address: string, surroundings: Surroundings): Promise<ExitCode> {
  const { terminal } = surroundings;
  return withOffice(options, address, true, terminal, async (store, client) => {
    const settings = { entries: "fetch", files: "fetch", compare: false } as const;
    const outcome = await watched(store, client, options.job, settings, terminal);
    if (outcome.stoppedBy !== undefined) return stopped(terminal, sentenceOf(outcome.stoppedBy));
    const { received, filesFetched } = outcome;
    terminal.print(`${options.job}: ${entriesAndFiles(received, filesFetched)} fetched from ${address}.`);
    return outcome.findings.length > 0 ? EXIT.partly : EXIT.done;
  });
}

/** Opens the log and the line to the office. */
async function withOffice(
  options: OfficeOptions,
  address: string,
  isNewAllowed: boolean,
  terminal: Terminal,
  work: (store: Store, client: OfficeClient) => Promise<ExitCode>,
): Promise<ExitCode> {
  const token = officeToken(process.env, options.tokenFile);
  if (!token.ok) return stopped(terminal, token.error);
  const client = createOfficeClient({ address, token: token.value, fetch: globalThis.fetch });
  if (!client.ok) return stopped(terminal, sentenceOf(client.error));
  const store = await openLog(options, isNewAllowed);
  if (!store.ok) return stopped(terminal, store.error);
  const code = await work(store.value, client.value);
  await store.value.close();
  return code;
}

/** Shows a person who watches how it gets on, and tells what was odd. */
async function watched(
  store: Store,
  client: OfficeClient,
  job: string,
  settings: SyncSettings,
  terminal: Terminal,
): Promise<SyncOutcome> {
  const outcome = await synchronize(store, client, job, {
    ...settings,
    onProgress: ({ sent, received, filesSent, filesFetched }) => {
      if (terminal.watched) terminal.overwrite(entriesAndFiles(sent + received, filesSent + filesFetched));
    },
  });
  if (terminal.watched) terminal.overwrite("");
  for (const finding of outcome.findings) terminal.tell(sentenceOf(finding));
  return outcome;
}

function stopped(terminal: Terminal, sentence: string): ExitCode {
  terminal.tell(sentence);
  return EXIT.nothing;
}

const entriesAndFiles = (entries: number, files: number): string =>
  `${entries} ${entries === 1 ? "entry" : "entries"} and ${counted(files, "file")}`;
