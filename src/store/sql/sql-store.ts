import type { Kysely } from "kysely";
import type { Issue, Result } from "#core";
import { ok } from "#core";
import { createStore } from "../create-store.ts";
import type { Store } from "../store.ts";
import type { Engine } from "./engine.ts";
import { migrate } from "./migrate.ts";
import { sqlBlobs } from "./sql-blobs.ts";
import { sqlLog } from "./sql-log.ts";
import type { Tables } from "./tables.ts";

/** A store over an open SQL database, whose tables are brought up to date first. On a failure the database is closed again. */
export async function openSqlStore(db: Kysely<Tables>, engine: Engine): Promise<Result<Store, Issue>> {
  const migrated = await migrate(db, engine);
  if (!migrated.ok) {
    await db.destroy();
    return migrated;
  }
  return ok(createStore({ ...sqlLog(db, engine), ...sqlBlobs(db), close: () => db.destroy() }));
}
