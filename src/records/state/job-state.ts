import type { Range } from "../chain/walk-chain.ts";
import type { JsonValue } from "../json/json-value.ts";

/** Who wrote something and with which entry. The wall time is what the device showed, for people only. */
export interface WrittenBy {
  readonly entry: string;
  readonly device: string;
  readonly sequence: number;
  readonly author: string;
  readonly wall: string;
}

/** A value that a field has, with everybody who gave it that value without knowing of a later one. */
export interface FieldValue {
  readonly value: JsonValue;
  readonly by: readonly WrittenBy[];
}

/** One value: settled. More than one: a conflict, until somebody who has seen them all writes the field anew. */
export type FieldState = readonly FieldValue[];

export interface ListItem {
  readonly kind: string;
  readonly value: JsonValue;
  readonly by: WrittenBy;
}

/** One thing of the job: an element, a run, a report. */
export interface ThingState {
  readonly fields: Readonly<Record<string, FieldState>>;
  /** in the order in which people knew of each other's entries */
  readonly lists: Readonly<Record<string, readonly ListItem[]>>;
  /** every entry that had to do with the thing, in the same order */
  readonly entries: readonly string[];
}

export interface DeviceState {
  /** how many entries count */
  readonly followed: number;
  /** number of the last entry that counts; 0 if none does */
  readonly reached: number;
  /** highest number held or heard of */
  readonly highest: number;
  readonly missing: readonly Range[];
  /** how many entries are held that do not count yet */
  readonly waiting: number;
  readonly abandoned: number;
  readonly passedOver: readonly Range[];
  readonly forks: readonly number[];
  readonly contradicted: readonly number[];
  readonly stoppedAt?: { readonly sequence: number; readonly reason: "gap" | "fork" | "link" };
}

/** An entry that counts but cannot be read here: of a kind or a revision that this version does not know, or badly formed. */
export interface UnreadEntry {
  readonly kind: string;
  readonly revision: number;
  readonly code: string;
  readonly by: WrittenBy;
}

/** The state of a job, as plain JSON. The same for the same set of entries, whoever holds it. */
export interface JobState {
  readonly things: Readonly<Record<string, ThingState>>;
  readonly devices: Readonly<Record<string, DeviceState>>;
  readonly unread: readonly UnreadEntry[];
  /** things and fields that have more than one value */
  readonly conflicts: readonly { readonly thing: string; readonly field: string }[];
  /** false while entries are missing, waiting, doubled or unread: results made from this say so */
  readonly isComplete: boolean;
}
