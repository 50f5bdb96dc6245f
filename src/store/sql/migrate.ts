import type { Kysely } from "kysely";
import { contract, fail, type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";
import type { Engine } from "./engine.ts";
import { type Migration, migrations } from "./migrations.ts";
import type { Tables } from "./tables.ts";

/**
 * Brings the tables of a database to the state this version works with. Each step is one transaction, so that a crash leaves the
 * state before it or after it. Several processes may do so at once.
 *
 * @param upTo number of the last step to take; all of them unless a test asks for less.
 *
 * Errors: store.newer, if a newer version of the program has been here; those of every call of the store.
 */
export async function migrate(
  db: Kysely<Tables>,
  engine: Engine,
  upTo: number = migrations.length,
): Promise<Result<true, Issue>> {
  contract(upTo <= migrations.length, `migrate: there is no migration ${upTo}`);
  const version = await attempt(() => beginMigrations(db, engine));
  if (!version.ok) return version;
  if (version.value > migrations.length)
    return fail(error("store.newer", { found: version.value, expected: migrations.length }));
  for (const migration of migrations.slice(0, upTo)) {
    if (migration.number <= version.value) continue;
    const done = await attempt(() => take(db, engine, migration));
    if (!done.ok) return done;
  }
  return ok(true);
}

/** Number of the last step that was taken; 0 in an empty database. */
async function beginMigrations(db: Kysely<Tables>, engine: Engine): Promise<number> {
  await db.transaction().execute(async (transaction) => {
    await engine.lockSchema(transaction);
    const table = transaction.schema
      .createTable("migrations")
      .ifNotExists()
      .addColumn("number", "integer", (column) => column.primaryKey().notNull())
      .addColumn("name", "text", (column) => column.notNull());
    await engine.strict(table).execute();
  });
  const last = await db
    .selectFrom("migrations")
    .select(({ fn }) => fn.max("number").as("number"))
    .executeTakeFirst();
  return last?.number ?? 0;
}

/** The row is written first: another process that takes the same step waits for it, and then finds it taken. */
async function take(db: Kysely<Tables>, engine: Engine, { number, name, up }: Migration): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    const mine = await transaction
      .insertInto("migrations")
      .values({ number, name })
      .onConflict((conflict) => conflict.column("number").doNothing())
      .returning("number")
      .executeTakeFirst();
    if (mine !== undefined) await up(transaction, engine);
  });
}
