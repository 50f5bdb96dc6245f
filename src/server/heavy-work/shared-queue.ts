import { randomUUID } from "node:crypto";
import { EventEmitter } from "node:events";
import { Logger, type Runner, run, runMigrations, type WorkerEvents } from "graphile-worker";
import type { Kysely } from "kysely";
import { type Issue, ok, type Result } from "#core";
import { attemptDatabase } from "#store";
import type { OfficeTables } from "../tables/office-tables.ts";
import { endRunning, type QueueParts } from "./local-queue.ts";
import { queueCalls } from "./queue-calls.ts";
import { type Running, runClaimed } from "./run-claimed.ts";
import { takeRequest } from "./take-request.ts";
import { addTicket, TICKET } from "./tickets.ts";
import type { WorkQueue } from "./work-queue.ts";
import { claim, giveBack, workOf } from "./work-rows.ts";
import { BEAT_MS, beat, signOff, takeOver } from "./worker-life.ts";

/** A ticket that was not announced is found after so long, milliseconds. */
const POLL_MS = 2000;

const silent = new Logger(() => () => {});

/**
 * Heavy work of several servers on one database. Each piece is a row; a ticket in the queue of graphile-worker wakes whoever has
 * a thread free. Every process says each second that it is there; the work of one that falls silent is taken over by the others.
 *
 * @param address of the PostgreSQL database with the tables.
 */
export async function openSharedQueue(parts: QueueParts, address: string): Promise<Result<WorkQueue, Issue>> {
  const { tables, threads, workers, clock } = parts;
  const { db } = tables;
  const worker = randomUUID();
  const running = new Set<Running>();
  const holders = new Set<string>();
  const migrated = await attemptDatabase(() => runMigrations({ connectionString: address, logger: silent }));
  if (!migrated.ok) return migrated;
  const ticketed = await attemptDatabase(() => addMissingTickets(db));
  if (!ticketed.ok) return ticketed;
  const runner = await attemptDatabase(async () =>
    workers === 0 ? undefined : startRunner(parts, address, { worker, running, holders }),
  );
  if (!runner.ok) return runner;
  const live = async () => {
    if (workers > 0) await beat(db, worker, [...holders]);
    await takeOver(db);
  };
  // a beat that fails is followed by the next one
  const beats = setInterval(() => void attemptDatabase(live), BEAT_MS);
  return ok({
    ...queueCalls(tables),
    request: async (request) => {
      const row = await takeRequest(tables, request, clock().toISOString(), addTicket);
      return row.ok ? ok(workOf(row.value)) : row;
    },
    close: async () => {
      clearInterval(beats);
      const stopping = attemptDatabase(async () => runner.value?.stop());
      await endRunning(tables, running);
      await stopping;
      await attemptDatabase(() => addMissingTickets(db));
      await signOff(db, worker);
      await threads.close();
    },
  });
}

/** Rows that wait may have no ticket: after a restore, a move, or because somebody gave them back. */
async function addMissingTickets(db: Kysely<OfficeTables>): Promise<void> {
  const rows = await db.selectFrom("work").select(["id", "share"]).where("state", "=", "waiting").execute();
  for (const row of rows) await addTicket(db, row);
}

interface Hands {
  readonly worker: string;
  readonly running: Set<Running>;
  readonly holders: Set<string>;
}

async function startRunner(
  { tables, threads, workers }: QueueParts,
  address: string,
  { worker, running, holders }: Hands,
): Promise<Runner> {
  const { db, engine } = tables;
  const events: WorkerEvents = new EventEmitter();
  events.on("pool:create", ({ workerPool }) => holders.add(workerPool.id));
  // before the first ticket is taken, so that nobody takes this process for dead
  await beat(db, worker, []);
  const lookAfter = async (payload: unknown): Promise<void> => {
    const { id } = payload as { id: string };
    const row = await claim(db, engine, worker, id);
    if (row === undefined) return;
    const one = runClaimed(db, threads, row, worker);
    running.add(one);
    const how = await one.ended;
    if (how === "lost" && (await giveBack(db, one.claim, one.claim.attempts))) await addTicket(db, row);
    running.delete(one);
  };
  const runner = await run({
    connectionString: address,
    concurrency: workers,
    maxPoolSize: workers + 2,
    noHandleSignals: true,
    pollInterval: POLL_MS,
    logger: silent,
    events,
    taskList: { [TICKET]: lookAfter },
  });
  await beat(db, worker, [...holders]);
  return runner;
}
