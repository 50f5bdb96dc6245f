import { fail, type Issue, ok, type Result } from "#core";
import { isHex32 } from "#records";
import { error } from "./issue.ts";
import type { BlobHeld, BlobPart } from "./store.ts";

/** A part of a blob may not be larger. Bytes. */
export const MAX_BLOB_PART_BYTES = 256 * 1024;

/**
 * Checks a part by itself.
 *
 * Errors: store.blob-name, store.blob-size, store.blob-part.
 */
export function checkBlobPart({ hash, size, offset, bytes }: BlobPart): Result<true, Issue> {
  if (!isHex32(hash)) return fail(error("store.blob-name", { found: String(hash).slice(0, 100) }));
  if (!Number.isSafeInteger(size) || size < 1)
    return fail(error("store.blob-size", { hash, found: String(size) }));
  const isInside = Number.isSafeInteger(offset) && offset >= 0 && offset + bytes.length <= size;
  if (!isInside || bytes.length === 0 || bytes.length > MAX_BLOB_PART_BYTES)
    return fail(
      error("store.blob-part", {
        from: String(offset),
        found: bytes.length,
        expected: MAX_BLOB_PART_BYTES,
        size,
      }),
    );
  return ok(true);
}

/**
 * Whether a part is the next one, lies within what is held already, or begins the blob anew with another size.
 *
 * Errors: store.blob-size-changed, store.blob-offset.
 */
export function placeOfPart(
  held: BlobHeld | undefined,
  { hash, size, offset, bytes }: BlobPart,
): Result<"next" | "repeat" | "anew", Issue> {
  if (held !== undefined && held.size !== size) {
    // whoever sent the first part may have been wrong about the size: the hash will tell
    if (offset === 0 && !held.isComplete) return ok("anew");
    return fail(error("store.blob-size-changed", { hash, found: size, expected: held.size }));
  }
  const received = held?.received ?? 0;
  if (offset === received) return ok("next");
  if (offset + bytes.length <= received) return ok("repeat");
  return fail(error("store.blob-offset", { hash, found: offset, expected: received }));
}
