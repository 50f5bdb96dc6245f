import type { ChainEnd, Entry } from "../entry/entry.ts";

/** Sequence numbers from one to another, both included. */
export interface Range {
  readonly from: number;
  readonly to: number;
}

/** Why a chain does not go on. */
export interface ChainStop {
  /** the first number that could not be followed */
  readonly sequence: number;
  /** gap: not received. fork: two entries claim the place. link: the entry there follows another one than the one before it */
  readonly reason: "gap" | "fork" | "link";
  /** ids of the entries that claim the place */
  readonly entries: readonly string[];
}

/** The chain of one device as far as it can be followed. */
export interface ChainWalk {
  readonly device: string;
  /** entries that count, in their order */
  readonly followed: readonly Entry[];
  readonly stop: ChainStop | undefined;
  /** entries held that do not count yet, because something before them is missing or in doubt */
  readonly waiting: readonly Entry[];
  /** entries of a branch that was ruled out */
  readonly abandoned: readonly Entry[];
  /** numbers that were passed over because a person ruled so */
  readonly passedOver: readonly Range[];
  /** numbers that more than one entry claims */
  readonly forks: readonly number[];
}

/** Entries of one device by number; each number's entries in the order of their ids. */
export type Numbered = ReadonlyMap<number, readonly Entry[]>;

/**
 * Follows the chain of one device from its first entry, link by link.
 *
 * @param rulings by number, the id of the entry with which a person ruled to go on.
 */
export function walkChain(
  device: string,
  numbered: Numbered,
  rulings: ReadonlyMap<number, string>,
): ChainWalk {
  const followed: Entry[] = [];
  const passedOver: Range[] = [];
  let end: ChainEnd | undefined;
  let stop: ChainStop | undefined;
  for (;;) {
    const sequence = (end?.sequence ?? 0) + 1;
    const next = follow(numbered, end, rulings) ?? jump(numbered, sequence, rulings);
    if (next === undefined) {
      stop = stopAt(numbered, sequence, end?.id ?? null);
      break;
    }
    if (next.sequence > sequence) passedOver.push({ from: sequence, to: next.sequence - 1 });
    followed.push(next);
    end = { sequence: next.sequence, id: next.id };
  }
  const counted = new Set(followed.map((entry) => entry.id));
  const rest = [...numbered.values()].flat().filter((entry) => !counted.has(entry.id));
  const reached = end?.sequence ?? 0;
  return {
    device,
    followed,
    // nothing is wrong where a chain simply ends
    stop: rest.some((entry) => entry.sequence > reached) ? stop : undefined,
    waiting: rest.filter((entry) => entry.sequence > reached).sort(bySequence),
    abandoned: rest.filter((entry) => entry.sequence <= reached).sort(bySequence),
    passedOver,
    forks: [...numbered].filter(([, entries]) => entries.length > 1).map(([sequence]) => sequence),
  };
}

/** The entry that follows by its number and its link, or the one that was ruled to follow. */
function follow(
  numbered: Numbered,
  end: ChainEnd | undefined,
  rulings: ReadonlyMap<number, string>,
): Entry | undefined {
  const sequence = (end?.sequence ?? 0) + 1;
  const claims = numbered.get(sequence) ?? [];
  const ruled = claims.find((entry) => entry.id === rulings.get(sequence));
  if (ruled !== undefined) return ruled;
  const linked = claims.filter((entry) => entry.previous === (end?.id ?? null));
  return linked.length === 1 ? linked[0] : undefined;
}

/** The first entry further on with which a person ruled to go on. */
function jump(numbered: Numbered, from: number, rulings: ReadonlyMap<number, string>): Entry | undefined {
  const ruled = [...rulings].filter(([sequence]) => sequence > from).sort(([a], [b]) => a - b);
  for (const [sequence, id] of ruled) {
    const entry = numbered.get(sequence)?.find((one) => one.id === id);
    if (entry !== undefined) return entry;
  }
  return undefined;
}

function stopAt(numbered: Numbered, sequence: number, previous: string | null): ChainStop {
  const claims = numbered.get(sequence) ?? [];
  const isFork = claims.filter((entry) => entry.previous === previous).length > 1;
  const reason = claims.length === 0 ? "gap" : isFork ? "fork" : "link";
  return { sequence, reason, entries: claims.map((entry) => entry.id) };
}

const bySequence = (a: Entry, b: Entry): number =>
  a.sequence - b.sequence || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
