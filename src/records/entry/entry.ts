import type { JsonObject } from "../json/json-value.ts";

export const ENTRY_FORMAT = "toeline-entry/1";

/** Every chain begins with an entry of this kind, in which the device says what it is. */
export const FIRST_KIND = "device";

/** An entry may not be larger than this in its canonical form, so that every entry fits into one batch. Bytes. */
export const MAX_ENTRY_BYTES = 200_000;

/** The end of a device's chain at some moment. */
export interface ChainEnd {
  /** counted from 1 */
  readonly sequence: number;
  readonly id: string;
}

/** How far another device's chain was known when an entry was made. */
export interface Seen extends ChainEnd {
  readonly device: string;
}

/** What the device's clocks said. Wall time is a label: nothing is ordered by it. */
export interface EntryClock {
  /** ISO 8601 with offset, as the device showed it */
  readonly wall: string;
  /** milliseconds of a clock that never jumps, from the start of the session */
  readonly monotonic_ms: number;
  /** counts the starts of the program on this device; the monotonic clock starts anew with each */
  readonly session: number;
  /** office clock minus device clock when they were last compared, milliseconds */
  readonly server_offset_ms?: number;
  /** how long ago that was, milliseconds */
  readonly server_offset_age_ms?: number;
}

/** What is hashed and signed. The names are those of the file format (docs/formats/entry-log.md). */
export interface EntryContent {
  readonly format: typeof ENTRY_FORMAT;
  readonly job: string;
  /** the device's public key: every entry can be checked by itself */
  readonly device: string;
  /** place in the device's chain of this job, from 1, without gaps */
  readonly sequence: number;
  /** id of the entry before in that chain; null in the first */
  readonly previous: string | null;
  /** chains of other devices that this device had come to know since its entry before */
  readonly seen: readonly Seen[];
  readonly clock: EntryClock;
  readonly author: string;
  /** id in the registry of kinds; one that is not known is kept all the same */
  readonly kind: string;
  /** of the kind; raised when the meaning of the body changes */
  readonly revision: number;
  readonly body: JsonObject;
}

/** One thing written down once. Never changed, never removed. */
export interface Entry extends EntryContent {
  /** SHA-256 of the canonical form of the content, hexadecimal */
  readonly id: string;
  /** Ed25519 over the same bytes by the device's key, hexadecimal */
  readonly signature: string;
}
