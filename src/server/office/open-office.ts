import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { fail, type Issue, ok, type Result } from "#core";
import { openPostgresStore, openSqliteStore, type Store } from "#store";
import { openAccess } from "../access/open-access.ts";
import { attempt } from "../attempt.ts";
import { whyUnfinished } from "../backup/target-folder.ts";
import { openWorkQueue, STORE_FILE } from "../heavy-work/open-work-queue.ts";
import { error } from "../issue.ts";
import type { Office } from "../office.ts";
import type { ServerSettings } from "../settings.ts";
import { openOfficeTables } from "../tables/open-office-tables.ts";
import { openGrowth } from "./growth.ts";
import { openIdentity } from "./identity.ts";

/** Something opened that has to be closed again. */
type Closing = () => Promise<unknown>;

/**
 * Opens everything a server stands on: the store, the tables beside it, who the office is, the queue of work. What was opened
 * before a failure is closed again.
 *
 * Errors: server.file, server.era, backup.unfinished, and those of the store.
 */
export async function openOffice(
  settings: ServerSettings,
  clock: () => Date = () => new Date(),
): Promise<Result<Office, Issue>> {
  const opened: Closing[] = [];
  const office = await open(settings, clock, opened);
  if (!office.ok) await closeAll(opened);
  return office;
}

async function open(
  settings: ServerSettings,
  clock: () => Date,
  opened: Closing[],
): Promise<Result<Office, Issue>> {
  const { dataFolder, database } = settings;
  const folder = await attempt(() => mkdir(dataFolder, { recursive: true, mode: 0o700 }));
  if (!folder.ok) return fail(error("server.file", { file: dataFolder, found: folder.error }));
  const unfinished = database === undefined ? whyUnfinished(dataFolder) : undefined;
  if (unfinished !== undefined) return fail(unfinished);
  const store = await (database === undefined
    ? openSqliteStore(join(dataFolder, STORE_FILE))
    : openPostgresStore(database));
  if (!store.ok) return store;
  opened.push(() => store.value.close());
  const tables = await openOfficeTables(settings);
  if (!tables.ok) return tables;
  opened.push(() => tables.value.db.destroy());
  const identity = await openIdentity(settings, tables.value);
  if (!identity.ok) return identity;
  const growth = await openGrowth(database);
  if (!growth.ok) return growth;
  opened.push(growth.value.close);
  const work = await openWorkQueue(settings, tables.value, clock);
  if (!work.ok) return work;
  opened.push(() => work.value.close());
  const { announce, onGrowth } = growth.value;
  const counted = countAppended(store.value);
  return ok({
    settings,
    ...counted,
    tables: tables.value,
    ...identity.value,
    work: work.value,
    access: openAccess(tables.value, settings, clock),
    clock,
    announce,
    onGrowth,
    close: () => closeAll(opened),
  });
}

/** The last opened stands on those before it. */
async function closeAll(opened: Closing[]): Promise<void> {
  for (const close of opened.splice(0).reverse()) await close();
}

/** The same store, and how many entries were added through it. */
function countAppended(store: Store): Pick<Office, "store" | "entriesAppended"> {
  let added = 0;
  return {
    store: {
      ...store,
      append: async (job, entries, receivedAt) => {
        const appended = await store.append(job, entries, receivedAt);
        if (appended.ok) added += appended.value.added;
        return appended;
      },
    },
    entriesAppended: () => added,
  };
}
