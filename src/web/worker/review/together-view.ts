import {
  coverageCircle,
  type DesignElement,
  designAxes,
  errorEllipse,
  type HolePath,
  interpolatePath,
  type Job,
  mean,
  type NorthEastDown,
  offsetFromLine,
  positionAt,
  type RunResult,
  reduceJob,
  type Verdict,
} from "#core";
import type { HoleRuns, RunCourse, RunDifference } from "../desk-review.ts";
import { groupBy } from "../group-by.ts";
import type { JobNow } from "../jobs/worked-job.ts";
import { runRows } from "../view/run-view.ts";
import { verdictOf } from "../view/verdict-of-element.ts";

/** The runs of an element hole by hole: their courses, and how the repeats of one hole differ. */
export function togetherView(now: JobNow, element: string): readonly HoleRuns[] | undefined {
  const { job } = now.read;
  const worked = now.results.get(element);
  const design = job?.elements.find(({ id }) => id === element);
  if (job === undefined || worked === undefined || design === undefined) return undefined;
  const results = new Map(worked.runs.map((run) => [run.runId, run]));
  return [...groupBy(runRows(now, element), ({ tubeId }) => tubeId ?? "")].map(([key, rows]) => {
    const tube = job.tubes.find(({ id, elementId }) => elementId === element && id === key);
    const hole: Hole = { design, top: tube?.head ?? design.head };
    const used = rows.flatMap(({ id }) => results.get(id) ?? []);
    return {
      tube: key === "" ? undefined : key,
      courses: rows.map((row): RunCourse => {
        const result = results.get(row.id);
        return {
          run: row.id,
          isLeftOut: row.readings > 0 && row.setAside === row.readings,
          judgeable: result?.judgeable ?? false,
          operator: row.operator,
          startedAt: row.startedAt,
          ...courseOf(hole, result?.path),
          alone: used.length > 1 && result !== undefined ? alone(job, element, used, row.id) : undefined,
        };
      }),
      differences: pairsOf(used).flatMap(([first, second]) => differenceOf(hole, first, second) ?? []),
    };
  });
}

interface Hole {
  readonly design: DesignElement;
  readonly top: NorthEastDown;
}

function courseOf(hole: Hole, path: HolePath | undefined): Pick<RunCourse, "levelM" | "alongM" | "acrossM"> {
  const axes = designAxes(hole.design);
  const points = path === undefined ? [] : Array.from({ length: path.count }, (_, i) => positionAt(path, i));
  const offsets = points.map((point) => offsetFromLine(hole.top, axes, point));
  return {
    levelM: points.map(({ down }) => -down),
    alongM: offsets.map(({ along }) => along),
    acrossM: offsets.map(({ across }) => across),
  };
}

/** The verdict if of the runs of this hole only one counted. */
function alone(job: Job, element: string, hole: readonly RunResult[], run: string): Verdict | undefined {
  const others = new Set(hole.map(({ runId }) => runId).filter((id) => id !== run));
  const fewer = { ...job, runs: job.runs.filter(({ id }) => !others.has(id)) };
  const result = reduceJob(fewer, { only: [element] }).elements[0];
  return result && verdictOf(result);
}

const pairsOf = (runs: readonly RunResult[]): readonly (readonly [RunResult, RunResult])[] =>
  runs.flatMap((first, i) => runs.slice(i + 1).map((second) => [first, second] as const));

/** The second run less the first, at the stations of the first that both reach. */
function differenceOf(hole: Hole, first: RunResult, second: RunResult): RunDifference | undefined {
  const [from, to] = [first.path, second.path];
  if (from === undefined || to === undefined) return undefined;
  const axes = designAxes(hole.design);
  const rows = Array.from(from.depthM, (depthM, i) => ({ i, point: interpolatePath(to, depthM).position }))
    .filter(({ point }) => Number.isFinite(point.down))
    .map(({ i, point }) => {
      const start = positionAt(from, i);
      return { i, levelM: -start.down, ...offsetFromLine(start, axes, point) };
    });
  const worst = rows.reduce<(typeof rows)[number] | undefined>(
    (most, row) => (most === undefined || row.offset > most.offset ? row : most),
    undefined,
  );
  if (worst === undefined) return undefined;
  const column = (of: (row: (typeof rows)[number]) => number) => Float64Array.from(rows, of);
  const [along, across] = [column((row) => row.along), column((row) => row.across)];
  const [meanAlongM, meanAcrossM] = [mean(along), mean(across)];
  const squares = rows.reduce(
    (sum, row) => sum + (row.along - meanAlongM) ** 2 + (row.across - meanAcrossM) ** 2,
    0,
  );
  const expectedM = expectedAt(first, second, worst.i);
  return {
    first: first.runId,
    second: second.runId,
    levelM: rows.map(({ levelM }) => levelM),
    alongM: [...along],
    acrossM: [...across],
    stations: rows.length,
    meanAlongM,
    meanAcrossM,
    scatterM: rows.length > 1 ? Math.sqrt(squares / (2 * (rows.length - 1))) : Number.NaN,
    largestM: worst.offset,
    largestLevelM: worst.levelM,
    expectedM,
    agree: worst.offset <= expectedM,
  };
}

/** Radius that holds the difference with 95 % if the two runs share no error: what they do share makes it smaller. */
function expectedAt(first: RunResult, second: RunResult, station: number): number {
  const depthM = first.path?.depthM[station] ?? Number.NaN;
  const depths = second.path?.depthM ?? new Float64Array();
  const nearest = depths.reduce(
    (best, depth, i) => (Math.abs(depth - depthM) < Math.abs(depths[best]! - depthM) ? i : best),
    0,
  );
  const [one, other] = [first.covariances[station], second.covariances[nearest]];
  if (one === undefined || other === undefined) return Number.NaN;
  const { semiMajor, semiMinor } = errorEllipse({
    nn: one[0] + other[0],
    ne: one[1] + other[1],
    ee: one[3] + other[3],
  });
  return coverageCircle(semiMajor, semiMinor, 0.95);
}
