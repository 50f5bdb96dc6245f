import { fail, type Issue, ok, type Result } from "#core";
import { MAX_BLOB_PART_BYTES } from "#store";
import { error } from "../issue.ts";
import type { BlobRef, BlobState } from "../messages.ts";
import type { SyncRun } from "./sync-run.ts";

/** Sending goes on from the place that the office names. If it names the same one over and over, something is wrong. */
const MAX_STANDSTILLS = 2;

/**
 * Sends a file that is whole here, in parts, from where the office stands.
 *
 * @param state how far it has come there.
 *
 * Errors: those of the line, sync.file-stuck.
 */
export async function sendFile(run: SyncRun, file: BlobRef, state: BlobState): Promise<Result<true, Issue>> {
  const { store, client, job } = run;
  const read = await store.readBlob(file.blob);
  if (!read.ok) return read;
  const bytes = read.value;
  if (bytes === undefined) return ok(true);
  let at = state.size === bytes.length ? state.received : 0;
  for (let standstills = 0; ; ) {
    const part = bytes.slice(at, at + MAX_BLOB_PART_BYTES);
    const put = await client.putBlobPart(job, file, { size: bytes.length, offset: at, bytes: part });
    if (!put.ok && put.error.code !== "sync.refused") return put;
    const now = put.ok ? put : await stateOf(run, file);
    if (!now.ok) return now;
    run.onProgress();
    const { received, isComplete } = now.value;
    if (isComplete) return ok(true);
    // another sender may have been faster, and a damaged file is begun anew
    standstills = received > at ? 0 : standstills + 1;
    if (standstills > MAX_STANDSTILLS) return fail(error("sync.file-stuck", { blob: file.blob }));
    at = Math.min(received, bytes.length - 1);
  }
}

async function stateOf(run: SyncRun, file: BlobRef): Promise<Result<BlobState, Issue>> {
  const states = await run.client.blobStates(run.job, [file]);
  return states.ok ? ok(states.value[0] ?? { size: 0, received: 0, isComplete: false }) : states;
}
