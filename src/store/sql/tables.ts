/** One row per job; locked while the job is appended to, so that places of arrival are given one after the other. */
export interface JobTable {
  id: string;
  /** entries of the job, which is also the last place of arrival */
  size: number;
}

export interface EntryTable {
  id: string;
  job: string;
  device: string;
  sequence: number;
  /** from 1, without gaps within a job */
  arrival: number;
  received_at: string;
  /** canonical form of the whole entry */
  text: string;
}

export interface AcknowledgementTable {
  office: string;
  entry: string;
  acknowledged_at: string;
}

export interface PulledTable {
  job: string;
  office: string;
  /** up to which the office's log has been taken over */
  place: number;
}

export interface KeptAsideTable {
  job: string;
  key: string;
  /** JSON */
  issue: string;
  /** JSON */
  text: string;
  kept_at: string;
}

export interface BlobTable {
  hash: string;
  size: number;
  received: number;
  /** 0 or 1: neither engine's own truth value is known to the other */
  complete: number;
}

export interface BlobPartTable {
  hash: string;
  start: number;
  bytes: Uint8Array;
}

export interface MigrationTable {
  number: number;
  name: string;
}

/** All tables, by name, as the last migration leaves them. */
export interface Tables {
  migrations: MigrationTable;
  jobs: JobTable;
  entries: EntryTable;
  acknowledgements: AcknowledgementTable;
  pulled: PulledTable;
  kept_aside: KeptAsideTable;
  blobs: BlobTable;
  blob_parts: BlobPartTable;
}
