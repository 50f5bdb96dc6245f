import type { Issue, Result } from "#core";
import type { Entry, Page, Quarantined } from "#records";

/** What an append did. It is given only after the commit: what stands in `held` is safe. */
export interface Appended {
  /** ids of the batch that the log now holds, whether they came with this batch or were there before; each once */
  readonly held: readonly string[];
  /** how many of them are new */
  readonly added: number;
  /** entries that were not taken; they are kept aside as they came */
  readonly refused: readonly Quarantined[];
  /** entries of the job in the log now */
  readonly size: number;
}

/** How much a page may hold. At least one entry is given, however large it is. */
export interface PageLimit {
  readonly entries: number;
  /** of the entries' text in UTF-8 */
  readonly bytes: number;
}

/** What is held of one device's chain, by number only; whether the links fit is for the chains of the records to say. */
export interface ChainHeld {
  readonly device: string;
  readonly entries: number;
  /** highest sequence up to which no number is missing; 0 if the first one is missing */
  readonly contiguous: number;
  readonly highest: number;
  /** ids of the entries with the highest sequence; more than one if the chain is forked there */
  readonly heads: readonly string[];
}

/** Something that was not taken into the log, as it came. */
export interface KeptAside {
  /** SHA-256 of reason and text: the same thing is kept once, however often it comes */
  readonly key: string;
  readonly issue: Issue;
  /** JSON text; numbers that JSON cannot say stand as texts such as "NaN" */
  readonly text: string;
  /** when it came, as the caller said it */
  readonly at: string;
}

/** How far a blob has come. */
export interface BlobHeld {
  readonly size: number;
  /** bytes held without a gap, from the start: the place to go on from */
  readonly received: number;
  /** all bytes are here and their hash is the blob's name */
  readonly isComplete: boolean;
}

export interface BlobPart {
  /** SHA-256 of the whole blob, hexadecimal: its name */
  readonly hash: string;
  /** of the whole blob, bytes */
  readonly size: number;
  /** where the part begins, bytes */
  readonly offset: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** A server, and which of its lives: an acknowledgement from before a restore says nothing about what it holds after it. */
export interface Office {
  readonly server: string;
  /** raised with every restore from a back-up, as the server's answers name it */
  readonly era: number;
}

/**
 * The log of entries, and what is kept beside it. Entries are appended and never changed or removed; nothing in the log says
 * whether an entry was sent.
 *
 * Every method can fail with: store.full, store.busy, store.damaged, store.unreachable, store.closed, store.failed; every one
 * that reads entries also with store.entry-damaged.
 */
export interface Store {
  /**
   * Appends entries of one job in one transaction, in their order. Entries that are held already change nothing. One that
   * cannot be taken does not hold up the others: it is kept aside and named in the answer.
   *
   * @param entries each already checked by itself (`checkEntry`) or made here (`createEntry`).
   * @param receivedAt when they came, ISO 8601; a label.
   *
   * Errors inside `refused`: store.id-taken, records.other-job, and those of canonicalJson.
   */
  append(job: string, entries: readonly Entry[], receivedAt: string): Promise<Result<Appended, Issue>>;

  /** All jobs with entries, in the order of their names. */
  jobs(): Promise<Result<readonly string[], Issue>>;
  /** How many entries a job has: also the last place of arrival. */
  size(job: string): Promise<Result<number, Issue>>;
  /** All entries of a job in their order of arrival. */
  readJob(job: string): Promise<Result<readonly Entry[], Issue>>;
  /** Ids of all entries of a job in their order of arrival: for the tree and for the digest. */
  readIds(job: string): Promise<Result<readonly string[], Issue>>;
  /**
   * A page of the log in its order of arrival. Places are numbered from 1 without gaps; the place of an entry never changes, and
   * no entry ever appears before a place that was already read.
   *
   * @param cursor place after which to go on: 0 at first, then the last page's `from` and the number of its entries.
   * @param limit one message (MAX_BATCH_ENTRIES, MAX_BATCH_BYTES) unless said otherwise.
   */
  readAfter(job: string, cursor: number, limit?: PageLimit): Promise<Result<Page, Issue>>;
  /** Entries of one device by sequence, both ends included; of a fork all branches, in the order of their ids. */
  readChain(job: string, device: string, from: number, to: number): Promise<Result<readonly Entry[], Issue>>;
  /** What is held of every device's chain, in the order of the devices' names. */
  chains(job: string): Promise<Result<readonly ChainHeld[], Issue>>;

  /**
   * Keeps what a server has named as held there. An id that is not in the log of the job is left out: it says nothing about it.
   *
   * @returns how many of the ids were not known to be held there before.
   */
  acknowledge(
    job: string,
    office: Office,
    ids: readonly string[],
    at: string,
  ): Promise<Result<number, Issue>>;
  /** Ids of a job's entries that a server has named as held. */
  readAcknowledged(job: string, office: Office): Promise<Result<ReadonlySet<string>, Issue>>;
  /** The log without what a server has named: worked out from the two each time. In the order of arrival. */
  readNotSent(job: string, office: Office): Promise<Result<readonly Entry[], Issue>>;
  /** How many that are. */
  countNotSent(job: string, office: Office): Promise<Result<number, Issue>>;

  /** Keeps how far an office's log has been taken over, after the entries up to there were appended. A lower place changes nothing. */
  keepPulled(job: string, office: Office, place: number): Promise<Result<true, Issue>>;
  /** The place after which to pull on; 0 if nothing was pulled in this life of the office. */
  readPulled(job: string, office: Office): Promise<Result<number, Issue>>;
  /** Offices, each in its lives, of which a place is kept: what is known of them before they have answered. */
  readOffices(job: string): Promise<Result<readonly Office[], Issue>>;
  /**
   * Forgets what an office was believed to hold and how far its log was taken over, because it does not hold it any more. The log
   * stays as it is; everything is fetched and, where it is missing there, sent again.
   */
  forgetOffice(job: string, office: Office): Promise<Result<true, Issue>>;

  /** Keeps aside what was refused before it came to the store. */
  keepAside(job: string, refused: readonly Quarantined[], at: string): Promise<Result<number, Issue>>;
  /** What was kept aside in a job, in the order of the keys. */
  readKeptAside(job: string): Promise<Result<readonly KeptAside[], Issue>>;

  /**
   * Takes a part of a blob. Parts come in order; one that is held already changes nothing, and a first part with another size
   * begins a blob anew that is not complete. With the last part the hash is
   * checked; if it does not fit, the parts are let go, so that the blob can be sent again.
   *
   * Errors: store.blob-name, store.blob-part, store.blob-size, store.blob-size-changed, store.blob-offset, store.blob-differs,
   *   store.blob-hash.
   */
  putBlobPart(part: BlobPart): Promise<Result<BlobHeld, Issue>>;
  /** How far a blob has come; undefined if nothing of it is here. */
  blob(hash: string): Promise<Result<BlobHeld | undefined, Issue>>;
  /** The bytes of a blob from an offset on; undefined unless it is complete. */
  readBlob(hash: string, from?: number): Promise<Result<Uint8Array<ArrayBuffer> | undefined, Issue>>;

  close(): Promise<void>;
}
