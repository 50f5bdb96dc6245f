import type { Issue } from "#core";
import type { Entry, Verifier } from "#records";
import type { Office, Store } from "#store";
import type { OfficeClient } from "../client/office-client.ts";

/** Counts of one run, as far as it has come. */
export interface SyncCounts {
  /** entries that the office has named as held and that were not known to be there before */
  readonly sent: number;
  /** entries that are new here */
  readonly received: number;
  readonly filesSent: number;
  readonly filesFetched: number;
}

/** One run of sending and fetching: what its parts share. */
export interface SyncRun {
  readonly store: Store;
  readonly client: OfficeClient;
  readonly job: string;
  /** in the life of it that this run speaks with */
  office: Office;
  readonly verifier: Verifier;
  /** ISO 8601 */
  readonly now: () => string;
  /** entries that the office has refused in this run, or that are to be left alone in it, with the code */
  readonly refused: Map<string, string>;
  /** devices whose chain has two branches at the office */
  readonly forked: Set<string>;
  readonly findings: Issue[];
  readonly counts: { -readonly [K in keyof SyncCounts]: SyncCounts[K] };
  /** called whenever something has moved on */
  readonly onProgress: () => void;
}

/** How a part of a run ended: it did what there was to do, or the office turned out to have been restored from a back-up. */
export type PartEnd = "done" | "new-era";

/** Keeps what an office has named as held, and counts what is new of it. */
export async function acknowledge(run: SyncRun, ids: Iterable<string>) {
  const known = await run.store.acknowledge(run.job, run.office, [...ids], run.now());
  if (known.ok) run.counts.sent += known.value;
  return known;
}

/** Entries of a message are of this program's making, or were checked. */
export const entriesOf = (entries: readonly unknown[]): readonly Entry[] => entries as readonly Entry[];
