// The door of the layer: what other layers may use, listed one by one.

export {
  createOfficeClient,
  type OfficeClient,
  type OfficeClientSettings,
  SILENCE_MS,
} from "./client/office-client.ts";
export { TOO_OLD } from "./client/problem-issue.ts";
export { PAUSES } from "./loop/back-off.ts";
export {
  type Exclusively,
  type KeepSettings,
  keepSynchronized,
  type Synchronizer,
} from "./loop/keep-synchronized.ts";
export { CONNECTED_MS, type SyncState, type SyncStatus } from "./loop/status.ts";
export { unsentHere } from "./loop/unsent-here.ts";
export { type EntryPlace, whereEntriesAre } from "./loop/where-entries-are.ts";
export {
  type BlobRef,
  type BlobState,
  blobRefSchema,
  blobStateSchema,
  blobsAnswerSchema,
  blobsAskedSchema,
  type Greeting,
  greetingSchema,
  type LiveMessage,
  liveSchema,
  MAX_ASKED_BLOBS,
  MAX_BLOB_BYTES,
} from "./messages.ts";
export { type Fetch, type LiveSocket, platformTimers, type Timers } from "./platform.ts";
export { type BlobCatalogue, createBlobCatalogue } from "./run/blob-catalogue.ts";
export type { SyncCounts } from "./run/sync-run.ts";
export { officeOf, type SyncOutcome, type SyncSettings, synchronize } from "./run/synchronize.ts";
