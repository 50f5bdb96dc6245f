import type { ChainEnd, Entry, Seen } from "./entry.ts";

/** Where one device's chain of one job stands, and what it knows of the others. All that is needed to go on writing. */
export interface ChainPosition {
  readonly job: string;
  readonly device: string;
  /** the last entry of the device's own chain; undefined before the first */
  readonly last: ChainEnd | undefined;
  /** what the own chain has already said it has seen, by device */
  readonly declared: Readonly<Record<string, ChainEnd>>;
  /** how far the chains of other devices are held here without a gap, by device */
  readonly held: Readonly<Record<string, ChainEnd>>;
}

/** The position after an entry of the own chain. */
export function positionAfter(position: ChainPosition, entry: Entry): ChainPosition {
  const declared = { ...position.declared };
  for (const { device, sequence, id } of entry.seen) declared[device] = { sequence, id };
  return { ...position, last: { sequence: entry.sequence, id: entry.id }, declared };
}

/** What is newly known of other devices, for the next entry; in the order of the devices' names. */
export function seenSince(position: ChainPosition): readonly Seen[] {
  return Object.entries(position.held)
    .filter(([device, end]) => end.sequence > (position.declared[device]?.sequence ?? 0))
    .filter(([device]) => device !== position.device)
    .map(([device, end]) => ({ device, sequence: end.sequence, id: end.id }))
    .sort((a, b) => (a.device < b.device ? -1 : 1));
}
