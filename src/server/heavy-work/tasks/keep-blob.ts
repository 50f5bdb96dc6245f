import { type Issue, ok, type Result } from "#core";
import { sha256Hex } from "#records";
import { MAX_BLOB_PART_BYTES, type Store } from "#store";

/** Keeps bytes as a blob of the store, part by part. @returns its name. */
export async function keepBlob(store: Store, bytes: Uint8Array<ArrayBuffer>): Promise<Result<string, Issue>> {
  const hash = await sha256Hex(bytes);
  for (let offset = 0; offset < bytes.length; offset += MAX_BLOB_PART_BYTES) {
    const part = bytes.slice(offset, offset + MAX_BLOB_PART_BYTES);
    const put = await store.putBlobPart({ hash, size: bytes.length, offset, bytes: part });
    if (!put.ok) return put;
  }
  return ok(hash);
}
