import type { Kysely } from "kysely";
import type { Result } from "#core";
import type { JsonObject } from "#records";
import { attemptDatabase } from "#store";
import type { error } from "../issue.ts";
import type { OfficeTables } from "../tables/office-tables.ts";
import type { TaskOrder } from "./tasks/task.ts";
import { type Claim, failWork, finish, keepProgress, type WorkRow } from "./work-rows.ts";
import type { WorkThreads } from "./work-threads.ts";

/** How often the table is told of progress, and asked whether the work is still wanted, milliseconds. */
const TICK_MS = 400;

/** A piece that takes its worker with it so often is not begun again. */
export const MAX_ATTEMPTS = 3;

export interface Running {
  readonly claim: Claim;
  /** ends the thread; the outcome does not count any more */
  readonly abort: () => void;
  /** how it ended: kept in the table, ended from outside, or the thread was lost */
  readonly ended: Promise<"kept" | "aborted" | "lost">;
}

/** Does a piece of work that was taken, in a thread, and keeps how it ended. */
export function runClaimed(
  db: Kysely<OfficeTables>,
  threads: WorkThreads,
  row: WorkRow,
  worker: string,
): Running {
  const claim: Claim = { id: row.id, worker, attempts: row.attempts };
  const ending = new AbortController();
  const ended = async () => {
    const outcome = await inThread(db, threads, row, claim, ending);
    if (ending.signal.aborted) return "aborted";
    const isLost = !outcome.ok && outcome.error.code === "work.crashed";
    if (isLost && row.attempts < MAX_ATTEMPTS) return "lost";
    const kept = await attemptDatabase(() =>
      outcome.ok ? finish(db, claim, outcome.value) : failWork(db, claim, outcome.error),
    );
    // the database is away: whoever finds the piece running without a worker begins it again
    return kept.ok ? "kept" : "lost";
  };
  return { claim, abort: () => ending.abort(), ended: ended() };
}

async function inThread(
  db: Kysely<OfficeTables>,
  threads: WorkThreads,
  row: WorkRow,
  claim: Claim,
  ending: AbortController,
): Promise<Result<JsonObject, ReturnType<typeof error>>> {
  const { input, ...log } = JSON.parse(row.input) as Omit<TaskOrder, "job"> & { readonly input: JsonObject };
  const order: TaskOrder = { job: row.job, ...log };
  let progress: readonly [number, number] = [0, 0];
  const tick = setInterval(async () => {
    const isWanted = await attemptDatabase(() => keepProgress(db, claim, ...progress));
    if (isWanted.ok && !isWanted.value) ending.abort();
  }, TICK_MS);
  const outcome = await threads.run({
    task: row.task,
    order,
    input,
    signal: ending.signal,
    onProgress: (done, total) => {
      progress = [done, total];
    },
  });
  clearInterval(tick);
  return outcome;
}
