import type { BlobHeld, BlobPart, ChainHeld, KeptAside } from "./store.ts";

/** An entry as it is written into a database: what it is found by, and its text. */
export interface EntryRow {
  readonly id: string;
  readonly device: string;
  readonly sequence: number;
  /** canonical form of the whole entry, id and signature among it */
  readonly text: string;
}

/** An entry's text and its place in the order of arrival. */
export interface ArrivedText {
  readonly arrival: number;
  readonly text: string;
}

export interface Inserted {
  /** ids that are held by the log with another text */
  readonly taken: readonly string[];
  readonly added: number;
  readonly size: number;
}

/** What is held of a blob's parts. */
export interface StoredPart {
  readonly offset: number;
  readonly bytes: Uint8Array;
}

/**
 * What a database has to do for the store: rows and texts only. It may throw; `createStore` makes findings of that, checks what
 * comes in, and reads what goes out, once for all databases.
 */
export interface Backend {
  /** In one transaction: rows with a new id get the next places of arrival; held ones with the same text change nothing. */
  insertEntries(job: string, rows: readonly EntryRow[], receivedAt: string): Promise<Inserted>;
  jobs(): Promise<readonly string[]>;
  /** how many entries the job has */
  size(job: string): Promise<number>;
  ids(job: string): Promise<readonly string[]>;
  /** at most `count`, in the order of arrival, after a place */
  entriesAfter(job: string, arrival: number, count: number): Promise<readonly ArrivedText[]>;
  /** in the order of sequence and id */
  chainTexts(job: string, device: string, from: number, to: number): Promise<readonly string[]>;
  chains(job: string): Promise<readonly ChainHeld[]>;
  /** ids that the job does not hold are left out; gives the number of new ones */
  acknowledge(job: string, office: string, ids: readonly string[], at: string): Promise<number>;
  acknowledged(job: string, office: string): Promise<readonly string[]>;
  notSentTexts(job: string, office: string): Promise<readonly string[]>;
  notSentCount(job: string, office: string): Promise<number>;
  /** keeps the higher of the place given and the one held */
  keepPulled(job: string, office: string, place: number): Promise<void>;
  pulled(job: string, office: string): Promise<number>;
  /** names of the offices for which a place is kept */
  offices(job: string): Promise<readonly string[]>;
  /** in one transaction: takes away what is kept about an office, never anything of the log */
  forgetOffice(job: string, office: string): Promise<void>;
  /** rows with a key that is held change nothing; gives the number of new ones */
  keepAside(job: string, rows: readonly KeptAside[]): Promise<number>;
  keptAside(job: string): Promise<readonly KeptAside[]>;
  blob(hash: string): Promise<BlobHeld | undefined>;
  /** bytes held from `from` to `to`, as parts, in their order */
  blobParts(hash: string, from: number, to: number): Promise<readonly StoredPart[]>;
  /** In one transaction, and only if `received` is still the part's offset; otherwise it changes nothing. */
  addBlobPart(part: BlobPart): Promise<void>;
  completeBlob(hash: string): Promise<void>;
  /** lets go of a blob that is not complete */
  dropBlob(hash: string): Promise<void>;
  close(): Promise<void>;
}
