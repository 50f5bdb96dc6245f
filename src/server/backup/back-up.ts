import { fail, type Issue, ok, type Result } from "#core";
import { openBackUpFile, writeBackUpFile } from "./backup-file.ts";
import type { Head, Tally } from "./part.ts";
import type { OfficePlace } from "./place.ts";
import { withSnapshot } from "./snapshot.ts";
import { type Copy, type CopyProgress, copyIntoDatabase, whyTooNew } from "./target.ts";
import { copyIntoFolder } from "./target-folder.ts";

/**
 * Writes all of an office into one file, as it is at one moment, while others go on working.
 *
 * Errors: backup.source, backup.file, and those of every call of a store.
 */
export const backUp = (
  place: OfficePlace,
  file: string,
  now: Date,
  onRows: (rows: number) => void,
): Promise<Result<Tally, Issue>> =>
  withSnapshot(place, now.toISOString(), (snapshot) => writeBackUpFile(file, snapshot, onRows));

export interface Restored {
  readonly head: Head;
  readonly tally: Tally;
}

/**
 * Brings an office back from a file into an empty place. Every hash is checked before anything is written, every entry after it;
 * the office begins a new life, in which devices find out anew what it holds.
 *
 * Errors: backup.not-one, backup.damaged, backup.cut, backup.newer, backup.not-empty, backup.row, backup.entry, backup.set,
 *   backup.blob, backup.file, and those of every call of a store.
 */
export async function restore(
  file: string,
  place: OfficePlace,
  now: Date,
  progress: CopyProgress,
): Promise<Result<Restored, Issue>> {
  const opened = await openBackUpFile(file);
  if (!opened.ok) return opened;
  const { head, tally, parts } = opened.value;
  const copied = await copyTo(place, { head, parts, tally: async () => tally }, now, progress);
  return copied.ok ? ok({ head, tally: copied.value }) : copied;
}

/**
 * Copies an office from one place to an empty other one, as `restore` does, without a file between. The first place stays as it is.
 *
 * Errors: backup.source, and those of `restore`.
 */
export const move = (
  from: OfficePlace,
  to: OfficePlace,
  now: Date,
  progress: CopyProgress,
): Promise<Result<Restored, Issue>> =>
  withSnapshot(from, now.toISOString(), async (snapshot) => {
    const copied = await copyTo(to, snapshot, now, progress);
    return copied.ok ? ok({ head: snapshot.head, tally: copied.value }) : copied;
  });

async function copyTo(
  place: OfficePlace,
  copy: Copy,
  now: Date,
  progress: CopyProgress,
): Promise<Result<Tally, Issue>> {
  const tooNew = whyTooNew(copy.head);
  if (tooNew !== undefined) return fail(tooNew);
  return "database" in place
    ? copyIntoDatabase(place.database, copy, now, progress)
    : copyIntoFolder(place.dataFolder, copy, now, progress);
}
