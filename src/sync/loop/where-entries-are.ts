import type { Entry } from "#records";

/** Where one entry is. */
export type EntryPlace =
  | { readonly state: "on-this-device-only" }
  | { readonly state: "at-the-office" }
  /** authors of other devices whose later entries say that they had it, in the order of their names */
  | { readonly state: "seen"; readonly by: readonly string[] };

/**
 * Says of each entry of a device where it is, from the log alone and from what the office has named. (An entry that is on its way is
 * one of the batch under way; the screen that sends it knows.)
 *
 * @param log of the job, in any order.
 * @param acknowledged ids that the office has named as held.
 */
export function whereEntriesAre(
  log: readonly Entry[],
  acknowledged: ReadonlySet<string>,
  device: string,
): (entry: Entry) => EntryPlace {
  // by author, the highest number of this device's chain that somebody has said to have seen
  const seenUpTo = new Map<string, number>();
  for (const { device: other, author, seen } of log) {
    if (other === device) continue;
    for (const end of seen)
      if (end.device === device) seenUpTo.set(author, Math.max(end.sequence, seenUpTo.get(author) ?? 0));
  }
  return (entry) => {
    const by = [...seenUpTo].filter(([, upTo]) => upTo >= entry.sequence).map(([author]) => author);
    if (by.length > 0) return { state: "seen", by: by.sort() };
    return { state: acknowledged.has(entry.id) ? "at-the-office" : "on-this-device-only" };
  };
}
