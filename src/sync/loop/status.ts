import type { Issue } from "#core";
import type { UnsentSummary } from "#records";

/** An office that has answered within this time counts as connected, milliseconds. */
export const CONNECTED_MS = 60_000;

/**
 * Where the entries written here are, taken together. A fourth state, that somebody else has seen an entry, is one of a single
 * entry: `whereEntriesAre`.
 */
export type SyncState = "on-this-device-only" | "sending" | "at-the-office";

/** What a screen says about sending and fetching. */
export interface SyncStatus {
  readonly state: SyncState;
  /** whether the office has answered within the last minute; what a browser thinks of its line is not asked */
  readonly connection: "connected" | "not-connected";
  /** what the office has not named as held; undefined until the log was read */
  readonly unsent: UnsentSummary | undefined;
  /** entries that the office keeps aside, with the code that says why */
  readonly refused: ReadonlyMap<string, string>;
  /** devices whose chain has two branches: a device that finds itself here takes a new key */
  readonly forked: readonly string[];
  /** when the office last answered; undefined if it has not since the program was started */
  readonly lastHeard: Date | undefined;
  /** when the next try is due; undefined while one is under way or after the end */
  readonly nextTry: Date | undefined;
  /** why the last try ended before its end */
  readonly cause: Issue | undefined;
  /** what people should know of although the work goes on */
  readonly findings: readonly Issue[];
  /** office clock minus the clock here, milliseconds, and when that was seen */
  readonly clockOffset: { readonly ms: number; readonly at: Date } | undefined;
}
