import type { Issue } from "#core";

/**
 * sound: everything fits and nothing is missing.
 * unsettled: it is what the office signed, but the log itself has a gap or a branch that nobody has ruled on, a signature of a person
 *   does not fit, or a file is not there.
 * changed: it is not what was signed, or nothing shows that it is.
 * no-bag: this is no evidence bag, or one that is not opened because it could do harm.
 */
export type EvidenceVerdict = "sound" | "unsettled" | "changed" | "no-bag";

/** The first entry that is not as it should be. */
export interface FirstBadEntry {
  /** place in the order of arrival, from 1 */
  readonly place: number;
  /** the same, or a later place if all that is left says no more than that it lies between the two */
  readonly upTo: number;
  /** what is known of the entry: of the one that stands there, or of the one that is missing there */
  readonly id?: string;
  readonly device?: string;
  readonly sequence?: number;
  readonly kind?: string;
  /** why */
  readonly issue: Issue;
}

/** One device and its chain. */
export interface DeviceInEvidence {
  readonly device: string;
  /** as it called itself; empty if it never did */
  readonly name: string;
  /** entries here; how many of them count */
  readonly entries: number;
  readonly followed: number;
  /** numbers of its entries that are missing, and which of those a person ruled to go on without */
  readonly missing: readonly NumberRange[];
  readonly passedOver: readonly NumberRange[];
  /** numbers that two entries claim */
  readonly forks: readonly number[];
  readonly isSound: boolean;
}

export interface NumberRange {
  readonly from: number;
  readonly to: number;
}

/** A head of the office in the bag. */
export interface HeadInEvidence {
  readonly size: number;
  readonly root: string;
  readonly at: string;
  readonly key: string;
  readonly fits: boolean;
  readonly issue?: Issue;
}

/** A head known from outside, and whether the log fits it. */
export interface KnownHeadInEvidence extends KnownHead {
  readonly fits: boolean;
}

/** A head as somebody kept it, or as it is printed on a report: a signed one will do as well. */
export interface KnownHead {
  readonly size: number;
  /** hexadecimal; the first 16 digits or more */
  readonly root: string;
}

/** A person's signature for a run or a report. */
export interface SealInEvidence {
  readonly place: number;
  readonly about: string;
  readonly meaning: string;
  readonly person: string;
  readonly name: string;
  /** when, as the person's device said it */
  readonly at: string;
  readonly key: string;
  readonly fits: boolean;
  readonly issue?: Issue;
}

export interface BlobsInEvidence {
  /** named by entries */
  readonly named: number;
  /** hashes of files that are named and not here */
  readonly missing: readonly string[];
  /** hashes of files whose content is another */
  readonly changed: readonly string[];
}

/** What a check of an evidence bag found: plain data. */
export interface EvidenceReport {
  readonly verdict: EvidenceVerdict;
  readonly isSound: boolean;
  /** the one-sentence answer, as a code with its values */
  readonly answer: Issue;
  readonly job: string;
  readonly entries: number;
  readonly firstBad: FirstBadEntry | undefined;
  readonly devices: readonly DeviceInEvidence[];
  readonly heads: readonly HeadInEvidence[];
  readonly knownHeads: readonly KnownHeadInEvidence[];
  readonly seals: readonly SealInEvidence[];
  readonly blobs: BlobsInEvidence;
  /** everything found; at most so many of a kind as anybody reads */
  readonly findings: readonly Issue[];
  /** what cannot be seen from this file alone, and what would show it */
  readonly notChecked: readonly Issue[];
}
