import type { Kysely } from "kysely";
import type { Engine } from "#store";
import type { OfficeTables } from "./office-tables.ts";

export async function createFrameTables({ schema }: Kysely<OfficeTables>, engine: Engine): Promise<void> {
  const facts = schema
    .createTable("office_facts")
    .addColumn("name", "text", (column) => column.primaryKey().notNull())
    .addColumn("value", "text", (column) => column.notNull());
  await engine.strict(facts).execute();
  const heads = schema
    .createTable("tree_heads")
    .addColumn("job", "text", (column) => column.notNull())
    .addColumn("size", engine.integer, (column) => column.notNull())
    .addColumn("root", "text", (column) => column.notNull())
    .addColumn("at", "text", (column) => column.notNull())
    .addColumn("key", "text", (column) => column.notNull())
    .addColumn("signature", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("tree_heads_key", ["job", "size"]);
  await engine.strict(heads).execute();
}
