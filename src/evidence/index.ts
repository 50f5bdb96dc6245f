// The door of the layer: what other layers may use, listed one by one.

export type { EvidenceOptions } from "./check/evidence-options.ts";
export type {
  BlobsInEvidence,
  DeviceInEvidence,
  EvidenceReport,
  EvidenceVerdict,
  FirstBadEntry,
  HeadInEvidence,
  KnownHead,
  KnownHeadInEvidence,
  SealInEvidence,
} from "./check/evidence-report.ts";
export { verifyEvidenceBag, verifyEvidenceFiles } from "./check/verify-evidence-bag.ts";
export { type EvidenceInput, writeEvidenceBag } from "./write/write-evidence-bag.ts";
