import type { Entry } from "#records";
import type { JobLog } from "../jobs/job-log.ts";

const lookups = new WeakMap<JobLog, ReadonlyMap<string, Entry>>();

/** Entries of a log by their ids; made once for every state of the log. */
export function entriesById(log: JobLog): ReadonlyMap<string, Entry> {
  const known = lookups.get(log) ?? new Map(log.entries.map((entry) => [entry.id, entry]));
  lookups.set(log, known);
  return known;
}
