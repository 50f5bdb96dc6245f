import type { Readings } from "#core";
import type { Finder } from "../finding/finder.ts";
import type { HeadingOf } from "./check-readings.ts";

/** A step this many times the usual one is told as a gap; it is judged later, against the station limit. */
const LONG_STEP = 3;
/** Fewer steps than this tell nothing about the usual one. */
const LEAST_STEPS = 4;

interface Station {
  readonly depth: number;
  readonly line: number;
}
/** The stations of one way through the hole on one face, in the order of the file. */
interface Pass {
  readonly downwards: boolean;
  readonly stations: Station[];
}

/**
 * Follows the depth through the rows of a run: repeated stations, turning back within a leg, and long steps.
 *
 * A station is repeated when a depth comes twice in the same leg on the same face. Rows without a leg belong to the way
 * down as far as the deepest of their face, and to the way up after it. Depths are compared as the file gives them,
 * metres or counts. Rows at the top, ties and the closing row of a run without legs stand apart.
 *
 * Errors: formats.station-repeated, formats.depth-reversal. Warning: formats.depth-step.
 */
export function checkDepths(readings: Readings, heading: HeadingOf, found: Finder): void {
  const inMetres = readings.depthM.some(Number.isFinite);
  const depths = inMetres ? readings.depthM : readings.depthCounts;
  const field = heading(inMetres ? "depth_m" : "count");
  const passes = passesOf(readings, depths);
  for (const pass of passes) followPass(pass, field, found);
  tellLongSteps(passes, field, found);
}

function passesOf(readings: Readings, depths: Float64Array): Pass[] {
  const { leg, face, count } = readings;
  const rows = Array.from({ length: count }, (_, i) => i).filter(
    (i) =>
      !Number.isNaN(depths[i]!) && (leg[i] === "down" || leg[i] === "up" || (leg[i] === "" && !isClosing(i))),
  );
  // The first deepest row of each face ends the way down; one reading repeated there at the end is no way up.
  const deepest = new Map<number, number>();
  for (const i of rows) {
    const best = deepest.get(face[i]!);
    if (leg[i] === "" && (best === undefined || depths[i]! > depths[best]!)) deepest.set(face[i]!, i);
  }
  const comesUp = new Set(
    rows
      .filter(
        (i) => leg[i] === "" && i > deepest.get(face[i]!)! && depths[i]! < depths[deepest.get(face[i]!)!]!,
      )
      .map((i) => face[i]!),
  );
  const passes = new Map<string, Pass>();
  for (const i of rows) {
    const upwards = leg[i] === "up" || (leg[i] === "" && comesUp.has(face[i]!) && i > deepest.get(face[i]!)!);
    const name = `${leg[i]} ${face[i]} ${upwards}`;
    const pass = passes.get(name) ?? { downwards: !upwards, stations: [] };
    passes.set(name, pass);
    pass.stations.push({ depth: depths[i]!, line: readings.line[i]! });
  }
  return [...passes.values()];

  /** A run without legs may end with a row at the top, where it closes. */
  function isClosing(i: number): boolean {
    return i === count - 1 && i > 1 && depths[i]! < depths[i - 1]! && depths[i]! <= depths[0]!;
  }
}

function followPass({ downwards, stations }: Pass, field: string, found: Finder): void {
  const seen = new Map<number, number>();
  let furthest = Number.NaN;
  for (const { depth, line } of stations) {
    const first = seen.get(depth);
    const back = downwards ? depth < furthest : depth > furthest;
    if (first !== undefined) {
      const values = { found: depth, expected: "each station once in a leg on a face", other: first };
      found.error("formats.station-repeated", { line, field }, values);
    } else if (back) {
      const values = { found: depth, expected: downwards ? "deeper" : "higher", other: furthest };
      found.error("formats.depth-reversal", { line, field }, values);
    }
    if (first === undefined) seen.set(depth, line);
    if (!back) furthest = depth;
  }
}

function tellLongSteps(passes: readonly Pass[], field: string, found: Finder): void {
  const steps = passes.flatMap(({ stations }) =>
    stations.slice(1).map(({ depth, line }, i) => ({ from: stations[i]!.depth, to: depth, line })),
  );
  const sizes = steps.map(({ from, to }) => Math.abs(to - from)).filter((size) => size > 0);
  if (sizes.length < LEAST_STEPS) return;
  const usual = sizes.toSorted((a, b) => a - b)[sizes.length >> 1]!;
  for (const { from, to, line } of steps) {
    if (!(Math.abs(to - from) > LONG_STEP * usual)) continue;
    const values = { found: `${from} to ${to}`, expected: `steps of about ${usual}` };
    found.warning("formats.depth-step", { line, field }, values);
  }
}
