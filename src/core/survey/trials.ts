import { hashText } from "../num/hash-text.ts";
import { fillNormals, fillUniforms, type RandomStream } from "../num/random-stream.ts";
import type { HolePath } from "../path/hole-path.ts";
import type { BudgetEntry } from "../uncertainty/budget.ts";
import type { DistributionShape, SourceId } from "../uncertainty/error-source.ts";
import { axisOfElement, type ElementAxis, type ElementWork, type WorkedRun } from "./axis-of-element.ts";
import { tubeOffset } from "./element-axis.ts";
import type { RunUncertainty } from "./propagate-run.ts";
import { reduceRun } from "./reduce-run.ts";
import { type RowErrors, withErrors } from "./run-errors.ts";

/** How many trials, and from which seed. The same seed gives the same trials, however they are shared out. */
export interface TrialOptions {
  /** asked for: every verdict comes from them; undefined: only where nothing better is known, as many as it takes */
  readonly trials: number | undefined;
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
    const [north, east] = normals(seed, `tube-position ${tube.elementId} ${tube.id}`, 2 * trial, 2);
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

function normals(seed: number, name: string, first: number, count: number): Float64Array {
  const out = new Float64Array(count);
  fillNormals({ seed, stream: hashText(name) }, first, out);
  return out;
}

function trialRun(worked: WorkedRun, seed: number, trial: number): WorkedRun {
  const { run, context, uncertainty } = worked;
  if (uncertainty === undefined) return worked;
  const { budget, shared } = uncertainty;
  const values = new Map<SourceId, number>(
    shared.map(({ source, key }) => [
      source,
      draw(budget.get(source)!, { seed, stream: hashText(key) }, trial),
    ]),
  );
  const rows = rowErrors(run, budget, seed, trial);
  const off = withErrors(run, context, values, rows);
  const reduced = reduceRun(off.run, off.context);
  return { ...off, reduced, uncertainty: undefined };
}

/** One value of a source with the standard deviation of the budget and the form of its distribution. */
function draw({ value, distribution }: BudgetEntry, random: RandomStream, trial: number): number {
  return value * standardDraw(distribution, random, trial);
}

/** A number with mean 0 and standard deviation 1. */
function standardDraw(distribution: DistributionShape, random: RandomStream, trial: number): number {
  const two = new Float64Array(2);
  if (distribution === "normal") {
    fillNormals(random, 2 * trial, two);
    return two[0]!;
  }
  fillUniforms(random, 2 * trial, two);
  const [a, b] = [two[0]!, two[1]!];
  switch (distribution) {
    case "rectangular":
      return Math.sqrt(3) * (2 * a - 1);
    case "triangular":
      return Math.sqrt(6) * (a + b - 1);
    case "arcsine":
      return Math.sqrt(2) * Math.cos(2 * Math.PI * a);
  }
}

function rowErrors(
  run: WorkedRun["run"],
  budget: RunUncertainty["budget"],
  seed: number,
  trial: number,
): RowErrors {
  const { count, timeS, seTiltXRad, seTiltYRad } = run.readings;
  const value = (id: SourceId) => budget.get(id)?.value ?? 0;
  const perRow = (name: string) => normals(seed, `${name} ${run.id}`, trial * count, count);
  const noise = value("tilt-noise");
  const seating = value("seating");
  const tilt = (axis: string, se: Float64Array) => {
    const ofNoise = perRow(`tilt-noise ${axis}`);
    const ofSeat = perRow(`seating ${axis}`);
    return ofNoise.map((z, i) => z * (Number.isNaN(se[i]!) ? noise : se[i]!) + seating * ofSeat[i]!);
  };
  return {
    tiltXRad: tilt("x", seTiltXRad),
    tiltYRad: tilt("y", seTiltYRad),
    turnRad: walked(perRow("gyro-noise"), timeS, value("gyro-noise")),
    depthM: perRow("depth-reading").map((z) => z * value("depth-reading")),
    inclinationRad: perRow("inclination-noise").map((z) => z * value("inclination-noise")),
    azimuthRad: perRow("azimuth-noise").map((z) => z * value("azimuth-noise")),
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
    const chance = normals(seed, `unread-stretch ${worked.run.id}`, trial * stations.count, stations.count);
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
