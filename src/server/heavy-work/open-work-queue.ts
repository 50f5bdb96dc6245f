import { join } from "node:path";
import type { Issue, Result } from "#core";
import type { ServerSettings } from "../settings.ts";
import type { OpenOfficeTables } from "../tables/open-office-tables.ts";
import { openLocalQueue } from "./local-queue.ts";
import { openSharedQueue } from "./shared-queue.ts";
import type { WorkQueue } from "./work-queue.ts";
import { openWorkThreads } from "./work-threads.ts";

/** Name of the store's SQLite file in the data folder. */
export const STORE_FILE = "toeline.sqlite";

/** The queue for heavy work: with the tables of this server alone, or on the database that several share. */
export function openWorkQueue(
  settings: Pick<ServerSettings, "database" | "dataFolder" | "workers">,
  tables: OpenOfficeTables,
  clock: () => Date,
): Promise<Result<WorkQueue, Issue>> {
  const { database, dataFolder, workers } = settings;
  const place = database === undefined ? { sqliteFile: join(dataFolder, STORE_FILE) } : { database };
  const threads = openWorkThreads(Math.max(1, workers), place);
  const parts = { tables, threads, workers, clock };
  return database === undefined ? openLocalQueue(parts) : openSharedQueue(parts, database);
}
