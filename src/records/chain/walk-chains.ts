import type { ChainEnd, Entry } from "../entry/entry.ts";
import { continuationOf } from "../kinds/continuation.ts";
import { type ChainWalk, type Numbered, type Range, walkChain } from "./walk-chain.ts";

/** The chain of one device and what is known of it through others. */
export interface DeviceChain extends ChainWalk {
  /** highest number held or named by another device's entry */
  readonly highest: number;
  /** numbers up to there that are not held */
  readonly missing: readonly Range[];
  /** numbers at which another device has seen an entry that is not the one held here: the chain has a second branch */
  readonly contradicted: readonly number[];
}

/** All chains of a job, by device, in the order of the devices' names. */
export type Chains = ReadonlyMap<string, DeviceChain>;

/**
 * Sorts a set of entries into the chains of their devices and follows each as far as it goes.
 *
 * A pure function of the set: order and repeats do not matter. What a person ruled about lost or doubled entries is taken
 * from the entries that count themselves, over and over until no further ruling comes to count.
 *
 * @param entries of one job, each already checked by itself (`checkEntry`).
 */
export function walkChains(entries: Iterable<Entry>): Chains {
  const devices = byDevice(entries);
  const rulings = new Map<string, Map<number, string>>();
  let walks: readonly ChainWalk[];
  do {
    walks = [...devices].map(([device, numbered]) =>
      walkChain(device, numbered, rulings.get(device) ?? new Map()),
    );
  } while (addRulings(rulings, walks));

  const named = seenEnds(walks);
  return new Map(
    walks.map((walk) => {
      const numbered = devices.get(walk.device)!;
      const seen = named.get(walk.device) ?? [];
      const highest = largest([...numbered.keys(), ...seen.map((end) => end.sequence)]);
      const contradicted = seen
        .filter(({ sequence, id }) => numbered.get(sequence)?.every((entry) => entry.id !== id) ?? false)
        .map(({ sequence }) => sequence);
      return [
        walk.device,
        { ...walk, highest, missing: missingIn(numbered, highest), contradicted: ascending(contradicted) },
      ];
    }),
  );
}

/** Where each chain ends that can be followed: what a device may say it has seen, and what a server answers. */
export function chainEnds(chains: Chains): Readonly<Record<string, ChainEnd>> {
  const ends: Record<string, ChainEnd> = {};
  for (const [device, { followed }] of chains) {
    const last = followed.at(-1);
    if (last !== undefined) ends[device] = { sequence: last.sequence, id: last.id };
  }
  return ends;
}

function byDevice(entries: Iterable<Entry>): ReadonlyMap<string, Numbered> {
  const unique = new Map<string, Entry>();
  for (const entry of entries) unique.set(entry.id, entry);
  const devices = new Map<string, Map<number, Entry[]>>();
  const sorted = [...unique.values()].sort(
    (a, b) => compare(a.device, b.device) || a.sequence - b.sequence || compare(a.id, b.id),
  );
  for (const entry of sorted) {
    const numbered = devices.get(entry.device) ?? new Map<number, Entry[]>();
    devices.set(entry.device, numbered);
    const claims = numbered.get(entry.sequence);
    if (claims === undefined) numbered.set(entry.sequence, [entry]);
    else claims.push(entry);
    for (const { device } of entry.seen) if (!devices.has(device)) devices.set(device, new Map());
  }
  return new Map([...devices].sort(([a], [b]) => compare(a, b)));
}

/** Adds what the entries that count rule; of two rulings for one place the lower id stays. @returns whether anything is new. */
function addRulings(rulings: Map<string, Map<number, string>>, walks: readonly ChainWalk[]): boolean {
  let isNew = false;
  for (const entry of walks.flatMap((walk) => walk.followed)) {
    const ruling = continuationOf(entry);
    if (ruling === undefined) continue;
    const ofDevice = rulings.get(ruling.device) ?? new Map<number, string>();
    rulings.set(ruling.device, ofDevice);
    const known = ofDevice.get(ruling.sequence);
    if (known !== undefined && known <= ruling.entry) continue;
    ofDevice.set(ruling.sequence, ruling.entry);
    isNew = true;
  }
  return isNew;
}

function seenEnds(walks: readonly ChainWalk[]): ReadonlyMap<string, readonly ChainEnd[]> {
  const named = new Map<string, ChainEnd[]>();
  for (const { followed, waiting } of walks)
    for (const { seen } of [...followed, ...waiting])
      for (const { device, sequence, id } of seen) {
        const ends = named.get(device) ?? [];
        named.set(device, ends);
        ends.push({ sequence, id });
      }
  return named;
}

function missingIn(numbered: Numbered, highest: number): readonly Range[] {
  const ranges: Range[] = [];
  let from = 1;
  for (const sequence of [...ascending([...numbered.keys()]), highest + 1]) {
    if (sequence > from) ranges.push({ from, to: sequence - 1 });
    from = sequence + 1;
  }
  return ranges;
}

const largest = (numbers: readonly number[]): number =>
  numbers.reduce((most, number) => Math.max(most, number), 0);
const ascending = (numbers: readonly number[]): readonly number[] =>
  [...new Set(numbers)].sort((a, b) => a - b);
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
