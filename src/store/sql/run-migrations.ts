import { type Kysely, sql } from "kysely";
import { contract, fail, type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";
import type { Engine } from "./engine.ts";

/** A step from one state of the tables to the next. It adds; it never rewrites what was written to be kept. */
export interface Migration<T> {
  readonly number: number;
  readonly name: string;
  up(db: Kysely<T>, engine: Engine): Promise<void>;
}

/** The steps of one set of tables, and where it is written which of them were taken. */
export interface Migrations<T> {
  /** name of a table of its own, so that two sets may share a database */
  readonly table: string;
  /** in their order, numbered from 1 without gaps */
  readonly steps: readonly Migration<T>[];
}

/**
 * Brings a set of tables to the state this version works with. Each step is one transaction, so that a crash leaves the state
 * before it or after it. Several processes may do so at once.
 *
 * @param upTo number of the last step to take; all of them unless a test asks for less.
 *
 * Errors: store.newer, if a newer version of the program has been here; those of every call of the store.
 */
export async function runMigrations<T>(
  db: Kysely<T>,
  engine: Engine,
  migrations: Migrations<T>,
  upTo: number = migrations.steps.length,
): Promise<Result<true, Issue>> {
  const { table, steps } = migrations;
  contract(upTo <= steps.length, `runMigrations: ${table} has no step ${upTo}`);
  const version = await attempt(() => beginMigrations(db, engine, table));
  if (!version.ok) return version;
  if (version.value > steps.length)
    return fail(error("store.newer", { found: version.value, expected: steps.length }));
  for (const step of steps.slice(0, upTo)) {
    if (step.number <= version.value) continue;
    const done = await attempt(() => take(db, engine, table, step));
    if (!done.ok) return done;
  }
  return ok(true);
}

/** Number of the last step that was taken; 0 in an empty database. */
async function beginMigrations<T>(db: Kysely<T>, engine: Engine, table: string): Promise<number> {
  await db.transaction().execute(async (transaction) => {
    await engine.lockSchema(transaction);
    const made = transaction.schema
      .createTable(table)
      .ifNotExists()
      .addColumn("number", "integer", (column) => column.primaryKey().notNull())
      .addColumn("name", "text", (column) => column.notNull());
    await engine.strict(made).execute();
  });
  const { rows } = await sql<{
    number: number | null;
  }>`select max(number) as number from ${sql.table(table)}`.execute(db);
  return rows[0]?.number ?? 0;
}

/** The row is written first: another process that takes the same step waits for it, and then finds it taken. */
async function take<T>(db: Kysely<T>, engine: Engine, table: string, step: Migration<T>): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    const { rows } = await sql`
      insert into ${sql.table(table)} (number, name) values (${step.number}, ${step.name})
      on conflict (number) do nothing returning number`.execute(transaction);
    if (rows.length > 0) await step.up(transaction, engine);
  });
}
