import type { Kysely } from "kysely";
import type { Engine } from "./engine.ts";
import type { Migration, Migrations } from "./run-migrations.ts";
import type { Tables } from "./tables.ts";

async function createLog(db: Kysely<Tables>, engine: Engine): Promise<void> {
  const jobs = db.schema
    .createTable("jobs")
    .addColumn("id", "text", (column) => column.primaryKey().notNull())
    .addColumn("size", engine.integer, (column) => column.notNull());
  await engine.strict(jobs).execute();
  const entries = db.schema
    .createTable("entries")
    .addColumn("id", "text", (column) => column.primaryKey().notNull())
    .addColumn("job", "text", (column) => column.notNull().references("jobs.id"))
    .addColumn("device", "text", (column) => column.notNull())
    .addColumn("sequence", engine.integer, (column) => column.notNull())
    .addColumn("arrival", engine.integer, (column) => column.notNull())
    .addColumn("received_at", "text", (column) => column.notNull())
    .addColumn("text", "text", (column) => column.notNull())
    .addUniqueConstraint("entries_arrival", ["job", "arrival"]);
  await engine.strict(entries).execute();
  await db.schema
    .createIndex("entries_chain")
    .on("entries")
    .columns(["job", "device", "sequence", "id"])
    .execute();
  const acknowledgements = db.schema
    .createTable("acknowledgements")
    .addColumn("office", "text", (column) => column.notNull())
    .addColumn("entry", "text", (column) => column.notNull().references("entries.id"))
    .addColumn("acknowledged_at", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("acknowledgements_key", ["office", "entry"]);
  await engine.strict(acknowledgements).execute();
  const aside = db.schema
    .createTable("kept_aside")
    .addColumn("job", "text", (column) => column.notNull())
    .addColumn("key", "text", (column) => column.notNull())
    .addColumn("issue", "text", (column) => column.notNull())
    .addColumn("text", "text", (column) => column.notNull())
    .addColumn("kept_at", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("kept_aside_key", ["job", "key"]);
  await engine.strict(aside).execute();
}

async function createBlobs(db: Kysely<Tables>, engine: Engine): Promise<void> {
  const blobs = db.schema
    .createTable("blobs")
    .addColumn("hash", "text", (column) => column.primaryKey().notNull())
    .addColumn("size", engine.integer, (column) => column.notNull())
    .addColumn("received", engine.integer, (column) => column.notNull())
    .addColumn("complete", "integer", (column) => column.notNull());
  await engine.strict(blobs).execute();
  const parts = db.schema
    .createTable("blob_parts")
    .addColumn("hash", "text", (column) => column.notNull().references("blobs.hash").onDelete("cascade"))
    .addColumn("start", engine.integer, (column) => column.notNull())
    .addColumn("bytes", engine.bytes, (column) => column.notNull())
    .addPrimaryKeyConstraint("blob_parts_key", ["hash", "start"]);
  await engine.strict(parts).execute();
}

async function createPulled(db: Kysely<Tables>, engine: Engine): Promise<void> {
  const pulled = db.schema
    .createTable("pulled")
    .addColumn("job", "text", (column) => column.notNull())
    .addColumn("office", "text", (column) => column.notNull())
    .addColumn("place", engine.integer, (column) => column.notNull())
    .addPrimaryKeyConstraint("pulled_key", ["job", "office"]);
  await engine.strict(pulled).execute();
}

/** In their order, numbered from 1 without gaps. One that was released is never changed; a new one follows it. */
export const migrations: readonly Migration<Tables>[] = [
  { number: 1, name: "log", up: createLog },
  { number: 2, name: "blobs", up: createBlobs },
  { number: 3, name: "pulled", up: createPulled },
];

/** The same with the name of the table in which the steps taken are written. */
export const storeMigrations: Migrations<Tables> = { table: "migrations", steps: migrations };
