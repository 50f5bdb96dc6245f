import type { Kysely } from "kysely";
import type { Backend } from "../backend.ts";
import type { Tables } from "./tables.ts";

type BlobCalls = Pick<Backend, "blob" | "blobParts" | "addBlobPart" | "completeBlob" | "dropBlob">;

/** Blobs and their parts in an SQL database. */
export function sqlBlobs(db: Kysely<Tables>): BlobCalls {
  return {
    blob: async (hash) => {
      const row = await db.selectFrom("blobs").selectAll().where("hash", "=", hash).executeTakeFirst();
      return row && { size: row.size, received: row.received, isComplete: row.complete === 1 };
    },
    blobParts: async (hash, from, to) => {
      const rows = await db
        .selectFrom("blob_parts")
        .select(["start", "bytes"])
        .where("hash", "=", hash)
        .where("start", "<", to)
        .where(({ eb, fn }) => eb(eb("start", "+", fn<number>("length", ["bytes"])), ">", from))
        .orderBy("start")
        .execute();
      return rows.map(({ start, bytes }) => ({ offset: start, bytes }));
    },
    addBlobPart: ({ hash, size, offset, bytes }) =>
      db.transaction().execute(async (transaction) => {
        // begins with a write, which locks the blob until the transaction ends
        const { received } = await transaction
          .insertInto("blobs")
          .values({ hash, size, received: 0, complete: 0 })
          .onConflict((conflict) =>
            conflict.column("hash").doUpdateSet(({ ref }) => ({ size: ref("blobs.size") })),
          )
          .returning("received")
          .executeTakeFirstOrThrow();
        if (received !== offset) return;
        await transaction
          .insertInto("blob_parts")
          .values({ hash, start: offset, bytes: Buffer.from(bytes) })
          .execute();
        await transaction
          .updateTable("blobs")
          .set({ received: offset + bytes.length })
          .where("hash", "=", hash)
          .execute();
      }),
    completeBlob: async (hash) => {
      await db.updateTable("blobs").set({ complete: 1 }).where("hash", "=", hash).execute();
    },
    dropBlob: async (hash) => {
      await db.deleteFrom("blobs").where("hash", "=", hash).where("complete", "=", 0).execute();
    },
  };
}
