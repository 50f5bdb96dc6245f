import type { HistoryRow } from "../desk.ts";
import type { JobLog } from "../jobs/job-log.ts";

/** Entries of a job or of one thing of it, the newest arrival first. */
export function historyRows(
  { entries, state }: JobLog,
  thing: string | undefined,
  from: number,
  count: number,
): readonly HistoryRow[] {
  const wanted = thing === undefined ? undefined : new Set(state.things[thing]?.entries ?? []);
  return entries
    .map((entry, i) => ({ entry, arrival: i + 1 }))
    .filter(({ entry }) => wanted === undefined || wanted.has(entry.id))
    .reverse()
    .slice(from, from + count)
    .map(({ entry: { id, device, sequence, author, clock, kind, body }, arrival }) => ({
      id,
      arrival,
      device,
      sequence,
      author,
      wall: clock.wall,
      kind,
      body,
    }));
}
