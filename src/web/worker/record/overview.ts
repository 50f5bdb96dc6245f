import type { SurveyRun, Verdict } from "#core";
import { type JobState, type JsonObject, thingKey } from "#records";
import type { ElementRow } from "../desk.ts";
import type { OverviewPart, OverviewRow, OverviewView } from "../desk-record.ts";
import { groupBy } from "../group-by.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { elementRow, elementsInConflict } from "../view/job-view.ts";
import { shareOf } from "./share.ts";

const MOST_WORST = 12;
const NEEDS: Partial<Readonly<Record<Verdict, number>>> = { outside: 2, "too-close-to-call": 1 };

/** Progress of a job, and where in it the elements outside of their allowance are. */
export function overview(now: JobNow): OverviewView {
  const conflicting = elementsInConflict(now);
  const job = now.read.job;
  const runsOf = groupBy(job?.runs ?? [], ({ elementId }) => elementId);
  const rows = (job?.elements ?? []).map((element) =>
    elementRow(element, runsOf.get(element.id)?.length ?? 0, now.results.get(element.id), conflicting),
  );
  const counts = { within: 0, "too-close-to-call": 0, outside: 0, "not-judged": 0 };
  for (const { verdict } of rows) if (verdict !== undefined) counts[verdict]++;
  const judged = rows.filter(isJudged).length;
  const part = (namesOf: (row: ElementRow, runs: readonly SurveyRun[]) => readonly string[]) =>
    partRows(rows, (row) => namesOf(row, runsOf.get(row.id) ?? []));
  const parts: Record<OverviewPart, readonly OverviewRow[]> = {
    rig: part((row, runs) => rigsOf(now.log.state, row.id, runs)),
    crew: part((_row, runs) => runs.map(({ operator }) => operator ?? "")),
    week: part((_row, runs) => runs.slice(0, 1).map(({ startedAt }) => weekOf(startedAt))),
    probe: part((_row, runs) => runs.map(({ instrumentId }) => instrumentId)),
    group: part((row) => [row.group ?? ""]),
  };
  return {
    elements: rows.length,
    measured: rows.filter(({ runs }) => runs > 0).length,
    judged,
    counts,
    whole: shareOf(counts.outside, judged),
    // weeks in their order: a trend is read along time
    parts: { ...parts, week: parts.week.toSorted((a, b) => (a.name < b.name ? -1 : 1)) },
    worst: worstOf(rows),
  };
}

const isJudged = ({ verdict }: ElementRow): boolean => verdict !== undefined && verdict !== "not-judged";

/** An element that two crews have measured stands with both; one without runs stands where nothing is said. */
function partRows(
  rows: readonly ElementRow[],
  namesOf: (row: ElementRow) => readonly string[],
): readonly OverviewRow[] {
  const named = rows.flatMap((row) => {
    const names = [...new Set(namesOf(row))];
    return (names.length === 0 ? [""] : names).map((name) => ({ name, row }));
  });
  return [...groupBy(named, ({ name }) => name)]
    .map(([name, all]) => {
      const judged = all.filter(({ row }) => isJudged(row)).length;
      const outside = all.filter(({ row }) => row.verdict === "outside").length;
      const measured = all.filter(({ row }) => row.runs > 0).length;
      return { name, elements: all.length, measured, ...shareOf(outside, judged) };
    })
    .sort(
      (a, b) =>
        Number(a.name === "") - Number(b.name === "") ||
        (b.share || 0) - (a.share || 0) ||
        b.judged - a.judged ||
        (a.name < b.name ? -1 : 1),
    );
}

/** The rig as the element or the settings of a run name it. */
function rigsOf(state: JobState, element: string, runs: readonly SurveyRun[]): readonly string[] {
  const ofElement = state.things[thingKey("element", element)]?.fields["rig"]?.at(-1)?.value;
  if (typeof ofElement === "string" && ofElement !== "") return [ofElement];
  return runs.flatMap(({ id }) => {
    const opened = state.things[thingKey("run", id)]?.fields["opened"]?.at(-1)?.value as JsonObject | null;
    const rig = (opened?.["settings"] as JsonObject | undefined)?.["rig"];
    return typeof rig === "string" && rig !== "" ? [rig] : [];
  });
}

const DAY_MS = 86_400_000;

/** "2026-W10", the week of the calendar date as it was written. Source: ISO 8601:2004, 3.2.2 (from memory). */
export function weekOf(startedAt: string | undefined): string {
  const [, date] = /^(\d{4}-\d{2}-\d{2})/.exec(startedAt ?? "") ?? [];
  if (date === undefined) return "";
  const day = Date.parse(`${date}T00:00:00Z`);
  if (!Number.isFinite(day)) return "";
  // the week belongs to the year in which its Thursday lies
  const weekday = (new Date(day).getUTCDay() + 6) % 7;
  const thursday = new Date(day + (3 - weekday) * DAY_MS);
  const year = thursday.getUTCFullYear();
  const week = 1 + Math.floor((thursday.getTime() - Date.UTC(year, 0, 1)) / (7 * DAY_MS));
  return `${year}-W${String(week).padStart(2, "0")}`;
}

/** Those that need somebody: the worst verdict first, and of equal ones the furthest over its limit. */
function worstOf(rows: readonly ElementRow[]): readonly string[] {
  const need = ({ verdict }: ElementRow) => (verdict === undefined ? 0 : (NEEDS[verdict] ?? 0));
  const over = ({ deciding }: ElementRow) => {
    const ratio = deciding === undefined ? 0 : deciding.value / deciding.limit;
    return Number.isFinite(ratio) ? ratio : 0;
  };
  return rows
    .filter((row) => need(row) > 0)
    .toSorted((a, b) => need(b) - need(a) || over(b) - over(a))
    .slice(0, MOST_WORST)
    .map(({ id }) => id);
}
