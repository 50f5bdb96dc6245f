import type { HolePath } from "../path/hole-path.ts";
import type { SourceId } from "../uncertainty/error-source.ts";
import { standardDraws } from "../uncertainty/standard-draws.ts";
import { axisOfElement, type ElementAxis, type ElementWork, type WorkedRun } from "./axis-of-element.ts";
import { tubeOffset } from "./element-axis.ts";
import { type RunUncertainty, tieKey } from "./propagate-run.ts";
import { reduceRun } from "./reduce-run.ts";
import { type RowErrors, withErrors } from "./run-errors.ts";

/** How many trials, and from which seed. The same seed gives the same trials, however they are shared out. */
export interface TrialOptions {
  /**
   * asked for: every verdict comes from them, "auto": as many as make the result stand; undefined: only where nothing better
   * is known, as many as settle the verdict
   */
  readonly trials: number | "auto" | undefined;
  readonly seed: number;
}

/**
 * One trial: the element as it would have come out with other errors of the same budget.
 *
 * Every error is put on what was read and goes through the unchanged computation. The number for each source is found by its name,
 * the seed and the trial, so elements that share a calibration share its error.
 *
 * @param work runs with their first-order uncertainty, for the budget. @param trial whole number from 0. @returns undefined where the moved readings give no axis.
 *
 * Frame: site NED. Source: rule E4; JCGM 101:2008 (from memory).
 */
export function trialAxis(
  work: ElementWork,
  tubeStandardM: number,
  seed: number,
  trial: number,
): ElementAxis | undefined {
  const moved = work.runs.map((worked) => trialRun(worked, seed, trial));
  const tubes = work.tubes.map((tube) => {
    if (tubeStandardM === 0) return tube;
    const name = `tube-position ${tube.elementId} ${tube.id}`;
    const [north, east] = standardDraws("normal", seed, name, trial, 2);
    const offset = tubeOffset(tube, work.tubes);
    // the tube stays where it was surveyed; its place in the element is what is in doubt
    const offsetInElement = {
      north: offset.north + tubeStandardM * north!,
      east: offset.east + tubeStandardM * east!,
    };
    return { ...tube, offsetInElement };
  });
  const found = axisOfElement({ ...work, tubes, runs: moved }, () => undefined);
  if (found === undefined) return undefined;
  const path = withHiddenCourse(found.axis.path, work.runs, found, seed, trial);
  return { ...found, axis: { ...found.axis, path } };
}

function trialRun(worked: WorkedRun, seed: number, trial: number): WorkedRun {
  const { run, context, uncertainty } = worked;
  if (uncertainty === undefined) return worked;
  const { budget, shared } = uncertainty;
  const values = new Map<SourceId, number>(
    shared
      .filter(({ tie }) => tie === undefined)
      .map(({ source, key }) => {
        const { value, distribution } = budget.get(source)!;
        return [source, value * standardDraws(distribution, seed, key, trial, 1)[0]!];
      }),
  );
  const tiesRad = run.ties.map(
    (tie, i) => tie.standardUncertaintyRad * standardDraws("normal", seed, tieKey(run, i), trial, 1)[0]!,
  );
  const off = withErrors(run, context, values, { rows: rowErrors(run, budget, seed, trial), tiesRad });
  const reduced = reduceRun(off.run, off.context);
  return { ...off, reduced, uncertainty: undefined };
}

function rowErrors(
  run: WorkedRun["run"],
  budget: RunUncertainty["budget"],
  seed: number,
  trial: number,
): RowErrors {
  const { count, timeS, seTiltXRad, seTiltYRad } = run.readings;
  const value = (id: SourceId) => budget.get(id)?.value ?? 0;
  const perRow = (id: SourceId, which = "") =>
    standardDraws(budget.get(id)?.distribution ?? "normal", seed, `${id}${which} ${run.id}`, trial, count);
  const noise = value("tilt-noise");
  const seating = value("seating");
  const tilt = (axis: "x" | "y", se: Float64Array) => {
    const ofNoise = perRow("tilt-noise", ` ${axis}`);
    const ofSeat = perRow("seating", ` ${axis}`);
    return ofNoise.map((z, i) => z * (Number.isNaN(se[i]!) ? noise : se[i]!) + seating * ofSeat[i]!);
  };
  const plain = (id: SourceId) => perRow(id).map((z) => z * value(id));
  return {
    tiltXRad: tilt("x", seTiltXRad),
    tiltYRad: tilt("y", seTiltYRad),
    turnRad: walked(perRow("gyro-noise"), timeS, value("gyro-noise")),
    depthM: plain("depth-reading"),
    inclinationRad: plain("inclination-noise"),
    azimuthRad: plain("azimuth-noise"),
  };
}

/** A random walk over the times of the rows. */
function walked(steps: Float64Array, timeS: Float64Array, walk: number): Float64Array {
  let sum = 0;
  return steps.map((z, i) => {
    const seconds = i === 0 ? 0 : timeS[i]! - timeS[i - 1]!;
    if (seconds > 0) sum += z * walk * Math.sqrt(seconds);
    return sum;
  });
}

/** Adds what the stretches between stops may hide, each run with its share in the axis. */
function withHiddenCourse(
  path: HolePath,
  runs: readonly WorkedRun[],
  found: ElementAxis,
  seed: number,
  trial: number,
): HolePath {
  const moves = found.shares.flatMap(({ worked, share }) => {
    const uncertainty = runs.find(({ run }) => run.id === worked.run.id)?.uncertainty;
    if (uncertainty === undefined) return [];
    const { path: stations, stops } = uncertainty;
    const name = `unread-stretch ${worked.run.id}`;
    const chance = standardDraws("normal", seed, name, trial, stations.count);
    return [{ stations, share, chance, hidden: stops.hidden }];
  });
  const shifted = (positions: Float64Array, axis: "north" | "east" | "down") => {
    const sums = moves.map(({ hidden, chance }) => runningSum(hidden[axis], chance));
    return positions.map((position, i) =>
      moves.reduce(
        (moved, { stations, share }, k) =>
          moved + share * atDepth(stations.depthM, sums[k]!, path.depthM[i]!),
        position,
      ),
    );
  };
  return {
    ...path,
    northM: shifted(path.northM, "north"),
    eastM: shifted(path.eastM, "east"),
    downM: shifted(path.downM, "down"),
  };
}

function runningSum(standard: Float64Array, chance: Float64Array): Float64Array {
  let sum = 0;
  return standard.map((value, i) => {
    sum += value * chance[i]!;
    return sum;
  });
}

/** Value of the station nearest in depth: the sums change little from stop to stop. */
function atDepth(depthM: Float64Array, values: Float64Array, depth: number): number {
  let low = 0;
  let high = depthM.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (depthM[middle]! < depth) low = middle + 1;
    else high = middle;
  }
  const above = Math.max(low - 1, 0);
  return Math.abs(depthM[above]! - depth) < Math.abs(depthM[low]! - depth) ? values[above]! : values[low]!;
}
