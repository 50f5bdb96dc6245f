import type { Issue } from "#core";
import { type JsonObject, type JsonValue, type ThingState, thingKey } from "#records";
import type { ReadingsTable, RunDetail, RunRow } from "../desk.ts";
import type { JobNow } from "../jobs/worked-job.ts";

/** Every run of the job or of one element, those that cannot be worked out too, in the order of the job. */
export function runRows(now: JobNow, element?: string): readonly RunRow[] {
  const isWanted = (run: { readonly elementId: string }) =>
    element === undefined || run.elementId === element;
  const { job, unusableRuns } = now.read;
  const resultOf = new Map(
    [...now.results.values()].flatMap(({ runs }) => runs.map((run) => [run.runId, run] as const)),
  );
  const rowOf = (row: Omit<RunRow, "readings" | "setAside">): RunRow => {
    const thing = now.log.state.things[thingKey("run", row.id)];
    return { ...row, readings: countReadings(thing), setAside: countAside(thing) };
  };
  const usable = (job?.runs ?? []).filter(isWanted).map((run) =>
    rowOf({
      id: run.id,
      elementId: run.elementId,
      tubeId: run.tubeId,
      instrumentId: run.instrumentId,
      operator: run.operator,
      startedAt: run.startedAt,
      isUsable: true,
      findings: resultOf.get(run.id)?.findings ?? [],
    }),
  );
  const unusable = unusableRuns.filter(isWanted).map(({ runId, elementId, tubeId, findings }) =>
    rowOf({
      id: runId,
      elementId,
      tubeId,
      instrumentId: "",
      operator: undefined,
      startedAt: undefined,
      isUsable: false,
      findings: findings as readonly Issue[],
    }),
  );
  return [...usable, ...unusable];
}

/** All about one run; undefined if the job has none of that name. */
export function runDetail(now: JobNow, id: string): RunDetail | undefined {
  const row = runRows(now).find((each) => each.id === id);
  if (row === undefined) return undefined;
  return {
    row,
    run: now.read.job?.runs.find((each) => each.id === id),
    result: now.results.get(row.elementId)?.runs.find((each) => each.runId === id),
    table: readingsTable(now.log.state.things[thingKey("run", id)]),
  };
}

/** Readings of a run as they were written down: every row of every entry, those that were set aside too. */
export function readingsTable(thing: ThingState | undefined): ReadingsTable {
  const entries = (thing?.lists["readings"] ?? []).map(({ value, by }) => ({
    entry: by.entry,
    columns: ((value as JsonObject)["columns"] ?? {}) as Readonly<Record<string, readonly Cell[]>>,
  }));
  const columns = [...new Set(entries.flatMap((entry) => Object.keys(entry.columns)))];
  const rows = entries.flatMap(({ entry, columns: held }) => {
    const count = Object.values(held)[0]?.length ?? 0;
    return Array.from({ length: count }, (_, row) => ({
      place: { entry, row },
      cells: columns.map((column) => held[column]?.[row] ?? null),
      aside: asideOf(thing, `row/${entry}/${row}`),
    }));
  });
  return { columns, rows };
}

const countReadings = (thing: ThingState | undefined): number =>
  (thing?.lists["readings"] ?? []).reduce((sum, { value }) => {
    const columns = (value as JsonObject)["columns"] as Readonly<Record<string, readonly Cell[]>> | undefined;
    return sum + (Object.values(columns ?? {})[0]?.length ?? 0);
  }, 0);

const countAside = (thing: ThingState | undefined): number =>
  Object.keys(thing?.fields ?? {}).filter(
    (field) => field.startsWith("row/") && asideOf(thing, field) !== undefined,
  ).length;

type Cell = string | number | null;

function asideOf(thing: ThingState | undefined, field: string): ReadingsTable["rows"][number]["aside"] {
  const value = thing?.fields[field]?.at(-1);
  const said = value?.value as { readonly aside?: JsonValue; readonly reason?: JsonValue } | null | undefined;
  const by = value?.by.at(-1);
  if (said?.aside !== true || by === undefined) return undefined;
  return { reason: String(said.reason ?? ""), author: by.author, wall: by.wall };
}
