import type { Issue } from "#core";
import { type JsonObject, thingKey } from "#records";
import type { ReadingsTable } from "../desk.ts";
import type { RowChange, RunReview } from "../desk-review.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { elementRow, elementsInConflict } from "../view/job-view.ts";
import { runDetail } from "../view/run-view.ts";
import { readingsAcceptance } from "./acceptance.ts";
import { endOfRun } from "./inbox-view.ts";
import { entriesById } from "./log-lookup.ts";
import { readingSeries, shownColumns } from "./reading-series.ts";
import { runChecks } from "./run-checks.ts";

/** Everything that is needed to judge the readings of one run; undefined if the job has none of that name. */
export function runReview(now: JobNow, id: string): RunReview | undefined {
  const detail = runDetail(now, id);
  const design = now.read.job?.elements.find((each) => each.id === detail?.row.elementId);
  if (detail === undefined || design === undefined) return undefined;
  const { row, run, result, table } = detail;
  const columns = shownColumns(table, run?.measures);
  const findings: readonly Issue[] = row.findings;
  const inOrder = runsInOrder(now);
  const place = inOrder.indexOf(id);
  const later = [...inOrder.slice(place + 1), ...inOrder.slice(0, place)];
  return {
    row,
    measures: run?.measures,
    table,
    changes: rowChanges(now, id, table),
    columns,
    series: readingSeries(table, columns),
    checks: runChecks(result, findings, endOfRun(now, id, row.readings)),
    acceptance: readingsAcceptance(now, id),
    element: elementRow(design, inOrder.length, now.results.get(design.id), elementsInConflict(now)),
    before: inOrder[place - 1],
    after: inOrder[place + 1],
    nextWaiting: later.find((each) => readingsAcceptance(now, each).state !== "accepted"),
  };
}

/** Ids of all runs, element after element as the job lists them. */
export function runsInOrder({ read }: JobNow): readonly string[] {
  const runs = [
    ...(read.job?.runs ?? []),
    ...read.unusableRuns.map(({ runId, elementId }) => ({ id: runId, elementId })),
  ];
  const place = new Map(read.job?.elements.map(({ id }, i) => [id, i]));
  return runs
    .toSorted((a, b) => (place.get(a.elementId) ?? 0) - (place.get(b.elementId) ?? 0))
    .map(({ id }) => id);
}

function rowChanges(now: JobNow, run: string, table: ReadingsTable): RunReview["changes"] {
  const places = new Map(table.rows.map(({ place: { entry, row } }, i) => [`${entry}/${row}`, i]));
  const byId = entriesById(now.log);
  const changes: Record<number, RowChange[]> = {};
  for (const id of now.log.state.things[thingKey("run", run)]?.entries ?? []) {
    const entry = byId.get(id);
    if (entry?.kind !== "set-aside" && entry?.kind !== "put-back") continue;
    const { readings, rows, reason } = entry.body as JsonObject & { readonly rows: readonly number[] };
    const { author, clock, kind } = entry;
    const change = { author, wall: clock.wall, isAside: kind === "set-aside", reason: String(reason ?? "") };
    for (const row of rows) {
      const at = places.get(`${String(readings)}/${row}`);
      if (at !== undefined) changes[at] = [...(changes[at] ?? []), change];
    }
  }
  return changes;
}
