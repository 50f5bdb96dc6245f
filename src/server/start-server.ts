import type { AddressInfo } from "node:net";
import { fail, type Issue, ok, type Result } from "#core";
import type { AppInstance } from "./app-instance.ts";
import { attempt } from "./attempt.ts";
import { createApp } from "./create-app.ts";
import type { LogOutput } from "./frame/request-log.ts";
import { error } from "./issue.ts";
import { STOP_TIMEOUT_MS } from "./limits.ts";
import { openOffice } from "./office/open-office.ts";
import type { Office } from "./office.ts";
import type { ServerSettings } from "./settings.ts";

export interface RunningServer {
  /** as a person on this machine types it */
  readonly address: string;
  readonly office: Office;
  /** takes no more requests, finishes those that run, closes everything; asked twice it does so once */
  stop(): Promise<void>;
}

/** A part of the time goes to the requests, so that the rest is enough to close the databases. */
const FINISH_REQUESTS_MS = STOP_TIMEOUT_MS * 0.6;

/**
 * Opens an office and listens.
 *
 * Errors: server.port-taken, server.cannot-listen, and those of openOffice.
 */
export async function startServer(
  settings: ServerSettings,
  clock: () => Date = () => new Date(),
  log: LogOutput = process.stderr,
): Promise<Result<RunningServer, Issue>> {
  const opened = await openOffice(settings, clock);
  if (!opened.ok) return opened;
  const office = opened.value;
  const app = await createApp(office, log);
  const { host, port } = settings;
  const listening = await attempt(() => app.listen({ host, port }));
  if (!listening.ok) {
    await app.close();
    await office.close();
    const code = /EADDRINUSE/.test(listening.error) ? "server.port-taken" : "server.cannot-listen";
    return fail(error(code, { host, port, found: listening.error }));
  }
  let stopping: Promise<void> | undefined;
  return ok({
    address: addressOf(app, host),
    office,
    stop: () => {
      stopping ??= stop(app, office);
      return stopping;
    },
  });
}

async function stop(app: AppInstance, office: Office): Promise<void> {
  const cut = setTimeout(() => {
    for (const client of app.websocketServer.clients) client.terminate();
    app.server.closeAllConnections();
  }, FINISH_REQUESTS_MS);
  await app.close();
  clearTimeout(cut);
  await office.close();
}

function addressOf(app: AppInstance, host: string): string {
  const { port } = app.server.address() as AddressInfo;
  const isAny = host === "0.0.0.0" || host === "::";
  const name = isAny ? "localhost" : host.includes(":") ? `[${host}]` : host;
  return `http://${name}:${port}`;
}
