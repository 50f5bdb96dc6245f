import { type Kysely, sql, type Transaction } from "kysely";
import type { Issue } from "#core";
import type { Backend, EntryRow, Inserted } from "../backend.ts";
import { settleRows } from "../batch.ts";
import type { ChainHeld } from "../store.ts";
import type { Engine } from "./engine.ts";
import type { Tables } from "./tables.ts";

/** Rows written by one statement: well below the number of parameters that either database allows. */
const CHUNK = 500;

type LogCalls = Omit<Backend, "blob" | "blobParts" | "addBlobPart" | "completeBlob" | "dropBlob" | "close">;

/** The log and what is kept beside it, in an SQL database. */
export function sqlLog(db: Kysely<Tables>, engine: Engine): LogCalls {
  return {
    insertEntries: (job, rows, receivedAt) =>
      db.transaction().execute((transaction) => insertEntries(transaction, job, rows, receivedAt)),
    jobs: async () => {
      const rows = await db.selectFrom("jobs").select("id").where("size", ">", 0).execute();
      return rows.map((row) => row.id).sort();
    },
    size: async (job) => {
      const row = await db.selectFrom("jobs").select("size").where("id", "=", job).executeTakeFirst();
      return row?.size ?? 0;
    },
    ids: async (job) => {
      const rows = await db
        .selectFrom("entries")
        .select("id")
        .where("job", "=", job)
        .orderBy("arrival")
        .execute();
      return rows.map((row) => row.id);
    },
    entriesAfter: (job, arrival, count) =>
      db
        .selectFrom("entries")
        .select(["arrival", "text"])
        .where("job", "=", job)
        .where("arrival", ">", arrival)
        .orderBy("arrival")
        .limit(count)
        .execute(),
    chainTexts: async (job, device, from, to) => {
      const rows = await db
        .selectFrom("entries")
        .select("text")
        .where("job", "=", job)
        .where("device", "=", device)
        .where("sequence", ">=", from)
        .where("sequence", "<=", to)
        .orderBy("sequence")
        .orderBy(({ ref }) => engine.byCodeUnits(ref("id")))
        .execute();
      return rows.map((row) => row.text);
    },
    chains: (job) => chains(db, job),
    acknowledge: (job, office, ids, at) =>
      db.transaction().execute((transaction) => acknowledge(transaction, job, office, ids, at)),
    acknowledged: async (job, office) => {
      const rows = await db
        .selectFrom("acknowledgements")
        .innerJoin("entries", "entries.id", "acknowledgements.entry")
        .select("entry")
        .where("office", "=", office)
        .where("job", "=", job)
        .execute();
      return rows.map((row) => row.entry);
    },
    notSentTexts: async (job, office) => {
      const rows = await notSent(db, job, office).select("text").orderBy("arrival").execute();
      return rows.map((row) => row.text);
    },
    notSentCount: async (job, office) => {
      const row = await notSent(db, job, office)
        .select(({ fn }) => fn.countAll<number>().as("count"))
        .executeTakeFirst();
      return row?.count ?? 0;
    },
    keepPulled: async (job, office, place) => {
      await db
        .insertInto("pulled")
        .values({ job, office, place })
        .onConflict((conflict) =>
          conflict.columns(["job", "office"]).doUpdateSet({ place }).where("pulled.place", "<", place),
        )
        .execute();
    },
    pulled: async (job, office) => {
      const row = await db
        .selectFrom("pulled")
        .select("place")
        .where("job", "=", job)
        .where("office", "=", office)
        .executeTakeFirst();
      return row?.place ?? 0;
    },
    offices: async (job) => {
      const rows = await db.selectFrom("pulled").select("office").where("job", "=", job).execute();
      return rows.map((row) => row.office).sort();
    },
    forgetOffice: (job, office) =>
      db.transaction().execute((transaction) => forgetOffice(transaction, job, office)),
    keepAside: async (job, rows) => {
      const values = rows.map(({ key, issue, text, at }) => ({
        job,
        key,
        issue: JSON.stringify(issue),
        text,
        kept_at: at,
      }));
      const added = await db
        .insertInto("kept_aside")
        .values(values)
        .onConflict((conflict) => conflict.columns(["job", "key"]).doNothing())
        .returning("key")
        .execute();
      return added.length;
    },
    keptAside: async (job) => {
      const rows = await db
        .selectFrom("kept_aside")
        .selectAll()
        .where("job", "=", job)
        .orderBy(({ ref }) => engine.byCodeUnits(ref("key")))
        .execute();
      return rows.map(({ key, issue, text, kept_at }) => ({
        key,
        issue: JSON.parse(issue) as Issue,
        text,
        at: kept_at,
      }));
    },
  };
}

