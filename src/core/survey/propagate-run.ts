import type { Calibration, CalibrationKind } from "../calibration/calibration.ts";
import { layOutRun } from "../correction/passes.ts";
import type { HolePath } from "../path/hole-path.ts";
import type { HeadingReference, SurveyRun } from "../readings/survey-run.ts";
import type { Budget, BudgetEntry } from "../uncertainty/budget.ts";
import { type Repeat, type SourceId, sourceKind, valueSources } from "../uncertainty/error-source.ts";
import { hiddenCourse } from "../uncertainty/hidden-course.ts";
import type { HeadingWalk, StopErrors } from "../uncertainty/random-effects.ts";
import { resolveBudget } from "../uncertainty/resolve-budget.ts";
import { type ReducedRun, reduceRun, type StationRow } from "./reduce-run.ts";
import { classOf, type RunContext } from "./run-context.ts";
import { withErrors } from "./run-errors.ts";
import type { Effect } from "./uncertain-axis.ts";

/** What one standard value of a source moves every station by, metres. Runs that share the key share the value. */
export interface SharedEffect {
  readonly source: SourceId;
  /** names what the value belongs to: a calibration, an instrument, a hole, the job */
  readonly key: string;
  /** place of the tie whose heading is off; undefined for everything else */
  readonly tie: number | undefined;
  readonly north: Float64Array;
  readonly east: Float64Array;
  readonly down: Float64Array;
}

/** First-order uncertainty of one run. Stations are those of its path. */
export interface RunUncertainty {
  readonly path: HolePath;
  readonly budget: Budget;
  readonly shared: readonly SharedEffect[];
  readonly stops: StopErrors;
  /** effects at each station, kept once they are asked for (see `effectsOf`): rows, runs and verdicts ask for the same */
  readonly kept: (readonly Effect[] | undefined)[];
}

/** Part of its standard value by which a source is moved to see its effect: small enough to be straight. */
const NUDGE = 0.1;

/**
 * First-order uncertainty of a run, by working it out again with each source moved a little.
 *
 * @param reduced the run as it was worked out, with a path. @param budget standard values.
 *
 * Frame: site NED. Source: rules E2, E3.
 * Checked against: Monte Carlo through the same pipeline and simulated truth (test/jobs).
 */
export function propagateRun(
  run: SurveyRun,
  context: RunContext,
  reduced: ReducedRun,
  budget: Budget = budgetOfRun(run, context),
): RunUncertainty | undefined {
  const { path } = reduced.result;
  if (path === undefined) return undefined;
  // Near the origin the small differences keep all their digits.
  const atOrigin = { ...context, top: { north: 0, east: 0, down: 0 } };
  const base = reduceRun(run, atOrigin).result.path!;
  const shared: SharedEffect[] = [];
  for (const entry of budget.values()) {
    if (!valueSources.includes(entry.source) || !(entry.value > 0)) continue;
    shared.push(headEffect(run, context, base, entry) ?? sharedEffect(run, atOrigin, base, entry));
  }
  for (const [i, tie] of run.ties.entries())
    if (tie.standardUncertaintyRad > 0) shared.push(tieEffect(run, atOrigin, base, tie, i));
  return { path, budget, shared, stops: stopErrors(run, path, reduced.rows, budget), kept: [] };
}

export const budgetOfRun = (run: SurveyRun, context: RunContext): Budget =>
  resolveBudget({
    run,
    instrumentClass: classOf(context),
    ofInstrument: context.instrument?.declaredErrors ?? [],
    calibrations: context.calibrations,
    evidence: context.evidence ?? [],
  });

/** A head that is off moves the whole hole by as much. */
function headEffect(
  run: SurveyRun,
  context: RunContext,
  base: HolePath,
  { source, value }: BudgetEntry,
): SharedEffect | undefined {
  const all = (moved: number) => new Float64Array(base.count).fill(moved);
  const key = sharedKey(source, run, context);
  const none = { source, key, tie: undefined, north: all(0), east: all(0), down: all(0) };
  if (source === "head-north") return { ...none, north: all(value) };
  if (source === "head-east") return { ...none, east: all(value) };
  if (source === "head-level") return { ...none, down: all(-value) };
  return undefined;
}

function sharedEffect(
  run: SurveyRun,
  context: RunContext,
  base: HolePath,
  { source, value }: BudgetEntry,
): SharedEffect {
  const off = withErrors(run, context, new Map([[source, value * NUDGE]]));
  return { source, key: sharedKey(source, run, context), tie: undefined, ...movedBy(off, base) };
}

/** Every tie was set by itself: its error is nobody else's. */
function tieEffect(
  run: SurveyRun,
  context: RunContext,
  base: HolePath,
  { standardUncertaintyRad }: HeadingReference,
  tie: number,
): SharedEffect {
  const tiesRad = run.ties.map((_, i) => (i === tie ? standardUncertaintyRad * NUDGE : 0));
  const off = withErrors(run, context, new Map(), { tiesRad });
  return { source: "closing-heading", key: tieKey(run, tie), tie, ...movedBy(off, base) };
}

/** Names the error of one tie. */
export const tieKey = (run: SurveyRun, tie: number): string => `closing-heading run ${run.id} tie ${tie}`;

