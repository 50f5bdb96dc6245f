import { thingKey } from "#records";
import type { InboxRow, InboxView, MissingEntries } from "../desk-review.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { countFindings } from "../view/job-view.ts";
import { runRows } from "../view/run-view.ts";
import { verdictOf } from "../view/verdict-of-element.ts";
import { readingsAcceptance } from "./acceptance.ts";
import { entriesById } from "./log-lookup.ts";

/** What has arrived and what is odd: waiting runs first, the most urgent of them first, then by the time they arrived. */
export function inboxView(now: JobNow): InboxView {
  const rows = runRows(now)
    .map((row): InboxRow => {
      const { id, elementId, tubeId, operator, startedAt, readings, setAside, isUsable } = row;
      const result = now.results.get(elementId)?.result;
      const { missing, isOpen } = endOfRun(now, id, readings);
      return {
        run: id,
        element: elementId,
        tube: tubeId,
        operator,
        startedAt,
        arrivedAt: lastWall(now, id),
        readings,
        setAside,
        missing,
        isOpen,
        isUsable,
        findings: countFindings(row.findings),
        verdict: result && verdictOf(result),
        acceptance: readingsAcceptance(now, id).state,
      };
    })
    .toSorted((a, b) => urgency(b) - urgency(a) || (timeOf(a) < timeOf(b) ? -1 : 1));
  const oldest = rows
    .filter(({ acceptance }) => acceptance !== "accepted")
    .reduce<InboxRow | undefined>(
      (first, row) => (first === undefined || timeOf(row) < timeOf(first) ? row : first),
      undefined,
    );
  const { devices, unread } = now.log.state;
  return {
    rows,
    oldest: oldest?.run,
    missing: Object.entries(devices).flatMap(([device, { missing }]): MissingEntries[] =>
      missing.map(({ from, to }) => ({ device, from, to })),
    ),
    unread: unread.length,
    forks: Object.values(devices).reduce((sum, { forks }) => sum + forks.length, 0),
  };
}

/** Rows that the end of a run names beside those that are here. */
export function endOfRun(
  { log }: JobNow,
  run: string,
  readings: number,
): { readonly missing: number; readonly isOpen: boolean } {
  const closed = log.state.things[thingKey("run", run)]?.fields["closed"]?.at(-1)?.value;
  const rows = (closed as { readonly rows?: unknown } | null | undefined)?.rows;
  return {
    missing: typeof rows === "number" ? Math.max(0, rows - readings) : 0,
    isOpen: closed === undefined || closed === null,
  };
}

/** What cannot be worked out, then Outside, then what is close, then what has findings; looked at already comes last. */
function urgency({ acceptance, isUsable, verdict, findings, missing }: InboxRow): number {
  if (acceptance === "accepted") return -1;
  if (!isUsable || findings.error > 0 || missing > 0) return 5;
  if (acceptance === "changed") return 4;
  if (verdict === "outside") return 3;
  if (verdict === "too-close-to-call") return 2;
  return verdict === "not-judged" || findings.warning > 0 ? 1 : 0;
}

const timeOf = ({ startedAt, arrivedAt, run }: InboxRow): string => `${startedAt ?? arrivedAt ?? ""} ${run}`;

function lastWall({ log }: JobNow, run: string): string | undefined {
  const last = log.state.things[thingKey("run", run)]?.entries.at(-1);
  return last === undefined ? undefined : entriesById(log).get(last)?.clock.wall;
}