const chunksOf = <T>(items: readonly T[]): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(items.length / CHUNK) }, (_, i) => items.slice(i * CHUNK, (i + 1) * CHUNK));

async function insertEntries(
  db: Transaction<Tables>,
  job: string,
  rows: readonly EntryRow[],
  receivedAt: string,
): Promise<Inserted> {
  const before = await lockJob(db, job);
  const heldTexts = new Map<string, string>();
  for (const chunk of chunksOf(rows)) {
    const ids = chunk.map((row) => row.id);
    const held = await db.selectFrom("entries").select(["id", "text"]).where("id", "in", ids).execute();
    for (const { id, text } of held) heldTexts.set(id, text);
  }
  const { fresh, taken } = settleRows(rows, heldTexts);
  let arrival = before;
  for (const chunk of chunksOf(fresh)) {
    const values = chunk.map((row) => ({ ...row, job, arrival: ++arrival, received_at: receivedAt }));
    await db.insertInto("entries").values(values).execute();
  }
  if (fresh.length > 0) await db.updateTable("jobs").set({ size: arrival }).where("id", "=", job).execute();
  return { taken, added: fresh.length, size: arrival };
}

/**
 * Locks a job until the transaction ends, and says how many entries it has. It begins with a write: SQLite then waits for other
 * writers instead of giving up, PostgreSQL locks the row, so that places of arrival are given in the order of the commits.
 */
async function lockJob(db: Transaction<Tables>, job: string): Promise<number> {
  const row = await db
    .insertInto("jobs")
    .values({ id: job, size: 0 })
    .onConflict((conflict) => conflict.column("id").doUpdateSet(({ ref }) => ({ size: ref("jobs.size") })))
    .returning("size")
    .executeTakeFirstOrThrow();
  return row.size;
}

async function acknowledge(
  db: Transaction<Tables>,
  job: string,
  office: string,
  ids: readonly string[],
  at: string,
): Promise<number> {
  let added = 0;
  for (const chunk of chunksOf(ids)) {
    const rows = await db
      .insertInto("acknowledgements")
      .columns(["entry", "office", "acknowledged_at"])
      .expression((builder) =>
        builder
          .selectFrom("entries")
          .select(["id"])
          .select([
            sql<string>`cast(${office} as text)`.as("office"),
            sql<string>`cast(${at} as text)`.as("at"),
          ])
          .where("job", "=", job)
          .where("id", "in", chunk),
      )
      .onConflict((conflict) => conflict.columns(["office", "entry"]).doNothing())
      .returning("entry")
      .execute();
    added += rows.length;
  }
  return added;
}

async function forgetOffice(db: Transaction<Tables>, job: string, office: string): Promise<void> {
  await db
    .deleteFrom("acknowledgements")
    .where("office", "=", office)
    .where("entry", "in", (builder) => builder.selectFrom("entries").select("id").where("job", "=", job))
    .execute();
  await db.deleteFrom("pulled").where("job", "=", job).where("office", "=", office).execute();
}

/** The log of a job without what an office has named. */
const notSent = (db: Kysely<Tables>, job: string, office: string) =>
  db
    .selectFrom("entries")
    .where("job", "=", job)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom("acknowledgements")
            .select("entry")
            .whereRef("acknowledgements.entry", "=", "entries.id")
            .where("office", "=", office),
        ),
      ),
    );

/** Counted without gaps from 1, a number equals its rank; the first gap makes every later one larger than its rank. */
async function chains(db: Kysely<Tables>, job: string): Promise<readonly ChainHeld[]> {
  const ranked = db
    .selectFrom("entries")
    .select([
      "device",
      "sequence",
      sql<number>`dense_rank() over (partition by device order by sequence)`.as("rank"),
    ])
    .where("job", "=", job)
    .as("ranked");
  const rows = await db
    .selectFrom(ranked)
    .select(({ fn }) => [
      "device",
      fn.countAll<number>().as("entries"),
      sql<number>`max(case when sequence = rank then sequence else 0 end)`.as("contiguous"),
      sql<number>`max(sequence)`.as("highest"),
    ])
    .groupBy("device")
    .execute();
  const heads = await Promise.all(
    rows.map(({ device, highest }) =>
      db
        .selectFrom("entries")
        .select("id")
        .where("job", "=", job)
        .where("device", "=", device)
        .where("sequence", "=", highest)
        .execute(),
    ),
  );
  return rows
    .map((row, i) => ({ ...row, heads: (heads[i] ?? []).map((head) => head.id).sort() }))
    .sort((a, b) => (a.device < b.device ? -1 : 1));
}
