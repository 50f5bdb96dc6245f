import type { MessagePort } from "node:worker_threads";
import { parentPort } from "node:worker_threads";
import { contract, type Issue, type Result } from "#core";
import type { JsonObject } from "#records";
import { openPostgresStore, openSqliteStore, type Store } from "#store";
import { taskOf } from "./tasks/registry.ts";
import type { TaskOrder } from "./tasks/task.ts";

/** Where a thread finds the records: it opens them itself, so that reading a large job holds up no request. */
export type RecordsPlace = { readonly sqliteFile: string } | { readonly database: string };

export interface ThreadOrder {
  readonly place: RecordsPlace;
  readonly task: string;
  readonly order: TaskOrder;
  readonly input: JsonObject;
  /** takes `[done, total]` */
  readonly progress: MessagePort;
}

const opened = new Map<string, Promise<Result<Store, Issue>>>();

/** What a thread does with each order. Runs in the thread; the pool calls it by its name. */
export async function runInThread(thread: ThreadOrder): Promise<Result<JsonObject, Issue>> {
  const { place, order, input, progress } = thread;
  const task = taskOf(thread.task);
  contract(parentPort !== null, "runInThread: not in a thread");
  contract(task !== undefined, `runInThread: there is no task ${thread.task}`);
  const store = await storeAt(place);
  if (!store.ok) return store;
  const outcome = await task.run(order, input, {
    store: store.value,
    onProgress: (done, total) => progress.postMessage([done, total]),
  });
  progress.close();
  return outcome;
}

/** Opened once for the life of a thread. */
async function storeAt(place: RecordsPlace): Promise<Result<Store, Issue>> {
  const key = JSON.stringify(place);
  const before = opened.get(key);
  if (before !== undefined) return before;
  const opening =
    "sqliteFile" in place ? openSqliteStore(place.sqliteFile) : openPostgresStore(place.database);
  opened.set(key, opening);
  const store = await opening;
  // the next order tries again
  if (!store.ok) opened.delete(key);
  return store;
}
