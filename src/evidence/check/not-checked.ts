import type { Issue } from "#core";
import type { JobState } from "#records";
import { note } from "../issue.ts";
import type { EvidenceOptions } from "./evidence-options.ts";

/**
 * What cannot be seen from the file alone, and what would show it.
 *
 * Notes: evidence.office-key-not-known, evidence.after-last-known-head, evidence.no-known-head, evidence.entries-unread,
 *   evidence.times-are-claims.
 */
export function notChecked(
  { knownHeads = [], knownOfficeKey }: EvidenceOptions,
  state: JobState,
  entries: number,
): readonly Issue[] {
  const known = knownHeads.reduce((most, { size }) => Math.max(most, size), 0);
  const found: Issue[] = [];
  if (knownOfficeKey === undefined) found.push(note("evidence.office-key-not-known"));
  if (knownHeads.length === 0) found.push(note("evidence.no-known-head", {}, { entries }));
  else if (known < entries)
    found.push(note("evidence.after-last-known-head", {}, { from: known + 1, to: entries }));
  if (state.unread.length > 0)
    found.push(note("evidence.entries-unread", {}, { found: state.unread.length }));
  found.push(note("evidence.times-are-claims"));
  return found;
}
