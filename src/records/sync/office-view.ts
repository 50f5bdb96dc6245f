import type { Entry } from "../entry/entry.ts";
import type { PullAnswer, PushAnswer } from "./messages.ts";
import type { Received } from "./receive.ts";
import { setDigest } from "./set-digest.ts";

/** What a device knows of the office. Nothing in it is needed to keep the log: it can be thrown away and is found out anew. */
export interface OfficeView {
  readonly era: number;
  /** place in the office's order up to which everything has been fetched */
  readonly cursor: number;
  /** ids that the office has named as held */
  readonly acknowledged: ReadonlySet<string>;
  /** ids that the office has refused, with the code */
  readonly refused: ReadonlyMap<string, string>;
}

export const UNKNOWN_OFFICE: OfficeView = {
  era: 0,
  cursor: 0,
  acknowledged: new Set(),
  refused: new Map(),
};

/**
 * What is known after the answer to a batch.
 *
 * Only ids that were really in the batch count as held, whatever was written since it was sent. The place in the batch says
 * which entry was refused, because a damaged entry may claim any id.
 *
 * @param batch the entries that were sent.
 */
export function viewAfterPush(known: OfficeView, answer: PushAnswer, batch: readonly Entry[]): OfficeView {
  const view = ofEra(known, answer.era);
  if (view === undefined) return known;
  const held = new Set(answer.held);
  const named = batch.map((entry) => entry.id).filter((id) => held.has(id));
  const acknowledged = new Set([...view.acknowledged, ...named]);
  const refused = new Map(view.refused);
  for (const { index, code } of answer.refused) {
    const entry = batch[index];
    if (entry !== undefined) refused.set(entry.id, code);
  }
  for (const id of refused.keys()) if (acknowledged.has(id)) refused.delete(id);
  return { ...view, acknowledged, refused };
}

/**
 * What is known after a page of the office's log. The sound entries of the page go into the device's own log in any case.
 *
 * A page that came in damaged, or that begins elsewhere than where this device stands, does not move its place: it is asked for
 * again.
 */
export function viewAfterPull(known: OfficeView, answer: PullAnswer, received: Received): OfficeView {
  const view = ofEra(known, answer.era);
  if (view === undefined) return known;
  const acknowledged = new Set([...view.acknowledged, ...received.sound.map((entry) => entry.id)]);
  const refused = new Map([...view.refused].filter(([id]) => !acknowledged.has(id)));
  const isWhole = received.quarantined.length === 0 && answer.from === view.cursor;
  const cursor = isWhole ? answer.from + answer.entries.length : view.cursor;
  return { ...view, acknowledged, refused, cursor };
}

/**
 * Whether the office holds exactly what this device believes it holds, by the digest of the last page. If not, although nothing is
 * on the way, the office has lost or hidden something: `startAnew`.
 */
export const isSameSet = async (view: OfficeView, answer: PullAnswer): Promise<boolean> =>
  answer.era === view.era && answer.digest === (await setDigest(view.acknowledged));

/** Forgets what the office was believed to hold. Everything is fetched and, where it is missing there, sent again. */
export const startAnew = (view: OfficeView): OfficeView => ({ ...UNKNOWN_OFFICE, era: view.era });

/** An answer from before a restore says nothing any more; the first one from after it makes all that was known void. */
function ofEra(known: OfficeView, era: number): OfficeView | undefined {
  if (era < known.era) return undefined;
  return era === known.era ? known : { ...UNKNOWN_OFFICE, era };
}
