import { randomUUID } from "node:crypto";
import { type Kysely, type Selectable, sql, type Transaction } from "kysely";
import type { Issue } from "#core";
import type { JsonObject } from "#records";
import type { Engine } from "#store";
import type { OfficeTables } from "../tables/office-tables.ts";
import type { WorkTable } from "../tables/work-tables.ts";
import type { Work, WorkRequest, WorkState } from "./work-queue.ts";

export type WorkRow = Selectable<WorkTable>;
type Db = Kysely<OfficeTables>;
type InTransaction = Transaction<OfficeTables>;

/** Who has begun with a piece of work, and the how manieth time: only this one may say how it ended. */
export interface Claim {
  readonly id: string;
  readonly worker: string;
  readonly attempts: number;
}

export function workOf(row: WorkRow): Work {
  const { id, task, job, requested_by, requested_at, attempts } = row;
  return {
    id,
    task,
    job,
    requestedBy: requested_by,
    requestedAt: requested_at,
    attempts,
    progress: stateOf(row),
  };
}

function stateOf({ state, done, total, result, issue }: WorkRow): WorkState {
  if (state === "running") return { state, done, total };
  if (state === "finished") return { state, result: JSON.parse(result ?? "{}") as JsonObject };
  if (state === "failed") return { state, issue: JSON.parse(issue ?? "{}") as Issue };
  return { state };
}

/** A row for a request, unless there is one with its key. One that failed or was cancelled is put into the queue again. */
export async function enqueue(
  db: InTransaction,
  request: WorkRequest,
  at: string,
): Promise<{ readonly row: WorkRow; readonly isNew: boolean }> {
  const { task, job, input, entries, signed, requestedBy, key } = request;
  const fresh = { requested_by: requestedBy, requested_at: at, share: shareOf(requestedBy), ...UNTOUCHED };
  const row = await db
    .insertInto("work")
    .values({ id: randomUUID(), key, task, job, input: JSON.stringify({ entries, signed, input }), ...fresh })
    .onConflict((conflict) =>
      conflict.column("key").doUpdateSet(fresh).where(sql<boolean>`work.state in ('failed', 'cancelled')`),
    )
    .returningAll()
    .executeTakeFirst();
  if (row !== undefined) return { row, isNew: true };
  const before = await db.selectFrom("work").selectAll().where("key", "=", key).executeTakeFirstOrThrow();
  return { row: before, isNew: false };
}

const UNTOUCHED = {
  attempts: 0,
  state: "waiting",
  worker: null,
  done: 0,
  total: 0,
  result: null,
  issue: null,
} as const;

const shareOf = (person: string) =>
  sql<number>`(select count(*) + 1 from work as mine
    where mine.requested_by = ${person} and mine.state in ('waiting', 'running'))`;

/** How many pieces of a person, and of all, wait or run. */
export async function unfinished(
  db: Db,
  person: string,
): Promise<{ readonly mine: number; readonly all: number }> {
  const row = await db
    .selectFrom("work")
    .select(({ fn }) => [
      fn.countAll<number>().as("all"),
      sql<number>`coalesce(sum(case when requested_by = ${person} then 1 else 0 end), 0)`.as("mine"),
    ])
    .where("state", "in", ["waiting", "running"])
    .executeTakeFirstOrThrow();
  return { mine: Number(row.mine), all: Number(row.all) };
}

export const findRow = (db: Db, id: string): Promise<WorkRow | undefined> =>
  db.selectFrom("work").selectAll().where("id", "=", id).executeTakeFirst();

export const rowsOfJob = (db: Db, job: string): Promise<WorkRow[]> =>
  db.selectFrom("work").selectAll().where("job", "=", job).orderBy("requested_at").orderBy("id").execute();

export async function countStates(db: Db): Promise<Readonly<Record<WorkState["state"], number>>> {
  const rows = await db
    .selectFrom("work")
    .select(({ fn }) => ["state", fn.countAll<number>().as("count")])
    .groupBy("state")
    .execute();
  const none = { waiting: 0, running: 0, finished: 0, failed: 0, cancelled: 0 };
  return { ...none, ...Object.fromEntries(rows.map(({ state, count }) => [state, count])) };
}

/** Takes the next piece that waits; or the one named, if it waits. */
export function claim(db: Db, engine: Engine, worker: string, id?: string): Promise<WorkRow | undefined> {
  const next = db
    .selectFrom("work")
    .select("id")
    .where("state", "=", "waiting")
    .$if(id !== undefined, (query) => query.where("id", "=", id!))
    .orderBy("share")
    .orderBy("requested_at")
    .orderBy("id")
    .limit(1)
    .$if(engine.bytes === "bytea", (query) => query.forUpdate().skipLocked());
  return db
    .updateTable("work")
    .set({ state: "running", worker, attempts: sql<number>`attempts + 1`, done: 0, total: 0 })
    .where("id", "in", next)
    .where("state", "=", "waiting")
    .returningAll()
    .executeTakeFirst();
}

/** Changes a piece only as long as it is still the one that was begun with. @returns whether it was. */
async function whileMine(
  db: Db,
  { id, worker, attempts }: Claim,
  change: Partial<Omit<WorkRow, "id" | "key">>,
): Promise<boolean> {
  const row = await db
    .updateTable("work")
    .set(change)
    .where("id", "=", id)
    .where("worker", "=", worker)
    .where("attempts", "=", attempts)
    .where("state", "=", "running")
    .returning("id")
    .executeTakeFirst();
  return row !== undefined;
}

/** @returns false if the piece was cancelled, or given to somebody else. */
export const keepProgress = (db: Db, claim: Claim, done: number, total: number): Promise<boolean> =>
  whileMine(db, claim, { done, total });

export const finish = (db: Db, claim: Claim, result: JsonObject): Promise<boolean> =>
  whileMine(db, claim, { state: "finished", worker: null, result: JSON.stringify(result) });

export const failWork = (db: Db, claim: Claim, issue: Issue): Promise<boolean> =>
  whileMine(db, claim, { state: "failed", worker: null, issue: JSON.stringify(issue) });

/** Puts a piece back that was begun with. @param attempts that it shall count as begun. */
export const giveBack = (db: Db, claim: Claim, attempts: number): Promise<boolean> =>
  whileMine(db, claim, { state: "waiting", worker: null, attempts });

export const cancelRow = async (db: Db, id: string): Promise<WorkRow | undefined> => {
  await db
    .updateTable("work")
    .set({ state: "cancelled", worker: null })
    .where("id", "=", id)
    .where("state", "in", ["waiting", "running"])
    .execute();
  return findRow(db, id);
};
