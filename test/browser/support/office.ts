import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { type RunningServer, type ServerSettings, startServer } from "#server";

const root = resolve(import.meta.dirname, "../../..");
export const EXAMPLE = join(root, "examples/shaft-and-pier");

/** A server with a fresh data folder and the built app, as `toeline serve` starts it. */
export interface TestOffice {
  readonly address: string;
  readonly server: RunningServer;
  stop(): Promise<void>;
}

/** Starts a real server for one person. @param jobs job folders that it has from the start, by the id they get. */
export async function startOffice(jobs: Readonly<Record<string, string>> = {}): Promise<TestOffice> {
  const dataFolder = mkdtempSync(join(tmpdir(), "toeline-browser-"));
  for (const [job, folder] of Object.entries(jobs)) importJob(folder, job, dataFolder);
  const settings: ServerSettings = {
    mode: "local",
    host: "127.0.0.1",
    port: 0,
    dataFolder,
    database: undefined,
    publicAddress: undefined,
    trustedProxies: [],
    // another build of the app, for trials
    appFolder: process.env["TOELINE_APP"] ?? join(root, "dist/app"),
    workers: 0,
    logLevel: "silent",
  };
  const server = await startServer(settings);
  if (!server.ok) throw new Error(JSON.stringify(server.error));
  return {
    address: server.value.address.replace(/\/$/, ""),
    server: server.value,
    stop: async () => {
      await server.value.stop();
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
}

function importJob(folder: string, job: string, dataFolder: string): void {
  const done = spawnSync(
    process.execPath,
    [join(root, "dist/toeline.mjs"), "import", folder, "--data", dataFolder, "--job", job],
    { encoding: "utf8" },
  );
  if (done.status !== 0) throw new Error(`import of ${folder}: ${done.stdout}${done.stderr}`);
}
