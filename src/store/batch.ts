import type { Issue } from "#core";
import { canonicalJson, type Entry, type Quarantined } from "#records";
import type { EntryRow } from "./backend.ts";
import { error } from "./issue.ts";

export interface PreparedBatch {
  /** each id once, in the order of the batch */
  readonly rows: readonly EntryRow[];
  readonly refused: readonly Quarantined[];
}

/**
 * Makes rows of entries before any database sees them: what JSON cannot say, numbers that are not finite among it, stops here.
 *
 * Errors inside: store.id-taken (twice in the batch with other content), records.other-job, and those of canonicalJson.
 */
export function prepareBatch(job: string, entries: readonly Entry[]): PreparedBatch {
  const rows = new Map<string, EntryRow>();
  const refused: Quarantined[] = [];
  const refuse = (index: number, raw: Entry, issue: Issue) => refused.push({ index, raw, issue });
  for (const [index, entry] of entries.entries()) {
    const canonical = canonicalJson(entry);
    if (!canonical.ok) refuse(index, entry, canonical.error);
    else if (entry.job !== job) refuse(index, entry, error("records.other-job", { found: entry.job }));
    else {
      const { id, device, sequence } = entry;
      const before = rows.get(id);
      if (before === undefined) rows.set(id, { id, device, sequence, text: canonical.value });
      else if (before.text !== canonical.value) refuse(index, entry, idTaken(id));
    }
  }
  return { rows: [...rows.values()], refused };
}

export const idTaken = (id: string): Issue => error("store.id-taken", { entry: id });

/** Parts rows into new ones and those whose id is held with another text; what is held with the same text is neither. */
export function settleRows(
  rows: readonly EntryRow[],
  heldTexts: ReadonlyMap<string, string>,
): { readonly fresh: readonly EntryRow[]; readonly taken: readonly string[] } {
  const fresh = rows.filter((row) => !heldTexts.has(row.id));
  const taken = rows.filter((row) => heldTexts.has(row.id) && heldTexts.get(row.id) !== row.text);
  return { fresh, taken: taken.map((row) => row.id) };
}
