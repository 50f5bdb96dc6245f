import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Command } from "commander";
import type { Issue, Result } from "#core";
import {
  type RunningServer,
  readSettings,
  type ServerFlags,
  type ServerSettings,
  startServer,
} from "#server";
import { sentenceOf } from "#text";
import type { Surroundings } from "../command.ts";
import { EXIT, type ExitCode } from "../exit-code.ts";
import { openInBrowser } from "../open-in-browser.ts";
import type { Terminal } from "../terminal/terminal.ts";

const EXAMPLES = `
Without --listen the server is for you alone: it answers on this machine only, and nobody signs in.
With --listen it is for a team: everybody has an account, and the first start prints a link for the first administrator.

Examples:
  toeline serve                                     your jobs, in ./toeline-data
  toeline serve --data /srv/toeline --listen 127.0.0.1:7410 --public-address https://toeline.example.org \\
                --trust-proxy 127.0.0.1             for a team, behind a proxy with TLS

Secrets come from the environment or from files: TOELINE_DATABASE or TOELINE_DATABASE_FILE (an address with a password),
TOELINE_METRICS_TOKEN or TOELINE_METRICS_TOKEN_FILE. See docs/running-a-server.md.

Exit code: 0 stopped as asked (Ctrl-C, SIGTERM), 2 could not start.`;

/** How many ports are tried if the usual one is taken and none was named. */
const PORTS_TRIED = 10;

interface ServeOptions extends Omit<ServerFlags, "app"> {
  readonly open?: true;
}

export function addServe(program: Command, surroundings: Surroundings, done: (code: ExitCode) => void): void {
  program
    .command("serve")
    .summary("the app in a browser, for you or for a team")
    .description("Serves the app and keeps the jobs, until it is stopped.")
    .option("--data <dir>", "folder of the jobs, keys and accounts (toeline-data)")
    .option("--port <n>", "port on this machine (7410, or the next free one)")
    .option("--listen <address:port>", "serve a team, on this address")
    .option("--database <address>", "keep everything in a PostgreSQL database, postgres://user@host/name")
    .option("--public-address <url>", "address that people type, if a proxy stands before the server")
    .option("--trust-proxy <addresses>", "proxies whose word is taken for who asks, with commas")
    .option("--workers <n>", "threads for reports and trials; 0 leaves them to other processes (1)")
    .option("--log-level <level>", "silent, error, warn, info or debug")
    .option("--open", "open the app in the browser")
    .addHelpText("after", EXAMPLES)
    .action(async (options: ServeOptions) => done(await serve(options, surroundings)));
}

async function serve(options: ServeOptions, { terminal }: Surroundings): Promise<ExitCode> {
  const { open, ...flags } = options;
  const settings = readSettings({ ...flags, app: appFolder() }, process.env);
  if (!settings.ok) {
    for (const issue of settings.error) terminal.tell(sentenceOf(issue));
    return EXIT.nothing;
  }
  const stopped = signalled();
  const started = await start(settings.value, flags.port === undefined && !process.env["TOELINE_PORT"]);
  if (!started.ok) {
    terminal.tell(sentenceOf(started.error));
    return EXIT.nothing;
  }
  const server = started.value;
  await greet(server, settings.value, terminal);
  if (open) openInBrowser(server.address, process.env);
  await stopped;
  terminal.tell("Stopping …");
  await server.stop();
  return EXIT.done;
}

/** A local server whose usual port is taken takes the next free one. */
async function start(settings: ServerSettings, mayMove: boolean): Promise<Result<RunningServer, Issue>> {
  let last = await startServer(settings);
  for (let i = 1; i < PORTS_TRIED && mayMove && settings.mode === "local"; i += 1) {
    if (last.ok || last.error.code !== "server.port-taken") return last;
    last = await startServer({ ...settings, port: settings.port + i });
  }
  return last;
}

async function greet(server: RunningServer, settings: ServerSettings, terminal: Terminal): Promise<void> {
  const address = settings.publicAddress ?? server.address;
  terminal.print(`Toeline is at ${address}`);
  terminal.tell(
    `Jobs are kept in ${settings.database === undefined ? settings.dataFolder : "the database"}.`,
  );
  if (settings.appFolder === undefined)
    terminal.tell("The app is not built, only the interface for programs answers. npm run build builds it.");
  if (settings.mode === "local") terminal.tell("It is for you alone, on this machine. Ctrl-C stops it.");
  const link = await server.office.access.setUpLink();
  if (link !== undefined)
    terminal.print(
      `Nobody has an account yet. The first administrator makes one here, once: ${address}${link}`,
    );
  if (settings.mode === "shared" && !address.startsWith("https:"))
    terminal.tell(
      "Caution: without https passwords and readings can be read on the way, and phones keep nothing offline. " +
        "Put a proxy with TLS before it (docs/running-a-server.md).",
    );
}

/** Resolves once somebody asks the program to stop. */
const signalled = (): Promise<void> =>
  new Promise((resolve) => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
  });

/** The built app lies beside the bundled program. */
const appFolder = (): string => join(dirname(fileURLToPath(import.meta.url)), "app");
