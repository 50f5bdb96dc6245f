import { fail, type Issue, ok, type Result } from "#core";
import { MAX_BLOB_PART_BYTES } from "#store";
import { error } from "../issue.ts";
import type { BlobRef, BlobState } from "../messages.ts";
import type { SyncRun } from "./sync-run.ts";

/**
 * Fetches a file that is whole at the office, from where it was left here. The store checks its hash with the last part.
 *
 * Errors: those of the line and of `putBlobPart`, sync.file-short.
 */
export async function fetchFile(run: SyncRun, file: BlobRef, state: BlobState): Promise<Result<true, Issue>> {
  const { store, client, job } = run;
  const held = await store.blob(file.blob);
  if (!held.ok) return held;
  let offset = held.value?.size === state.size ? held.value.received : 0;
  let waiting = new Uint8Array(0);
  const put = async (bytes: Uint8Array<ArrayBuffer>): Promise<Result<true, Issue>> => {
    const taken = await store.putBlobPart({ hash: file.blob, size: state.size, offset, bytes });
    if (!taken.ok) return taken;
    offset += bytes.length;
    run.onProgress();
    return ok(true);
  };
  const got = await client.readBlob(job, file, offset, async (piece) => {
    waiting = joined(waiting, piece);
    while (waiting.length >= MAX_BLOB_PART_BYTES) {
      const taken = await put(waiting.slice(0, MAX_BLOB_PART_BYTES));
      if (!taken.ok) return taken;
      waiting = waiting.slice(MAX_BLOB_PART_BYTES);
    }
    return ok(true);
  });
  // what came before the line was cut is kept, to go on from there
  if (waiting.length > 0 && offset + waiting.length <= state.size) {
    const taken = await put(waiting);
    if (!taken.ok) return taken;
  }
  if (!got.ok) return got;
  return offset === state.size
    ? ok(true)
    : fail(error("sync.file-short", { blob: file.blob, found: offset }));
}

function joined(a: Uint8Array<ArrayBuffer>, b: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}