/** What a whole standard value moves each station by, from the run read with a part of it. */
function movedBy(
  off: ReturnType<typeof withErrors>,
  base: HolePath,
): Pick<SharedEffect, "north" | "east" | "down"> {
  const moved = reduceRun(off.run, off.context).result.path;
  const change = (axis: "northM" | "eastM" | "downM"): Float64Array =>
    base[axis].map((position, i) =>
      // counted from the toe, so that a station more or less at the very top does not shift the rest
      moved === undefined
        ? Number.NaN
        : ((moved[axis][moved.count - base.count + i] ?? Number.NaN) - position) / NUDGE,
    );
  return { north: change("northM"), east: change("eastM"), down: change("downM") };
}

const sharedKey = (source: SourceId, run: SurveyRun, context: RunContext): string =>
  `${source} ${keyOf(sourceKind(source)!.repeats, source, run, context)}`;

/** Calibration whose own error a source is: runs that used the same one share it. */
const CALIBRATED_BY: Partial<Record<SourceId, CalibrationKind>> = {
  "tilt-zero-x": "tilt-zero",
  "tilt-zero-y": "tilt-zero",
  "gyro-bias": "gyro-zero",
  "depth-scale": "depth-scale",
};

function keyOf(repeats: Repeat, source: SourceId, run: SurveyRun, context: RunContext): string {
  switch (repeats) {
    case "job":
      return "job";
    case "instrument":
      return `instrument ${run.instrumentId}`;
    case "hole":
      return `hole ${run.elementId} ${run.tubeId ?? ""}`;
    case "calibration": {
      const kind = CALIBRATED_BY[source];
      const used = context.calibrations.filter((each: Calibration) => each.kind === kind);
      const last = used[used.length - 1];
      return last === undefined ? `run ${run.id}` : `calibration ${last.id}`;
    }
    default:
      return `run ${run.id}`;
  }
}

function stopErrors(run: SurveyRun, path: HolePath, rows: readonly StationRow[], budget: Budget): StopErrors {
  const value = (id: SourceId) => budget.get(id)?.value ?? 0;
  // a station at the top that carries the first reading upwards is that reading once more
  const added = path.count - 1 - rows.reduce((most, row) => Math.max(most, row.station), 0);
  const shares = new Float64Array(path.count);
  const noiseSquares = new Float64Array(path.count);
  for (const { station, row, share } of rows) {
    const at = station + added;
    shares[at]! += share * share;
    noiseSquares[at]! += share * share * noiseVariance(run, row, value("tilt-noise"));
  }
  const scatter = (standard: number) => shares.map((share) => standard * Math.sqrt(share));
  const noise = noiseSquares.map(Math.sqrt);
  const sines = shares.map((_, i) => Math.hypot(path.tangentNorth[i]!, path.tangentEast[i]!));
  const ofAzimuth = scatter(value("azimuth-noise")).map((standard, i) => standard * sines[i]!);
  const tangent: StopErrors["tangent"] =
    run.measures === "inclination-azimuth"
      ? [
          { source: "inclination-noise", standard: scatter(value("inclination-noise")), acts: "lean" },
          { source: "azimuth-noise", standard: ofAzimuth, acts: "across" },
        ]
      : [
          { source: "tilt-noise", standard: noise, acts: "both" },
          { source: "seating", standard: scatter(value("seating")), acts: "both" },
        ];
  // of one component: what acts in one direction only gives each half of its variance
  const all = shares.map((_, i) =>
    Math.hypot(...tangent.map(({ standard, acts }) => standard[i]! / (acts === "both" ? 1 : Math.SQRT2))),
  );
  return {
    tangent,
    depthM: scatter(value("depth-reading")),
    walk: headingWalk(run, rows, added, value("gyro-noise")),
    hidden: hiddenCourse(path, all, added > 0),
    carriedTop: added > 0,
  };
}

/** Variance of one reading: its own standard errors where the file gives them, else the budget's. */
function noiseVariance(run: SurveyRun, row: number, standard: number): number {
  const own = [run.readings.seTiltXRad[row]!, run.readings.seTiltYRad[row]!].filter(Number.isFinite);
  if (own.length === 0) return standard * standard;
  return own.reduce((sum, se) => sum + se * se, 0) / own.length;
}

/** The walk between the first and the last known heading: with ties between them a little less than this is left of it. */
function headingWalk(
  run: SurveyRun,
  rows: readonly StationRow[],
  added: number,
  walk: number,
): HeadingWalk | undefined {
  if (walk === 0) return undefined;
  const { timeS, leg, face, depthM } = run.readings;
  const layout = layOutRun(leg, face, depthM);
  const known = [
    ...(run.opening === undefined ? [] : [layout.openingRow]),
    ...layout.tieRows.slice(0, run.ties.length),
    ...(run.closing === undefined ? [] : [layout.closingRow]),
  ].map((row) => timeS[row]!);
  const fromS = Math.min(...known);
  const lastS = Math.max(...known);
  if (!Number.isFinite(fromS + lastS)) return undefined;
  const closes = lastS > fromS && run.closureModel !== "none";
  const voices = rows
    .filter(({ row }) => Number.isFinite(timeS[row]!))
    .map(({ station, row, share }) => ({ station: station + added, timeS: timeS[row]!, share }));
  return { walk, fromS, toS: closes ? lastS : undefined, voices };
}
