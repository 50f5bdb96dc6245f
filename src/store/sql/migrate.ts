import type { Kysely } from "kysely";
import type { Issue, Result } from "#core";
import type { Engine } from "./engine.ts";
import { storeMigrations } from "./migrations.ts";
import { runMigrations } from "./run-migrations.ts";
import type { Tables } from "./tables.ts";

/**
 * Brings the tables of the store to the state this version works with.
 *
 * @param upTo number of the last step to take; all of them unless a test asks for less.
 *
 * Errors: store.newer, if a newer version of the program has been here; those of every call of the store.
 */
export const migrate = (db: Kysely<Tables>, engine: Engine, upTo?: number): Promise<Result<true, Issue>> =>
  runMigrations(db, engine, storeMigrations, upTo);
