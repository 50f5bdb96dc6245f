import { type Issue, ok, type Result } from "#core";
import type { Entry, HeldEnds } from "#records";
import type { Store } from "#store";

/** So many numbers of a chain are read at once. */
const STRIDE = 500;

/** How far one device's chain is known to be held. */
interface Known {
  readonly sequence: number;
  readonly id: string | null;
  readonly isForked: boolean;
}

/** Ends of chains, kept from batch to batch: a batch costs what it brings, however long the chains are. */
export interface ChainEnds {
  /** How far the chains are held that these entries belong to, once they are written. */
  after(job: string, entries: readonly Entry[]): Promise<Result<HeldEnds, Issue>>;
}

const BEGINNING: Known = { sequence: 0, id: null, isForked: false };

/**
 * What is kept here is only where reading goes on: other processes may write into the same chains. At the first batch of a job the
 * database counts its entries once; a chain whose numbers are all there, each once, is taken to be linked, as every check of the
 * whole log will confirm or deny.
 */
export function createChainEnds(store: Store): ChainEnds {
  const jobs = new Map<string, Map<string, Known>>();
  return {
    after: async (job, entries) => {
      let known = jobs.get(job);
      if (known === undefined) {
        const counted = await countedEnds(store, job);
        if (!counted.ok) return counted;
        known = jobs.get(job) ?? counted.value;
        jobs.set(job, known);
      }
      const contiguous: Record<string, number> = {};
      const forked: string[] = [];
      for (const [device, sequences] of byDevice(entries)) {
        const now = await follow(store, job, device, known.get(device) ?? BEGINNING, sequences);
        if (!now.ok) return now;
        const before = known.get(device) ?? BEGINNING;
        // another batch of this device may have come further meanwhile
        const end = before.sequence > now.value.sequence ? before : now.value;
        const isForked = before.isForked || now.value.isForked;
        known.set(device, { ...end, isForked });
        if (end.sequence > 0) contiguous[device] = end.sequence;
        if (isForked) forked.push(device);
      }
      return ok({ contiguous, forked });
    },
  };
}

async function countedEnds(store: Store, job: string): Promise<Result<Map<string, Known>, Issue>> {
  const chains = await store.chains(job);
  if (!chains.ok) return chains;
  const whole = chains.value.filter(
    ({ entries, contiguous, highest }) => entries === highest && contiguous === highest,
  );
  return ok(
    new Map(
      whole.map(({ device, highest, heads }) => [
        device,
        { sequence: highest, id: heads[0] ?? null, isForked: false },
      ]),
    ),
  );
}

function byDevice(entries: readonly Entry[]): ReadonlyMap<string, readonly number[]> {
  const sequences = new Map<string, number[]>();
  for (const { device, sequence } of entries) {
    const known = sequences.get(device);
    if (known === undefined) sequences.set(device, [sequence]);
    else known.push(sequence);
  }
  return sequences;
}

async function follow(
  store: Store,
  job: string,
  device: string,
  from: Known,
  sequences: readonly number[],
): Promise<Result<Known, Issue>> {
  const past = sequences.filter((sequence) => sequence <= from.sequence);
  const doubled = await hasDoubled(store, job, device, past);
  if (!doubled.ok) return doubled;
  let { sequence, id, isForked } = from;
  isForked ||= doubled.value;
  for (let isMoving = true; isMoving; ) {
    const read = await store.readChain(job, device, sequence + 1, sequence + STRIDE);
    if (!read.ok) return read;
    const numbered = bySequence(read.value);
    const end = sequence + STRIDE;
    while (sequence < end) {
      const claims = numbered.get(sequence + 1) ?? [];
      if (claims.length > 1) isForked = true;
      const linked = claims.filter((entry) => entry.previous === id);
      if (linked.length !== 1) break;
      sequence++;
      id = linked[0]!.id;
    }
    isMoving = sequence === end;
  }
  return ok({ sequence, id, isForked });
}

function bySequence(entries: readonly Entry[]): ReadonlyMap<number, readonly Entry[]> {
  const numbered = new Map<number, Entry[]>();
  for (const entry of entries) {
    const claims = numbered.get(entry.sequence);
    if (claims === undefined) numbered.set(entry.sequence, [entry]);
    else claims.push(entry);
  }
  return numbered;
}

/** Whether one of these places, which lie before the known end, is claimed by more than one entry. */
async function hasDoubled(
  store: Store,
  job: string,
  device: string,
  sequences: readonly number[],
): Promise<Result<boolean, Issue>> {
  for (const [from, to] of stretches(sequences)) {
    const read = await store.readChain(job, device, from, to);
    if (!read.ok) return read;
    if (new Set(read.value.map((entry) => entry.sequence)).size < read.value.length) return ok(true);
  }
  return ok(false);
}

/** Numbers that follow each other, as one stretch each. */
function stretches(sequences: readonly number[]): readonly (readonly [number, number])[] {
  const ranges: [number, number][] = [];
  for (const sequence of [...new Set(sequences)].sort((a, b) => a - b)) {
    const last = ranges.at(-1);
    if (last?.[1] === sequence - 1) last[1] = sequence;
    else ranges.push([sequence, sequence]);
  }
  return ranges;
}
