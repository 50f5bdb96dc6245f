import { randomUUID } from "node:crypto";
import { setTimeout as wait } from "node:timers/promises";
import { type Issue, ok, type Result } from "#core";
import { attemptDatabase } from "#store";
import type { OpenOfficeTables } from "../tables/open-office-tables.ts";
import { queueCalls } from "./queue-calls.ts";
import { type Running, runClaimed } from "./run-claimed.ts";
import { takeRequest } from "./take-request.ts";
import type { WorkQueue } from "./work-queue.ts";
import { claim, giveBack, workOf } from "./work-rows.ts";
import type { WorkThreads } from "./work-threads.ts";

/** After a failure of the database it is tried again so often, milliseconds. */
const TRY_AGAIN_MS = 1000;
/** How long work that runs may go on when the server stops, milliseconds. */
export const CLOSING_MS = 3000;

export interface QueueParts {
  readonly tables: OpenOfficeTables;
  readonly threads: WorkThreads;
  /** pieces at once; 0: none are done here */
  readonly workers: number;
  readonly clock: () => Date;
}

/**
 * Heavy work of one server that has its tables to itself. What waits or ran when the program ended stands in the table, and is
 * taken up when the queue is opened again.
 */
export async function openLocalQueue(parts: QueueParts): Promise<Result<WorkQueue, Issue>> {
  const { tables, threads, workers, clock } = parts;
  const { db, engine } = tables;
  const worker = randomUUID();
  const running = new Set<Running>();
  const given = await attemptDatabase(() =>
    // nobody else works here: whoever had begun with these is gone
    db.updateTable("work").set({ state: "waiting", worker: null }).where("state", "=", "running").execute(),
  );
  if (!given.ok) return given;
  let isClosing = false;
  let claiming = 0;
  const pump = async (): Promise<void> => {
    if (isClosing || running.size + claiming >= workers) return;
    claiming++;
    const row = await attemptDatabase(() => claim(db, engine, worker));
    claiming--;
    if (!row.ok) {
      setTimeout(pump, TRY_AGAIN_MS).unref();
      return;
    }
    if (row.value === undefined) return;
    const one = runClaimed(db, threads, row.value, worker);
    running.add(one);
    void one.ended.then(async (how) => {
      if (how === "lost") await attemptDatabase(() => giveBack(db, one.claim, one.claim.attempts));
      running.delete(one);
      await pump();
    });
    await pump();
  };
  void pump();
  return ok({
    ...queueCalls(tables),
    request: async (request) => {
      const row = await takeRequest(tables, request, clock().toISOString(), async () => {});
      if (!row.ok) return row;
      void pump();
      return ok(workOf(row.value));
    },
    close: async () => {
      isClosing = true;
      await endRunning(tables, running);
      await threads.close();
    },
  });
}

/** Waits for what runs, and gives back what is not done in time: it is as if nobody had begun with it. */
export async function endRunning({ db }: OpenOfficeTables, running: ReadonlySet<Running>): Promise<void> {
  const all = [...running];
  await Promise.race([
    Promise.all(all.map(({ ended }) => ended)),
    wait(CLOSING_MS, undefined, { ref: false }),
  ]);
  for (const one of [...running]) {
    one.abort();
    await attemptDatabase(() => giveBack(db, one.claim, one.claim.attempts - 1));
  }
}
