import { contract, type Result } from "#core";
import { attemptLater } from "../../attempt.ts";

/** A small place in the browser for what belongs to the device and to no job: its key, its count of sessions. */
export interface KeptThings {
  get(name: string): Promise<Result<unknown, string>>;
  put(name: string, value: unknown): Promise<Result<unknown, string>>;
}

const DATABASE = "toeline-device";
const TABLE = "kept";

const answerOf = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error("no answer from the browser's store"));
  });

/** Opens the place; nothing is kept where the browser has none. */
export async function openKeptThings(): Promise<Result<KeptThings, string>> {
  return attemptLater(async () => {
    const opening = indexedDB.open(DATABASE, 1);
    opening.onupgradeneeded = () => opening.result.createObjectStore(TABLE);
    const database = await answerOf(opening);
    const table = (mode: IDBTransactionMode) => database.transaction(TABLE, mode).objectStore(TABLE);
    return {
      get: (name) => attemptLater<unknown>(() => answerOf(table("readonly").get(name))),
      put: (name, value) =>
        attemptLater<unknown>(() => {
          contract(value !== undefined, `put: nothing to keep as ${name}`);
          return answerOf(table("readwrite").put(value, name));
        }),
    };
  });
}
