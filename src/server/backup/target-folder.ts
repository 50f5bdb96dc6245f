import { existsSync } from "node:fs";
import { mkdir, open, readdir, rename, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { fail, type Issue, ok, type Result } from "#core";
import { attemptDatabase } from "#store";
import { attempt } from "../attempt.ts";
import { error } from "../issue.ts";
import { eraAfter, readEra, writeEra } from "./era.ts";
import type { Tally } from "./part.ts";
import { filesIn } from "./place.ts";
import { connectPlace } from "./place-tables.ts";
import {
  allOrNothing,
  type Copy,
  type CopyProgress,
  copyInto,
  finishTables,
  makeTables,
  writeFacts,
} from "./target.ts";

/** Stands in a data folder as long as a restore into it is not finished. */
const UNFINISHED_FILE = "restore-unfinished";
/** What the databases are called until then. */
const BEGUN = "restoring-";

/**
 * Whether a restore into a data folder was begun and not finished: nobody may work with what stands there.
 *
 * Errors: backup.unfinished.
 */
export const whyUnfinished = (dataFolder: string): Issue | undefined =>
  existsSync(join(dataFolder, UNFINISHED_FILE)) ? error("backup.unfinished") : undefined;

/**
 * Writes a copy into a folder that holds no records. The databases get their names only when everything in them was read back and
 * found right; until then a mark says that the folder is not finished, and the next try begins from an empty one.
 */
export async function copyIntoFolder(
  dataFolder: string,
  copy: Copy,
  now: Date,
  progress: CopyProgress,
): Promise<Result<Tally, Issue>> {
  const begun = await begin(dataFolder);
  if (!begun.ok) return begun;
  const files = { store: join(dataFolder, `${BEGUN}store`), office: join(dataFolder, `${BEGUN}office`) };
  const filled = await fill(dataFolder, files, copy, now, progress);
  // what was begun stays marked as such; the folder itself is as good as empty
  if (!filled.ok) {
    await attempt(() => clear(dataFolder));
    await attempt(() => rm(join(dataFolder, UNFINISHED_FILE), { force: true }));
    return filled;
  }
  const named = await attempt(() => giveNames(dataFolder, files, copy, now));
  return named.ok ? filled : fail(error("backup.file", { found: named.error }));
}

async function begin(dataFolder: string): Promise<Result<true, Issue>> {
  const isAgain = whyUnfinished(dataFolder) !== undefined;
  const { store, office, key } = filesIn(dataFolder);
  const there = isAgain ? [] : [store, office, key].filter((file) => existsSync(file));
  if (there.length > 0) return fail(error("backup.not-empty", { found: there.join(", ") }));
  const begun = await attempt(async () => {
    await mkdir(dataFolder, { recursive: true, mode: 0o700 });
    await writeFile(join(dataFolder, UNFINISHED_FILE), "", { flush: true });
    await clear(dataFolder);
    await syncFolder(dataFolder);
  });
  return begun.ok ? ok(true) : fail(error("backup.file", { found: begun.error }));
}

/** Removes what an earlier try has left: there was nothing else when it began. The era stays, whatever it has come to. */
async function clear(dataFolder: string): Promise<void> {
  const { store, office, key } = filesIn(dataFolder);
  const ours = [store, `${store}-wal`, `${store}-shm`, office, `${office}-wal`, `${office}-shm`, key];
  for (const file of ours) await rm(file, { force: true });
  for (const name of await readdir(dataFolder))
    if (name.startsWith(BEGUN)) await rm(join(dataFolder, name), { force: true });
}

async function fill(
  dataFolder: string,
  files: { readonly store: string; readonly office: string },
  copy: Copy,
  now: Date,
  progress: CopyProgress,
): Promise<Result<Tally, Issue>> {
  const connected = await attemptDatabase(async () => connectPlace({ dataFolder }, files));
  if (!connected.ok) return connected;
  const place = connected.value;
  const made = await makeTables(place, copy.head);
  const done = made.ok
    ? await allOrNothing(place.office.db, (office) =>
        allOrNothing(place.store.db, (store) =>
          copyInto({ store, office }, copy, progress, () => writeFacts(office, copy.head, now, false)),
        ),
      )
    : made;
  const finished = done.ok ? await finishTables(place) : done;
  await place.close();
  return finished.ok ? done : finished;
}

async function giveNames(
  dataFolder: string,
  begun: { readonly store: string; readonly office: string },
  { head }: Copy,
  now: Date,
): Promise<void> {
  const { store, office, key } = filesIn(dataFolder);
  writeEra(dataFolder, eraAfter([head.era, readEra(dataFolder)], now));
  if (head.office !== null) await writeFile(key, `${head.office.seed}\n`, { mode: 0o600, flush: true });
  await rename(begun.office, office);
  await rename(begun.store, store);
  await syncFolder(dataFolder);
  await rm(join(dataFolder, UNFINISHED_FILE));
  await syncFolder(dataFolder);
}

/** What was renamed or removed is on the disk; some systems cannot open a folder, and need no such call. */
async function syncFolder(folder: string): Promise<void> {
  await attempt(async () => {
    const handle = await open(folder, "r");
    await handle.sync();
    await handle.close();
  });
}
