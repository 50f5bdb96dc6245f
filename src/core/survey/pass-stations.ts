import { type PassTangents, sameStopM, usualInterval } from "../correction/combine-passes.ts";
import type { Pass, RunLayout } from "../correction/passes.ts";
import { add, type NorthEastDown, unit } from "../geometry/vector.ts";
import type { RunRecord } from "./run-context.ts";

/** A pass as directions at stations, with the rows of the readings that each station rests on. */
export interface PassStations extends PassTangents {
  readonly rows: readonly (readonly number[])[];
}

/** Variance of each component of a direction: its own, and that of errors which all stations of the pass share. */
export interface StationVariance {
  readonly own: number;
  readonly shared: number;
}

export const longestPass = (passes: readonly Pass[]): Pass | undefined =>
  passes.reduce<Pass | undefined>(
    (best, pass) => (best === undefined || pass.rows.length > best.rows.length ? pass : best),
    undefined,
  );

/** The reading at the top serves as a station where no pass has one there. */
export function withTopRow(layout: RunLayout, depthM: Float64Array): readonly Pass[] {
  const top = depthM[layout.openingRow]!;
  const first = layout.passes.reduce((least, pass) => Math.min(least, depthM[pass.rows[0]!]!), Infinity);
  const longest = longestPass(layout.passes);
  if (longest === undefined) return layout.passes;
  // a first stop that is read a little off the top is that stop, not another one a hair below it
  const apart = sameStopM(usualInterval(Float64Array.from(longest.rows, (row) => depthM[row]!)));
  if (!(top >= 0 && top < first - apart)) return layout.passes;
  return layout.passes.map((pass) =>
    pass === longest ? { ...pass, rows: [layout.openingRow, ...pass.rows] } : pass,
  );
}

/** Directions of one pass; rows read more than once at a depth are averaged, rows without a direction are told and left out. */
export function passTangents(
  pass: Pass,
  depthM: Float64Array,
  directionOf: (row: number) => NorthEastDown,
  varianceOf: (row: number, lateral: number) => StationVariance,
  record: RunRecord,
): PassStations {
  const stops: { depth: number; sum: NorthEastDown; variance: StationVariance; rows: number[] }[] = [];
  for (const row of pass.rows) {
    const direction = directionOf(row);
    if (!Number.isFinite(direction.north + direction.east + direction.down)) {
      record.find("error", "survey.no-direction", { depth_m: depthM[row]! }, row);
      continue;
    }
    const last = stops[stops.length - 1];
    if (last !== undefined && depthM[row]! - last.depth <= 0.001) {
      last.sum = add(last.sum, direction);
      last.rows.push(row);
      continue;
    }
    const lateral = Math.hypot(direction.north, direction.east);
    stops.push({
      depth: depthM[row]!,
      sum: direction,
      variance: varianceOf(row, lateral),
      rows: [row],
    });
  }
  const means = stops.map((stop) => unit(stop.sum));
  return {
    name: nameOf(pass),
    face: pass.face,
    depthM: Float64Array.from(stops, (stop) => stop.depth),
    north: Float64Array.from(means, (mean) => mean.north),
    east: Float64Array.from(means, (mean) => mean.east),
    down: Float64Array.from(means, (mean) => mean.down),
    rows: stops.map((stop) => stop.rows),
    variance: Float64Array.from(stops, ({ variance, rows }) => variance.own / rows.length + variance.shared),
    sharedVariance: Float64Array.from(stops, ({ variance }) => variance.shared),
  };
}

function nameOf({ direction, face, repeat }: Pass): string {
  const way = repeat > 1 ? `${direction} ${repeat}` : direction;
  return face === 0 ? way : `${way}, face ${face}`;
}
