import { type Kysely, sql, type Transaction } from "kysely";
import { attemptDatabase } from "#store";
import { error } from "../issue.ts";
import type { OfficeTables } from "../tables/office-tables.ts";
import { MAX_ATTEMPTS } from "./run-claimed.ts";
import { addTicket } from "./tickets.ts";

/** How often a server process says that it is there, milliseconds. */
export const BEAT_MS = 1000;
/** One that was not heard of for so long has died, or cannot reach the database: others take its work. Milliseconds. */
const DEAD_AFTER_MS = 6000;
/** Any number that no other part locks by. */
const TAKING_OVER = 7_056_532;

const NOW_MS = sql<number>`(extract(epoch from clock_timestamp()) * 1000)::bigint`;

/** Says that a process is there, by the clock of the database. @param holders names under which it takes tickets. */
export async function beat(
  db: Kysely<OfficeTables>,
  worker: string,
  holders: readonly string[],
): Promise<void> {
  const row = { seen_ms: NOW_MS, holders: JSON.stringify(holders) };
  await db
    .insertInto("workers")
    .values({ id: worker, ...row })
    .onConflict((conflict) => conflict.column("id").doUpdateSet(row))
    .execute();
}

export const signOff = (db: Kysely<OfficeTables>, worker: string): Promise<unknown> =>
  attemptDatabase(() => db.deleteFrom("workers").where("id", "=", worker).execute());

/** Puts the work of processes that are not heard of any more back into the queue. Only one process does so at a time. */
export const takeOver = (db: Kysely<OfficeTables>): Promise<void> =>
  db.transaction().execute(async (transaction) => {
    const { rows } = await sql<{ mine: boolean }>`
      select pg_try_advisory_xact_lock(${TAKING_OVER}) as mine`.execute(transaction);
    if (rows[0]?.mine === true) await takeOverLocked(transaction);
  });

async function takeOverLocked(db: Transaction<OfficeTables>): Promise<void> {
  const dead = await db
    .deleteFrom("workers")
    .where("seen_ms", "<", sql<number>`${NOW_MS} - ${DEAD_AFTER_MS}::bigint`)
    .returning("holders")
    .execute();
  const lost = db
    .updateTable("work")
    .where("state", "=", "running")
    .where(sql<boolean>`not exists (select 1 from workers where workers.id = work.worker)`);
  const issue = JSON.stringify(error("work.lost", { found: MAX_ATTEMPTS }));
  await lost.where("attempts", ">=", MAX_ATTEMPTS).set({ state: "failed", worker: null, issue }).execute();
  const again = await lost.set({ state: "waiting", worker: null }).returning(["id", "share"]).execute();
  const holders = dead.flatMap((one) => JSON.parse(one.holders) as string[]);
  if (holders.length > 0)
    await sql`select graphile_worker.force_unlock_workers(${holders}::text[])`.execute(db);
  for (const row of again) await addTicket(db, row);
}
