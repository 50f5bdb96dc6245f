import type { Readings } from "#core";
import type { Finder } from "../finding/finder.ts";
import type { HeadingOf } from "./check-readings.ts";

/** A step this many times the usual one is told as a gap; it is judged later, against the station limit. */
const LONG_STEP = 3;

interface Pass {
  readonly name: string;
  /** +1 downwards, -1 upwards, 0 not known yet */
  direction: number;
  previous: number;
  readonly seen: Map<number, number>;
}

/**
 * Follows the depth through the rows of a run: repeated stations, turning back within a leg, and long steps.
 *
 * A station is repeated when a depth comes twice in the same leg on the same face. Rows without a leg are taken as one way
 * down and one way up for each face. Depths are compared as the file gives them, metres or counts.
 *
 * Errors: formats.station-repeated, formats.depth-reversal. Warning: formats.depth-step.
 */
export function checkDepths(readings: Readings, heading: HeadingOf, found: Finder): void {
  const inMetres = readings.depthM.some(Number.isFinite);
  const depths = inMetres ? readings.depthM : readings.depthCounts;
  const field = heading(inMetres ? "depth_m" : "count");
  const passes = new Map<string, Pass>();
  const steps: { step: number; line: number; from: number; to: number }[] = [];
  for (let i = 0; i < readings.count; i++) {
    const leg = readings.leg[i]!;
    const depth = depths[i]!;
    // Rows at the top and ties stand where a heading is known, as often as one likes.
    if (Number.isNaN(depth) || leg === "open" || leg === "close" || leg === "tie") continue;
    const pass = passOf(passes, leg, readings.face[i]!);
    const line = readings.line[i]!;
    const change = depth - pass.previous;
    const closing = leg === "" && isLast(readings, i);
    if (change !== 0 && Number.isFinite(change) && !closing)
      steps.push({ step: Math.abs(change), line, from: pass.previous, to: depth });
    followPass(pass, depth, line, leg === "", closing, field, found);
  }
  tellLongSteps(steps, field, found);
}

/** The row with which a run without legs may close, at the top. */
const isLast = (readings: Readings, index: number): boolean => index === readings.count - 1;

function passOf(passes: Map<string, Pass>, leg: string, face: number): Pass {
  const name = `${leg} ${face}`;
  const known = passes.get(name);
  if (known !== undefined) return known;
  const direction = leg === "down" ? 1 : leg === "up" ? -1 : 0;
  const fresh: Pass = { name, direction, previous: Number.NaN, seen: new Map() };
  passes.set(name, fresh);
  return fresh;
}

function followPass(
  pass: Pass,
  depth: number,
  line: number,
  mayTurn: boolean,
  closing: boolean,
  field: string,
  found: Finder,
): void {
  const change = Math.sign(depth - pass.previous);
  const turned = change !== 0 && Number.isFinite(change) && pass.direction !== 0 && change !== pass.direction;
  const goesUp = turned && mayTurn && pass.direction === 1;
  if (goesUp) {
    // The way up passes the same stations again.
    pass.seen.clear();
    pass.direction = -1;
  } else if (pass.direction === 0 && change !== 0 && Number.isFinite(change)) pass.direction = change;
  const first = pass.seen.get(depth);
  if (first !== undefined && !closing) {
    const values = { found: depth, expected: "each station once in a leg on a face", other: first };
    found.error("formats.station-repeated", { line, field }, values);
  } else if (turned && !goesUp && !closing) {
    const values = {
      found: depth,
      expected: pass.direction > 0 ? "deeper than the row before" : "higher than the row before",
    };
    found.error("formats.depth-reversal", { line, field }, { ...values, other: pass.previous });
  }
  if (first === undefined) pass.seen.set(depth, line);
  pass.previous = depth;
}

function tellLongSteps(
  steps: readonly { step: number; line: number; from: number; to: number }[],
  field: string,
  found: Finder,
): void {
  if (steps.length < 4) return;
  const sorted = steps.map((each) => each.step).toSorted((a, b) => a - b);
  const usual = sorted[sorted.length >> 1]!;
  for (const { step, line, from, to } of steps) {
    if (!(step > LONG_STEP * usual)) continue;
    found.warning(
      "formats.depth-step",
      { line, field },
      { found: `${from} to ${to}`, expected: `steps of about ${usual}` },
    );
  }
}
