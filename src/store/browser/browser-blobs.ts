import { Dexie } from "dexie";
import type { Backend } from "../backend.ts";
import type { BrowserDatabase } from "./database.ts";

type BlobCalls = Pick<Backend, "blob" | "blobParts" | "addBlobPart" | "completeBlob" | "dropBlob">;

/** Blobs and their parts in the browser. */
export function browserBlobs(database: BrowserDatabase): BlobCalls {
  const { blobs, blobParts } = database;
  const partsOf = (hash: string) =>
    blobParts.where("[hash+offset]").between([hash, Dexie.minKey], [hash, Dexie.maxKey]);
  return {
    blob: async (hash) => {
      const held = await blobs.get(hash);
      return held && { size: held.size, received: held.received, isComplete: held.isComplete };
    },
    blobParts: (hash, from, to) =>
      partsOf(hash)
        .filter(({ offset, bytes }) => offset < to && offset + bytes.length > from)
        .toArray(),
    addBlobPart: ({ hash, size, offset, bytes }) =>
      database.transaction("rw", blobs, blobParts, async () => {
        const held = (await blobs.get(hash)) ?? { hash, size, received: 0, isComplete: false };
        if (held.received !== offset) return;
        await blobParts.add({ hash, offset, bytes });
        await blobs.put({ ...held, received: offset + bytes.length });
      }),
    completeBlob: async (hash) => {
      await blobs.update(hash, { isComplete: true });
    },
    dropBlob: (hash) =>
      database.transaction("rw", blobs, blobParts, async () => {
        if ((await blobs.get(hash))?.isComplete !== false) return;
        await partsOf(hash).delete();
        await blobs.delete(hash);
      }),
  };
}
