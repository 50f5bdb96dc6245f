import type { ServerSettings } from "../../src/server/settings.ts";

/** Settings of a server in shared mode over a folder, on any free port. */
export const folderSettings = (dataFolder: string, more: Partial<ServerSettings> = {}): ServerSettings => ({
  mode: "shared",
  host: "127.0.0.1",
  port: 0,
  dataFolder,
  database: undefined,
  publicAddress: undefined,
  trustedProxies: [],
  appFolder: undefined,
  workers: 0,
  logLevel: "error",
  ...more,
});
