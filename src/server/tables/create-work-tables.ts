import type { Kysely } from "kysely";
import type { Engine } from "#store";
import type { OfficeTables } from "./office-tables.ts";

/** Heavy work, and who does it. */
export async function createWorkTables(db: Kysely<OfficeTables>, engine: Engine): Promise<void> {
  const work = db.schema
    .createTable("work")
    .addColumn("id", "text", (column) => column.primaryKey().notNull())
    .addColumn("key", "text", (column) => column.notNull().unique())
    .addColumn("task", "text", (column) => column.notNull())
    .addColumn("job", "text", (column) => column.notNull())
    .addColumn("input", "text", (column) => column.notNull())
    .addColumn("requested_by", "text", (column) => column.notNull())
    .addColumn("requested_at", "text", (column) => column.notNull())
    .addColumn("share", "integer", (column) => column.notNull())
    .addColumn("attempts", "integer", (column) => column.notNull())
    .addColumn("state", "text", (column) => column.notNull())
    .addColumn("worker", "text")
    .addColumn("done", "integer", (column) => column.notNull())
    .addColumn("total", "integer", (column) => column.notNull())
    .addColumn("result", "text")
    .addColumn("issue", "text");
  await engine.strict(work).execute();
  await db.schema
    .createIndex("work_next")
    .on("work")
    .columns(["state", "share", "requested_at", "id"])
    .execute();
  await db.schema.createIndex("work_job").on("work").columns(["job", "requested_at"]).execute();
  await db.schema.createIndex("work_person").on("work").columns(["requested_by", "state"]).execute();
  const workers = db.schema
    .createTable("workers")
    .addColumn("id", "text", (column) => column.primaryKey().notNull())
    .addColumn("seen_ms", engine.integer, (column) => column.notNull())
    .addColumn("holders", "text", (column) => column.notNull());
  await engine.strict(workers).execute();
}
