import { Dexie, type DexieOptions, type Table } from "dexie";
import type { EntryRow } from "../backend.ts";
import type { BlobHeld, KeptAside } from "../store.ts";

export interface StoredEntry extends EntryRow {
  readonly job: string;
  readonly arrival: number;
  readonly receivedAt: string;
}

export interface StoredAcknowledgement {
  readonly office: string;
  readonly job: string;
  readonly entry: string;
  readonly at: string;
}

/** State of the tables this version works with. */
export const BROWSER_VERSION = 3;

/** The tables in the browser. A new state of them is a further `version`; one that was released is never changed. */
export class BrowserDatabase extends Dexie {
  declare readonly entries: Table<StoredEntry, string>;
  declare readonly acknowledgements: Table<StoredAcknowledgement, [string, string]>;
  declare readonly pulled: Table<
    { readonly job: string; readonly office: string; readonly place: number },
    [string, string]
  >;
  declare readonly keptAside: Table<KeptAside & { readonly job: string }, [string, string]>;
  declare readonly blobs: Table<BlobHeld & { readonly hash: string }, string>;
  declare readonly blobParts: Table<
    { readonly hash: string; readonly offset: number; readonly bytes: Uint8Array },
    [string, number]
  >;

  /** @param options place of the database, for tests that bring their own. */
  constructor(name: string, options: Pick<DexieOptions, "indexedDB" | "IDBKeyRange"> = {}) {
    // strict: a commit is told only when it is on the disk, not when the browser has handed it on
    super(name, { ...options, chromeTransactionDurability: "strict" });
    this.version(1).stores({
      entries: "id, &[job+arrival], [job+device+sequence+id]",
      acknowledgements: "[office+entry], [office+job]",
      keptAside: "[job+key]",
    });
    this.version(2).stores({ blobs: "hash", blobParts: "[hash+offset]" });
    this.version(BROWSER_VERSION).stores({ pulled: "[job+office]" });
  }
}
