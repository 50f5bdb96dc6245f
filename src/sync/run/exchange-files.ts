import { type Issue, ok, type Result } from "#core";
import { type BlobRef, type BlobState, MAX_ASKED_BLOBS } from "../messages.ts";
import type { BlobCatalogue } from "./blob-catalogue.ts";
import { fetchFile } from "./fetch-file.ts";
import { sendFile } from "./send-file.ts";
import type { SyncRun } from "./sync-run.ts";

/** So many files travel at the same time: more would only share the same line. */
const AT_ONCE = 2;

export interface FileSettings {
  readonly send: boolean;
  readonly fetch: boolean;
  /** asked between two files: readings that were just taken go first */
  readonly isHeldUp: () => boolean;
  readonly catalogue: BlobCatalogue;
  /** files known to be whole where they are to go; nothing has to be asked about them again in this life of the office */
  readonly settled: Set<string>;
}

type Task = () => Promise<Result<true, Issue>>;

/** Sends and fetches the files that entries name. One that cannot be sent or fetched is told and does not hold up the others. */
export async function exchangeFiles(run: SyncRun, settings: FileSettings): Promise<Result<true, Issue>> {
  const files = await settings.catalogue.files();
  if (!files.ok) return files;
  const open = files.value.filter(({ blob }) => !settings.settled.has(blob));
  for (let from = 0; from < open.length; from += MAX_ASKED_BLOBS) {
    if (settings.isHeldUp()) return ok(true);
    const done = await exchangeSome(run, settings, open.slice(from, from + MAX_ASKED_BLOBS));
    if (!done.ok) return done;
  }
  return ok(true);
}

async function exchangeSome(
  run: SyncRun,
  settings: FileSettings,
  files: readonly BlobRef[],
): Promise<Result<true, Issue>> {
  const here: BlobRef[] = [];
  const missing: BlobRef[] = [];
  for (const file of files) {
    const held = await run.store.blob(file.blob);
    if (!held.ok) return held;
    if (held.value?.isComplete) here.push(file);
    else missing.push(file);
  }
  const asked = [...(settings.send ? here : []), ...(settings.fetch ? missing : [])];
  if (asked.length === 0) return ok(true);
  const states = await run.client.blobStates(run.job, asked);
  if (!states.ok) return states;
  const isHere = new Set(here);
  const tasks = asked.flatMap((file, i) => taskFor(run, settings, file, states.value[i], isHere.has(file)));
  return atOnce(tasks, settings.isHeldUp);
}

function taskFor(
  run: SyncRun,
  { settled }: FileSettings,
  file: BlobRef,
  state: BlobState | null | undefined,
  isHere: boolean,
): readonly Task[] {
  // the entry that names it has to be there first
  if (state === null || state === undefined) return [];
  if (isHere && state.isComplete) settled.add(file.blob);
  if (isHere === state.isComplete) return [];
  return [
    async () => {
      const done = await (isHere ? sendFile : fetchFile)(run, file, state);
      if (done.ok) {
        settled.add(file.blob);
        run.counts[isHere ? "filesSent" : "filesFetched"]++;
        run.onProgress();
        return done;
      }
      if (!isOfTheFile(done.error.code)) return done;
      run.findings.push({ ...done.error, severity: "warning" });
      return ok(true);
    },
  ];
}

/** Whether the fault is with this file, so that the next one may well pass. */
const isOfTheFile = (code: string): boolean =>
  /^(?:sync\.file-|store\.blob-|sync\.refused$|sync\.no-such-job$)/.test(code);

async function atOnce(tasks: readonly Task[], isHeldUp: () => boolean): Promise<Result<true, Issue>> {
  const waiting = [...tasks];
  let failed: Result<true, Issue> = ok(true);
  const work = async () => {
    for (let task = waiting.shift(); task !== undefined && failed.ok; task = waiting.shift()) {
      if (isHeldUp()) return;
      const done = await task();
      if (!done.ok) failed = done;
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  return failed;
}
