// The door of the layer: what other layers may use, listed one by one.

export { causalOrder, type OrderedEntry } from "./chain/causal-order.ts";
export { clockFindings } from "./chain/clock-findings.ts";
export { positionIn } from "./chain/position-in.ts";
export { type FirstBad, type LogReport, verifyLog } from "./chain/verify-log.ts";
export type { ChainStop, Range } from "./chain/walk-chain.ts";
export { type Chains, chainEnds, type DeviceChain, walkChains } from "./chain/walk-chains.ts";
export { sha256Hex, utf8 } from "./crypto/hash.ts";
export { bytesFromHex, hexFromBytes, isHex32, isHex64 } from "./crypto/hex.ts";
export {
  canSign,
  createVerifier,
  generateKeyPair,
  type KeyPair,
  type Signer,
  signerFromKeyPair,
  signerFromSeed,
  type Verifier,
} from "./crypto/keys.ts";
export { canonicalEntry } from "./entry/canonical-entry.ts";
export { type ChainPosition, positionAfter } from "./entry/chain-position.ts";
export { checkEntry } from "./entry/check-entry.ts";
export { createEntry, type Statement } from "./entry/create-entry.ts";
export {
  type ChainEnd,
  ENTRY_FORMAT,
  type Entry,
  type EntryClock,
  type EntryContent,
  FIRST_KIND,
  MAX_ENTRY_BYTES,
  type Seen,
} from "./entry/entry.ts";
export { canonicalJson } from "./json/canonical-json.ts";
export type { JsonObject, JsonValue } from "./json/json-value.ts";
export { parseJson } from "./json/parse-json.ts";
export { type Continuation, continuationOf } from "./kinds/continuation.ts";
export { type Effect, type EntryKind, thingKey } from "./kinds/kind.ts";
export { entryKinds, kindOf } from "./kinds/registry.ts";
export type { Seal, SealStatement } from "./kinds/seal-schema.ts";
export { checkSeal, makeSeal, type SealRequest } from "./seal/seal.ts";
export { foldChains, foldJob } from "./state/fold-job.ts";
export type {
  DeviceState,
  FieldState,
  FieldValue,
  JobState,
  ListItem,
  ThingState,
  UnreadEntry,
  WrittenBy,
} from "./state/job-state.ts";
export {
  MAX_BATCH_BYTES,
  MAX_BATCH_ENTRIES,
  messageSchemas,
  type PullAnswer,
  type PullRequest,
  type PushAnswer,
  type PushRequest,
  type RefusedEntry,
  readMessage,
  type SyncMessage,
  writeMessage,
} from "./sync/messages.ts";
export { namedBlobs } from "./sync/named-blobs.ts";
export {
  isSameSet,
  type OfficeView,
  startAnew,
  UNKNOWN_OFFICE,
  viewAfterPull,
  viewAfterPush,
} from "./sync/office-view.ts";
export {
  nextBatch,
  notSent,
  summarizeUnsent,
  type UnsentSummary,
} from "./sync/outbox.ts";
export {
  answerPull,
  answerPush,
  type HeldEnds,
  heldEnds,
  type OfficeLog,
  type Page,
  type Quarantined,
  type Received,
  receiveBatch,
} from "./sync/receive.ts";
export { setDigest } from "./sync/set-digest.ts";
export {
  appendLeaf,
  EMPTY_FRONT,
  EMPTY_ROOT,
  frontRoot,
  leafHash,
  type TreeFront,
  treeRoot,
} from "./tree/merkle-tree.ts";
export { consistencyProof, inclusionProof, verifyConsistency, verifyInclusion } from "./tree/proofs.ts";
export { checkAgainstHead, checkHead, rootOfIds, signHead, type TreeHead } from "./tree/tree-head.ts";
