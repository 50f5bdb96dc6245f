import type { EntryRow } from "./backend.ts";
import type { ChainHeld } from "./store.ts";

/** What is held of every device's chain, from the rows of a job in any order. */
export function chainsOfRows(
  rows: readonly Pick<EntryRow, "id" | "device" | "sequence">[],
): readonly ChainHeld[] {
  const devices = new Map<string, Map<number, string[]>>();
  for (const { id, device, sequence } of rows) {
    const numbered = devices.get(device) ?? new Map<number, string[]>();
    devices.set(device, numbered);
    const ids = numbered.get(sequence);
    if (ids === undefined) numbered.set(sequence, [id]);
    else ids.push(id);
  }
  return [...devices]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([device, numbered]) => chainOf(device, numbered));
}

function chainOf(device: string, numbered: ReadonlyMap<number, readonly string[]>): ChainHeld {
  let contiguous = 0;
  while (numbered.has(contiguous + 1)) contiguous++;
  let highest = 0;
  let entries = 0;
  for (const [sequence, ids] of numbered) {
    highest = Math.max(highest, sequence);
    entries += ids.length;
  }
  return { device, entries, contiguous, highest, heads: [...(numbered.get(highest) ?? [])].sort() };
}
