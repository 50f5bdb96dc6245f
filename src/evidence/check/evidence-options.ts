import type { KnownHead } from "./evidence-report.ts";

/** What is known from outside of the file. */
export interface EvidenceOptions {
  /** heads that somebody kept or that are printed on reports */
  readonly knownHeads?: readonly KnownHead[];
  /** the office's public key, 64 hexadecimal digits */
  readonly knownOfficeKey?: string;
}
