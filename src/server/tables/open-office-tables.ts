import { join } from "node:path";
import type { Issue, Result } from "#core";
import { type OpenTables, openTables } from "#store";
import type { ServerSettings } from "../settings.ts";
import { officeMigrations } from "./migrations.ts";
import type { OfficeTables } from "./office-tables.ts";

export type OpenOfficeTables = OpenTables<OfficeTables>;

/** Name of the SQLite file in the data folder. */
export const OFFICE_FILE = "office.sqlite";

/**
 * Opens accounts, work and whatever else a server keeps beside the logs: a SQLite file of its own, so that writing here never
 * waits for writing there, or the same PostgreSQL database as the store's. `db.destroy()` closes them.
 *
 * Errors: as `openTables`.
 */
export const openOfficeTables = (
  settings: Pick<ServerSettings, "database" | "dataFolder">,
): Promise<Result<OpenOfficeTables, Issue>> =>
  openTables(
    settings.database === undefined
      ? { file: join(settings.dataFolder, OFFICE_FILE) }
      : { address: settings.database },
    officeMigrations,
  );
