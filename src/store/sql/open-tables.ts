import type { Kysely } from "kysely";
import { type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";
import { postgresTables } from "../postgres/open-postgres-store.ts";
import { openSqlite, sqliteTables } from "../sqlite/open-sqlite-store.ts";
import { type Engine, postgresEngine, sqliteEngine } from "./engine.ts";
import { type Migrations, runMigrations } from "./run-migrations.ts";

/** A SQLite file, made if there is none, or the address of a PostgreSQL database. */
export type TablesPlace = { readonly file: string } | { readonly address: string };

/** A set of tables that is ready for use. `db.destroy()` closes it. */
export interface OpenTables<T> {
  readonly db: Kysely<T>;
  readonly engine: Engine;
}

/**
 * Opens the tables of another layer, brought up to date by that layer's own steps. On SQLite the same settings hold as for the
 * store: what was committed is on the disk. On PostgreSQL they may lie in the store's database.
 *
 * Errors: store.newer, store.unreachable, store.damaged, store.full, store.busy, store.failed.
 */
export async function openTables<T>(
  place: TablesPlace,
  migrations: Migrations<T>,
): Promise<Result<OpenTables<T>, Issue>> {
  const opened = await attempt(async () => connectTables<T>(place));
  if (!opened.ok) return opened;
  const { db, engine } = opened.value;
  const migrated = await runMigrations(db, engine, migrations);
  if (migrated.ok) return ok(opened.value);
  await db.destroy();
  return migrated;
}

/**
 * Opens tables as they are, whatever state they are in: for copying them. Throws what the database throws.
 */
export const connectTables = <T>(place: TablesPlace): OpenTables<T> =>
  "file" in place
    ? { db: sqliteTables(openSqlite(place.file)), engine: sqliteEngine }
    : { db: postgresTables(place.address), engine: postgresEngine };
