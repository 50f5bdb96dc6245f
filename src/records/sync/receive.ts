import type { Issue } from "#core";
import { type Chains, chainEnds } from "../chain/walk-chains.ts";
import type { Verifier } from "../crypto/keys.ts";
import { checkEntry } from "../entry/check-entry.ts";
import type { Entry } from "../entry/entry.ts";
import { error } from "../issue.ts";
import type { PullAnswer, PushAnswer } from "./messages.ts";

/** An entry that was not taken. It is kept aside as it came, to be looked at; the others go on without it. */
export interface Quarantined {
  /** place in the batch, from 0 */
  readonly index: number;
  readonly raw: unknown;
  readonly issue: Issue;
}

export interface Received {
  /** sound entries, each once, in the order of the batch */
  readonly sound: readonly Entry[];
  readonly quarantined: readonly Quarantined[];
}

/**
 * Judges a batch entry by entry, at the office and on a device alike. Needs no state: whether an entry is sound does not depend
 * on what else is held, so every order of arrival ends in the same set.
 *
 * Errors inside: those of checkEntry, records.other-job.
 */
export async function receiveBatch(
  job: string,
  entries: readonly unknown[],
  verifier: Verifier,
): Promise<Received> {
  const sound = new Map<string, Entry>();
  const quarantined: Quarantined[] = [];
  for (const [index, raw] of entries.entries()) {
    const checked = await checkEntry(raw, verifier);
    if (!checked.ok) quarantined.push({ index, raw, issue: checked.error });
    else if (checked.value.job !== job)
      quarantined.push({ index, raw, issue: error("records.other-job", { found: checked.value.job }) });
    else sound.set(checked.value.id, checked.value);
  }
  return { sound: [...sound.values()], quarantined };
}

/** Whose log an answer speaks of. */
export interface OfficeLog {
  readonly job: string;
  /** raised with every restore from a back-up, see `PushAnswer` */
  readonly era: number;
}

/** How far chains are held, as an answer tells it: of all devices of a job, or of those that a batch comes from. */
export type HeldEnds = Pick<PushAnswer, "contiguous" | "forked">;

/** The same from the chains themselves. */
export const heldEnds = (chains: Chains): HeldEnds => ({
  contiguous: Object.fromEntries(
    Object.entries(chainEnds(chains)).map(([device, end]) => [device, end.sequence]),
  ),
  forked: [...chains.values()].filter(({ forks }) => forks.length > 0).map(({ device }) => device),
});

/**
 * The office's answer after the sound entries of a batch have been written.
 *
 * @param ends of what is held now, this batch among it.
 */
export function answerPush({ job, era }: OfficeLog, received: Received, ends: HeldEnds): PushAnswer {
  return {
    format: "toeline-push-answer/1",
    job,
    era,
    held: received.sound.map((entry) => entry.id),
    refused: received.quarantined.map(({ index, raw, issue }) => ({
      index,
      entry: claimedId(raw),
      code: issue.code,
    })),
    ...ends,
  };
}

/** A page of the office's log, in its order of arrival. */
export interface Page {
  /** place after which it begins: how many entries come before it */
  readonly from: number;
  readonly entries: readonly Entry[];
  readonly more: boolean;
}

/** @param digest of all ids held (`setDigest`); goes out with the last page. */
export function answerPull({ job, era }: OfficeLog, page: Page, digest: string): PullAnswer {
  return {
    format: "toeline-pull-answer/1",
    job,
    era,
    from: page.from,
    entries: [...page.entries],
    more: page.more,
    digest: page.more ? null : digest,
  };
}

function claimedId(raw: unknown): string | null {
  const id = (raw as { id?: unknown } | null | undefined)?.id;
  return typeof id === "string" && /^[0-9a-f]{64}$/.test(id) ? id : null;
}
