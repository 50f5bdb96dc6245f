import type { Entry } from "../entry/entry.ts";
import type { Chains, DeviceChain } from "./walk-chains.ts";

/** How far each device's chain was known when an entry was made, the own chain left out. */
export type KnownEnds = ReadonlyMap<string, number>;

/** An entry that counts, with what its device knew when it was made. */
export interface OrderedEntry {
  readonly entry: Entry;
  readonly known: KnownEnds;
}

/**
 * Puts the entries that count into one order, in which every entry stands after all that its device had seen.
 *
 * Entries that did not know of each other are ordered by how many steps lie before them, then by device: the same for
 * everybody, and no clock is asked.
 *
 * Source: L. Lamport, "Time, clocks, and the ordering of events in a distributed system", Communications of the ACM 21
 *   (1978), the rule for logical clocks (from memory).
 */
export function causalOrder(chains: Chains): readonly OrderedEntry[] {
  const cursors = [...chains.values()].map(startOf);
  const bySteps = new Map<string, number>();
  const ordered: (OrderedEntry & { readonly step: number })[] = [];
  const stepOf = (entry: Entry | undefined) => (entry === undefined ? 0 : bySteps.get(entry.id));
  const seenBy = (entry: Entry) =>
    entry.seen.map((end) => lastFollowed(chains.get(end.device), end.sequence));
  const advance = (cursor: Cursor) => {
    const entry = cursor.followed[cursor.at]!;
    cursor.at++;
    cursor.known = knownAfter(cursor.known, entry, chains);
    cursor.step = 1 + Math.max(cursor.step, ...seenBy(entry).map((seen) => stepOf(seen) ?? 0));
    bySteps.set(entry.id, cursor.step);
    ordered.push({ entry, known: cursor.known, step: cursor.step });
  };
  for (;;) {
    const open = cursors.filter((cursor) => cursor.at < cursor.followed.length);
    if (open.length === 0) break;
    const ready = open.filter(({ followed, at }) =>
      seenBy(followed[at]!).every((seen) => stepOf(seen) !== undefined),
    );
    // a ring of entries that claim to have seen each other needs a lie or a broken hash; go on all the same
    for (const cursor of ready.length > 0 ? ready : open.slice(0, 1)) advance(cursor);
  }
  return ordered.sort(
    (a, b) =>
      a.step - b.step ||
      (a.entry.device < b.entry.device ? -1 : a.entry.device > b.entry.device ? 1 : 0) ||
      a.entry.sequence - b.entry.sequence,
  );
}

interface Cursor {
  readonly followed: readonly Entry[];
  at: number;
  step: number;
  known: KnownEnds;
}

const startOf = ({ followed }: DeviceChain): Cursor => ({ followed, at: 0, step: 0, known: new Map() });

/** What was seen counts unless another entry than the one named stands at that place. */
function knownAfter(known: KnownEnds, entry: Entry, chains: Chains): KnownEnds {
  if (entry.seen.length === 0) return known;
  const after = new Map(known);
  for (const { device, sequence, id } of entry.seen) {
    const chain = chains.get(device);
    const held = lastFollowed(chain, sequence);
    const isHeld = held?.sequence === sequence;
    const isOther = isHeld ? held.id !== id : (chain?.contradicted.includes(sequence) ?? false);
    if (device !== entry.device && !isOther) after.set(device, Math.max(sequence, after.get(device) ?? 0));
  }
  return after;
}

/** The last entry of a chain that counts and whose number is not above the one asked for. */
function lastFollowed(chain: DeviceChain | undefined, sequence: number): Entry | undefined {
  const followed = chain?.followed ?? [];
  let low = 0;
  let high = followed.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (followed[middle]!.sequence <= sequence) low = middle + 1;
    else high = middle;
  }
  return followed[low - 1];
}
