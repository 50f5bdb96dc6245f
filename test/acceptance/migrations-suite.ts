import { type Kysely, sql } from "kysely";
import { describe, expect, test } from "vitest";
import type { Engine } from "../../src/store/sql/engine.ts";
import { migrate } from "../../src/store/sql/migrate.ts";
import { migrations } from "../../src/store/sql/migrations.ts";
import type { Tables } from "../../src/store/sql/tables.ts";
import { unwrap } from "../support/records.ts";

const TABLES = [
  [],
  ["acknowledgements", "entries", "jobs", "kept_aside"],
  ["acknowledgements", "blob_parts", "blobs", "entries", "jobs", "kept_aside"],
  ["acknowledgements", "blob_parts", "blobs", "entries", "jobs", "kept_aside", "pulled"],
];
const ENTRY = {
  id: "1".repeat(64),
  job: "job-1",
  device: "2".repeat(64),
  sequence: 1,
  arrival: 1,
  received_at: "2026-03-02T09:00:00Z",
  text: "{}",
};

/** How a test gets at an empty database of one engine. */
export type EmptyDatabase = () => Promise<Kysely<Tables>>;

/** What the numbered steps must do on every SQL engine. */
export function migrationsSuite(name: string, engine: Engine, empty: EmptyDatabase): void {
  describe(name, () => {
    const tablesOf = async (db: Kysely<Tables>) => {
      const tables = await db.introspection.getTables();
      return tables
        .map((table) => table.name)
        .filter((table) => table !== "migrations")
        .sort();
    };

    test("the steps are numbered from 1 without gaps, and each is tested here", () => {
      expect(migrations.map(({ number }) => number)).toEqual(migrations.map((_, i) => i + 1));
      expect(TABLES).toHaveLength(migrations.length + 1);
    });

    test.each(migrations.map(({ number }) => number))(
      "from an empty database to state %i",
      async (number) => {
        const db = await empty();
        unwrap(await migrate(db, engine, number));
        expect(await tablesOf(db)).toEqual(TABLES[number]);
        // a second time there is nothing to do
        unwrap(await migrate(db, engine, number));
        const taken = await db.selectFrom("migrations").select("number").orderBy("number").execute();
        expect(taken.map((row) => row.number)).toEqual(migrations.slice(0, number).map((one) => one.number));
        await db.destroy();
      },
    );

    test.each(migrations.slice(1).map(({ number }) => number))(
      "from the state before to state %i, with what stands in it",
      async (number) => {
        const db = await empty();
        unwrap(await migrate(db, engine, number - 1));
        await db.insertInto("jobs").values({ id: ENTRY.job, size: 1 }).execute();
        await db.insertInto("entries").values(ENTRY).execute();
        unwrap(await migrate(db, engine, number));
        expect(await tablesOf(db)).toEqual(TABLES[number]);
        expect(await db.selectFrom("entries").selectAll().execute()).toEqual([ENTRY]);
        await db.destroy();
      },
    );

    test("a step that fails leaves the state before it", async () => {
      const db = await empty();
      unwrap(await migrate(db, engine, 1));
      // in the way of the second table of the second step
      await sql`create table blob_parts (hash text)`.execute(db);
      const failed = await migrate(db, engine);
      expect(failed.ok ? "done" : failed.error.code).toBe("store.failed");
      expect(await tablesOf(db)).toEqual([...TABLES[1]!, "blob_parts"].sort());
      await sql`drop table blob_parts`.execute(db);
      unwrap(await migrate(db, engine));
      expect(await tablesOf(db)).toEqual(TABLES.at(-1));
      await db.destroy();
    });

    test("a database of a newer version is left alone", async () => {
      const db = await empty();
      unwrap(await migrate(db, engine));
      await db.insertInto("migrations").values({ number: 99, name: "later" }).execute();
      const refused = await migrate(db, engine);
      expect(refused.ok ? undefined : refused.error).toMatchObject({
        code: "store.newer",
        values: { found: 99, expected: migrations.length },
      });
      await db.destroy();
    });
  });
}
