import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { createApp, type Office, openOffice, type ServerSettings } from "#server";

/** A server of its own in a folder of its own, as real as one that is started, but not listening. */
export interface Served {
  readonly app: Awaited<ReturnType<typeof createApp>>;
  readonly office: Office;
  readonly folder: string;
  /** what was logged so far, line by line */
  readonly log: readonly string[];
  close(): Promise<void>;
}

export const settingsFor = (dataFolder: string, change: Partial<ServerSettings> = {}): ServerSettings => ({
  mode: "local",
  host: "127.0.0.1",
  port: 0,
  dataFolder,
  database: undefined,
  publicAddress: undefined,
  trustedProxies: [],
  appFolder: undefined,
  workers: 0,
  logLevel: "info",
  ...change,
});

export async function serve(change: Partial<ServerSettings> = {}): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), "toeline-server-"));
  const office = await openOffice(settingsFor(folder, change));
  if (!office.ok) throw new Error(JSON.stringify(office.error));
  const log: string[] = [];
  const app = await createApp(office.value, { write: (line) => void log.push(line) });
  return {
    app,
    office: office.value,
    folder,
    log,
    close: async () => {
      await app.close();
      await office.value.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
