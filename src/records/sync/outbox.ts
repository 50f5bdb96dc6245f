import { utf8 } from "../crypto/hash.ts";
import { type Entry, MAX_ENTRY_BYTES } from "../entry/entry.ts";
import { canonicalJson } from "../json/canonical-json.ts";
import { MAX_BATCH_BYTES, MAX_BATCH_ENTRIES, type PushRequest } from "./messages.ts";

/**
 * What is not at the office: the log without what the office has named. Worked out anew each time; there is no mark that could
 * be wrong.
 *
 * @param entries the log, in its order.
 * @param acknowledged ids that the office has named as held.
 */
export const notSent = (entries: readonly Entry[], acknowledged: ReadonlySet<string>): readonly Entry[] =>
  entries.filter((entry) => !acknowledged.has(entry.id));

/** The same in numbers, for people. */
export interface UnsentSummary {
  readonly entries: number;
  readonly bytes: number;
  readonly byKind: Readonly<Record<string, number>>;
  /** wall time on the oldest one, as its device showed it */
  readonly oldest: string | undefined;
}

export function summarizeUnsent(unsent: readonly Entry[]): UnsentSummary {
  const byKind: Record<string, number> = {};
  for (const { kind } of unsent) byKind[kind] = (byKind[kind] ?? 0) + 1;
  const walls = unsent.map((entry) => entry.clock.wall);
  const byTime = walls.sort((a, b) => Date.parse(a) - Date.parse(b));
  const bytes = unsent.reduce((sum, entry) => sum + sizeOf(entry), 0);
  return { entries: unsent.length, bytes, byKind, oldest: byTime[0] };
}

/**
 * The next batch to send: as many entries as fit, in the order of the log. Entries that the office has refused wait until
 * nothing else is left, so that a bad one cannot hold up the others.
 *
 * @param refused ids that the office has refused, with the code.
 * @returns undefined if nothing is to be sent.
 */
export function nextBatch(
  job: string,
  unsent: readonly Entry[],
  refused: ReadonlyMap<string, string>,
): PushRequest | undefined {
  const waiting = unsent.filter((entry) => !refused.has(entry.id));
  const chosen = firstThatFit(waiting.length > 0 ? waiting : unsent);
  return chosen.length === 0 ? undefined : { format: "toeline-push/1", job, entries: [...chosen] };
}

function firstThatFit(entries: readonly Entry[]): readonly Entry[] {
  let bytes = 0;
  const end = entries.findIndex((entry, i) => {
    bytes += sizeOf(entry) + 1;
    return i >= MAX_BATCH_ENTRIES || bytes > MAX_BATCH_BYTES;
  });
  return end < 0 ? entries : entries.slice(0, end);
}

/** One that JSON cannot say counts as the largest there can be: it will be refused, and must not stop the others. */
function sizeOf(entry: Entry): number {
  const text = canonicalJson(entry);
  return text.ok ? utf8(text.value).length : MAX_ENTRY_BYTES;
}
