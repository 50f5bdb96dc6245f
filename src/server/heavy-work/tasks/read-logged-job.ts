import { fail, type Issue, type Job, ok, type Result } from "#core";
import { folderFromState } from "#exchange";
import { type FolderReader, type ReadJob, readJobFolder } from "#formats";
import { type Entry, foldJob } from "#records";
import type { Store } from "#store";
import { sentenceOf } from "#text";
import { error } from "../../issue.ts";
import { readLog } from "./read-log.ts";
import type { TaskOrder } from "./task.ts";

/** A job as its log says it is, read like a job folder. */
export interface LoggedJob {
  readonly entries: readonly Entry[];
  readonly folder: FolderReader;
  readonly read: ReadJob;
  readonly job: Job;
  /** what was found while the folder was made from the log */
  readonly findings: readonly Issue[];
}

/** Errors: work.job, where nothing can be worked out; those of the store. */
export async function readLoggedJob(
  store: Store,
  { job: id, entries: count }: TaskOrder,
): Promise<Result<LoggedJob, Issue>> {
  const entries = await readLog(store, id, count);
  if (!entries.ok) return entries;
  const readBlob = async (blob: string) => {
    const bytes = await store.readBlob(blob);
    return bytes.ok ? bytes.value : undefined;
  };
  const { folder, findings } = await folderFromState(foldJob(entries.value), entries.value, readBlob);
  const read = await readJobFolder(folder, () => {});
  const { job } = read;
  if (job !== undefined) return ok({ entries: entries.value, folder, read, job, findings });
  const first = [...findings, ...read.findings].find(({ severity }) => severity === "error");
  return fail(error("work.job", { found: first === undefined ? "" : sentenceOf(first) }));
}
