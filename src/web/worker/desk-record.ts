// What the screens of the record ask of the worker: what happened and its proof, conflicts with their effect, progress, devices, and
// the check of a file.

import type { Issue, Language, Result, Verdict } from "#core";
import type { EvidenceReport, KnownHead } from "#evidence";
import type { JsonValue } from "#records";

/** Which entries of the history are wanted. Left out: all. */
export interface TimelineFilter {
  /** what somebody typed: an element, a run, or the beginning of one */
  readonly about: string;
  /** only readings that were set aside or put back */
  readonly isAsideOnly: boolean;
}

/** One entry of the log as a line of the history. */
export interface TimelineRow {
  readonly id: string;
  /** place in the order in which entries came to this device, from 1 */
  readonly arrival: number;
  readonly author: string;
  /** what the clock of the device showed: a label, no proof */
  readonly wall: string;
  readonly device: string;
  readonly deviceName: string;
  readonly sequence: number;
  readonly kind: string;
  /** what happened: the name of the kind, in the language asked for */
  readonly what: string;
  /** what it was about: "Element P12" */
  readonly about: string;
  /** what was written: "Easting: 523145.120 m" */
  readonly details: readonly string[];
  /** why, where somebody said so */
  readonly reason: string | undefined;
  readonly aside: "set-aside" | "put-back" | undefined;
}

export interface Timeline {
  readonly rows: readonly TimelineRow[];
  /** as many fit the filter */
  readonly total: number;
  /** what is broken in the chains of devices: gaps, branches, links that do not fit */
  readonly broken: readonly BrokenChain[];
}

/** Where the chain of a device does not go on. */
export interface BrokenChain {
  readonly device: string;
  readonly deviceName: string;
  readonly what: "gap" | "fork" | "link";
  readonly from: number;
  readonly to: number;
  /** entries behind it that do not count yet */
  readonly waiting: number;
}

/** What could be shown of an entry. Every check is done here; of the office only its statement is taken. */
export interface EntryProof {
  /** the signature of the device over the entry fits, and the entry is what its id says */
  readonly isSigned: boolean;
  /** why not */
  readonly trouble: Issue | undefined;
  /** undefined: the office did not answer, or does not have the entry */
  readonly office: OfficeProof | undefined;
}

export interface OfficeProof {
  /** the head is signed, and the path leads from the entry to it */
  readonly isProven: boolean;
  /** place in the order of arrival at the office, from 1 */
  readonly place: number;
  readonly size: number;
  readonly steps: number;
  readonly root: string;
  readonly key: string;
  /** the office's time of the head */
  readonly at: string;
  readonly trouble: Issue | undefined;
}

/** One of the values of a field in conflict. */
export interface ConflictValue {
  readonly value: JsonValue;
  /** with its unit */
  readonly text: string;
  readonly by: readonly {
    readonly author: string;
    readonly deviceName: string;
    readonly device: string;
    readonly wall: string;
    readonly entry: string;
  }[];
  /** the program reckons with this one until somebody decides */
  readonly isUsed: boolean;
}

/** What another value means for one element. */
export interface ConflictEffect {
  readonly element: string;
  /** one for each value, in the order of the values; undefined: there is no such element with that value */
  readonly verdicts: readonly (Verdict | undefined)[];
}

/** A field that people have changed without knowing of each other. */
export interface ConflictCard {
  readonly thing: string;
  readonly field: string;
  /** "Element P12" */
  readonly thingText: string;
  /** "Easting" */
  readonly fieldText: string;
  readonly values: readonly ConflictValue[];
  /** what stood there before both, with its unit; undefined: nothing */
  readonly before: string | undefined;
  /** how another value can be typed; undefined: only one of those that are there can be kept */
  readonly edit: { readonly kind: "number"; readonly unit: string } | { readonly kind: "text" } | undefined;
  /** elements that have other results with other values; those whose verdict differs first */
  readonly effects: readonly ConflictEffect[];
  /** elements that would have to be worked out too, beyond those above */
  readonly effectsLeftOut: number;
}

/** A share of elements with the interval in which it lies with 95 %. */
export interface Share {
  /** elements that were judged */
  readonly judged: number;
  readonly outside: number;
  /** between 0 and 1; NaN where nothing was judged */
  readonly share: number;
  readonly low: number;
  readonly high: number;
  /** too few to say much */
  readonly isSmall: boolean;
}

export const OVERVIEW_PARTS = ["rig", "crew", "week", "probe", "group"] as const;
export type OverviewPart = (typeof OVERVIEW_PARTS)[number];

export interface OverviewRow extends Share {
  /** empty: the records do not say */
  readonly name: string;
  readonly elements: number;
  readonly measured: number;
}

export interface OverviewView {
  readonly elements: number;
  readonly measured: number;
  /** a verdict other than not judged */
  readonly judged: number;
  readonly counts: Readonly<Record<Verdict, number>>;
  readonly whole: Share;
  readonly parts: Readonly<Record<OverviewPart, readonly OverviewRow[]>>;
  /** elements that need somebody, the worst first */
  readonly worst: readonly string[];
}

/** A device that has written into the job. */
export interface JobDevice {
  readonly device: string;
  readonly name: string;
  readonly isThisOne: boolean;
  readonly people: readonly string[];
  readonly entries: number;
  /** what its clock showed with its latest entry */
  readonly lastWall: string | undefined;
  /** numbers of entries that others have heard of and that are not here */
  readonly missing: number;
}

/** What the person who checks a file knows from elsewhere. */
export interface KnownFromOutside {
  /** as typed: a head printed on a report, and how many entries it counts */
  readonly head: KnownHead | undefined;
  readonly officeKey: string | undefined;
}

/** What the worker does for the record. */
export interface DeskRecord {
  timeline(
    job: string,
    filter: TimelineFilter,
    from: number,
    count: number,
    language: Language,
  ): Promise<Timeline | undefined>;
  proof(job: string, entry: string): Promise<EntryProof | undefined>;
  /** The evidence file of the job, made by the office. */
  evidence(job: string): Promise<Result<Uint8Array<ArrayBuffer>, Issue>>;
  conflicts(job: string, language: Language): Promise<readonly ConflictCard[] | undefined>;
  overview(job: string): Promise<OverviewView | undefined>;
  devices(job: string): Promise<readonly JobDevice[] | undefined>;
  /** Checks an evidence file here; nothing is sent anywhere. */
  checkFile(bytes: Uint8Array, known: KnownFromOutside): Promise<EvidenceReport>;
}
