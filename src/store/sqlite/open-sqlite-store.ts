import Database from "better-sqlite3";
import { Kysely, SqliteDialect } from "kysely";
import type { Issue, Result } from "#core";
import { attempt } from "../attempt.ts";
import { sqliteEngine } from "../sql/engine.ts";
import { openSqlStore } from "../sql/sql-store.ts";
import type { Tables } from "../sql/tables.ts";
import type { Store } from "../store.ts";

/** How long a writer waits for another process, milliseconds. */
const BUSY_TIMEOUT_MS = 5000;

/**
 * Opens the store in a SQLite file, which is made if there is none. What an append has answered is on the disk.
 *
 * Open a file once in a program. Several programs may have it open, each writer waits for the others; two stores on one file in
 * the same thread would wait for each other in vain, because SQLite's waiting stops the thread.
 *
 * Errors: store.newer, store.unreachable, store.damaged, store.full, store.busy, store.failed.
 */
export async function openSqliteStore(file: string): Promise<Result<Store, Issue>> {
  const opened = await attempt(async () => openSqlite(file));
  if (!opened.ok) return opened;
  return openSqlStore(sqliteTables<Tables>(opened.value), sqliteEngine);
}

/** The connection. Every setting is made on every open: SQLite keeps only the journal mode in the file. */
export function openSqlite(file: string): Database.Database {
  const database = new Database(file);
  database.pragma(`busy_timeout = ${BUSY_TIMEOUT_MS}`);
  database.pragma("journal_mode = WAL");
  database.pragma("synchronous = FULL");
  database.pragma("foreign_keys = ON");
  return database;
}

export const sqliteTables = <T>(database: Database.Database): Kysely<T> =>
  new Kysely<T>({ dialect: new SqliteDialect({ database }) });
