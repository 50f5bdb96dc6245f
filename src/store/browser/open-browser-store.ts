import type { DexieOptions } from "dexie";
import { fail, type Issue, ok, type Result } from "#core";
import { attempt } from "../attempt.ts";
import { createStore } from "../create-store.ts";
import { error } from "../issue.ts";
import type { Store } from "../store.ts";
import { browserBlobs } from "./browser-blobs.ts";
import { browserLog } from "./browser-log.ts";
import { BROWSER_VERSION, BrowserDatabase } from "./database.ts";

/** Dexie counts in tenths of what the browser counts. */
const VERSION_FACTOR = 10;

/**
 * Opens the store of this browser. What an append has answered is on the disk, as far as the browser can say so.
 *
 * @param name of the database.
 * @param options place of the database, for tests that bring their own.
 *
 * Errors: store.newer, store.full, store.failed.
 */
export async function openBrowserStore(
  name: string,
  options: Pick<DexieOptions, "indexedDB" | "IDBKeyRange"> = {},
): Promise<Result<Store, Issue>> {
  const database = new BrowserDatabase(name, options);
  const opened = await attempt(async () => {
    await database.open();
    return database.backendDB().version / VERSION_FACTOR;
  });
  if (!opened.ok) return opened;
  if (opened.value > BROWSER_VERSION) {
    database.close();
    return fail(error("store.newer", { found: opened.value, expected: BROWSER_VERSION }));
  }
  return ok(
    createStore({
      ...browserLog(database),
      ...browserBlobs(database),
      close: async () => database.close(),
    }),
  );
}
