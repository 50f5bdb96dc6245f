import { type Issue, ok, type Result } from "#core";
import { MAX_BLOB_PART_BYTES } from "./blob-part.ts";
import type { Store } from "./store.ts";

/** Keeps files beside the log, each in parts as the store takes them. Those that are there already change nothing. */
export async function keepBlobs(
  store: Store,
  blobs: ReadonlyMap<string, Uint8Array<ArrayBuffer>>,
): Promise<Result<true, Issue>> {
  for (const [hash, bytes] of blobs) {
    const held = await store.blob(hash);
    if (!held.ok) return held;
    if (held.value?.isComplete) continue;
    for (let offset = 0; offset === 0 || offset < bytes.length; offset += MAX_BLOB_PART_BYTES) {
      const part = bytes.slice(offset, offset + MAX_BLOB_PART_BYTES);
      const put = await store.putBlobPart({ hash, size: bytes.length, offset, bytes: part });
      if (!put.ok) return put;
    }
  }
  return ok(true);
}
