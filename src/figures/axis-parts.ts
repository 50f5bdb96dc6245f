import { type AxisRow, usualInterval } from "#core";
import type { ElementView } from "./view.ts";

/** A row that can be drawn: the place and the offset are known. */
function isDrawable(row: AxisRow): boolean {
  return [row.downM, row.offsetNorthM, row.offsetEastM, row.offsetM, row.alongM, row.acrossM].every(
    Number.isFinite,
  );
}

/** What is drawn of an axis: stretches that were read, and the gaps between them. */
export interface AxisParts {
  /** rows that can be drawn, in their order */
  readonly rows: readonly AxisRow[];
  /** rows without a gap, at least one each */
  readonly read: readonly (readonly AxisRow[])[];
  /** the rows above and below each gap */
  readonly gaps: readonly (readonly [AxisRow, AxisRow])[];
  /** usual depth between stations, metres; NaN with fewer than two stations */
  readonly intervalM: number;
}

/** Stations closer than this share of the usual interval are the same one. */
const SAME_STATION = 0.25;

/**
 * Divides an axis into what was read and what was not.
 *
 * A gap is a stretch that the result names as one, or where a row is missing (NaN). Rows inside it are left out: they are
 * interpolated, or the mean of tubes of which one was not read there.
 */
export function axisParts(view: Pick<ElementView, "axis" | "gaps">): AxisParts {
  const stations = view.axis.filter((row) => !row.interpolated && Number.isFinite(row.depthM));
  const intervalM = usualInterval(Float64Array.from(stations, (row) => row.depthM));
  const insideGap = (row: AxisRow) => {
    // stations of several tubes stand at nearly, not exactly, the same depths
    const near = row.interpolated || Number.isNaN(intervalM) ? 0 : intervalM * SAME_STATION;
    return view.gaps.some(({ fromM, toM }) => row.depthM > fromM + near && row.depthM < toM - near);
  };
  // depths of rows and of gaps may differ in the last digits, so a gap is known by its middle
  const acrossGap = (above: AxisRow, below: AxisRow) =>
    view.gaps.some(({ fromM, toM }) => {
      const middle = (fromM + toM) / 2;
      return above.depthM < middle && middle < below.depthM;
    });

  const read: AxisRow[][] = [];
  let broken = true;
  for (const row of view.axis) {
    if (!isDrawable(row) || insideGap(row)) {
      broken = true;
      continue;
    }
    const last = read.at(-1)?.at(-1);
    if (broken || (last !== undefined && acrossGap(last, row))) read.push([]);
    read.at(-1)!.push(row);
    broken = false;
  }
  const gaps = read.slice(1).map((part, i) => [read[i]!.at(-1)!, part[0]!] as const);
  return { rows: read.flat(), read, gaps, intervalM };
}

/** The row at a level, between the two drawable rows that enclose it; undefined outside of what was read and inside a gap. */
export function rowAtDown(parts: AxisParts, downM: number): AxisRow | undefined {
  for (const stretch of parts.read) {
    for (const [i, row] of stretch.entries()) {
      if (row.downM === downM) return row;
      const next = stretch[i + 1];
      if (next === undefined || !(row.downM < downM && downM < next.downM)) continue;
      const share = (downM - row.downM) / (next.downM - row.downM);
      const mix = (from: number, to: number) => from + share * (to - from);
      return {
        depthM: mix(row.depthM, next.depthM),
        northM: mix(row.northM, next.northM),
        eastM: mix(row.eastM, next.eastM),
        downM,
        offsetNorthM: mix(row.offsetNorthM, next.offsetNorthM),
        offsetEastM: mix(row.offsetEastM, next.offsetEastM),
        offsetM: Math.hypot(mix(row.alongM, next.alongM), mix(row.acrossM, next.acrossM)),
        alongM: mix(row.alongM, next.alongM),
        acrossM: mix(row.acrossM, next.acrossM),
        interpolated: true,
      };
    }
  }
  return undefined;
}
