import { designAxes } from "../elements/design-axis.ts";
import type { HolePath } from "../path/hole-path.ts";
import { depthAtDown, interpolatePath } from "../path/interpolate-path.ts";
import type { JudgedAxis, NotMeasured } from "./criterion.ts";

/** Two levels closer than this are the same level: far below what a level is measured to. */
const SAME_LEVEL_M = 1e-6;

/** A stretch of depth along the axis, metres. */
export interface DepthRange {
  readonly fromM: number;
  readonly toM: number;
}

/** Why a path cannot be used at all, or undefined if every station of it has a place and a direction. */
export function faultOfPath(path: HolePath): NotMeasured | undefined {
  if (!(path.count > 0)) return { reason: "criteria.no-path" };
  const columns = [
    path.depthM,
    path.northM,
    path.eastM,
    path.downM,
    path.tangentNorth,
    path.tangentEast,
    path.tangentDown,
  ];
  for (let i = 0; i < path.count; i++) {
    for (const column of columns)
      if (!Number.isFinite(column[i]))
        return { reason: "criteria.unread-station", values: { station: i + 1 } };
    if (i > 0 && !(path.depthM[i]! > path.depthM[i - 1]!))
      return { reason: "criteria.depth-order", values: { station: i + 1 } };
  }
  return undefined;
}

/** Why an element cannot be held against its design, or undefined if it can. */
export function faultOfAxis(axis: JudgedAxis): NotMeasured | undefined {
  const { element } = axis;
  const axes = designAxes(element);
  const { head } = element;
  const known = [head.north, head.east, head.down, axes.direction.north, axes.along.north].every(
    Number.isFinite,
  );
  if (!known) return { reason: "criteria.design-incomplete", values: { element: element.id } };
  const fault = faultOfPath(axis.path);
  if (fault !== undefined) return fault;
  if (!(axis.readToM > axis.readFromM)) return { reason: "criteria.nothing-read" };
  return undefined;
}

/**
 * The stretch that was read, from the commencing surface down; what stands out above it is no part of the element.
 *
 * @returns depths along the axis; NaN where the path ends above the commencing surface.
 * Frame: site NED.
 * Source: rules D4 and F2.
 */
export function readRange(axis: JudgedAxis): DepthRange {
  const { path, element } = axis;
  const first = Math.max(axis.readFromM, path.depthM[0]!);
  const last = Math.min(axis.readToM, path.depthM[path.count - 1]!);
  if (!(first < last)) return { fromM: Number.NaN, toM: Number.NaN };
  const startsBelow = interpolatePath(path, first).position.down >= element.head.down;
  const fromM = startsBelow ? first : depthAtDown(path, element.head.down);
  return fromM < last ? { fromM, toM: last } : { fromM: Number.NaN, toM: Number.NaN };
}

/**
 * Depth along the axis that stands for a level.
 *
 * A level between the head and the first reading is taken at the first reading, and one between the last reading and
 * the toe at the last, but only where the readings count as reaching that end. Nothing is extrapolated, and a level
 * inside a gap was not read.
 *
 * @returns metres along the axis; NaN where the level was not read.
 * Frame: site NED.
 * Source: rules D4 and F1.
 */
export function depthForLevel(axis: JudgedAxis, downM: number): number {
  const depthM = depthOfLevel(axis, downM);
  return (axis.gaps ?? []).some((gap) => depthM > gap.fromM && depthM < gap.toM) ? Number.NaN : depthM;
}

function depthOfLevel(axis: JudgedAxis, downM: number): number {
  const { path, element } = axis;
  const { fromM, toM } = readRange(axis);
  if (!(fromM < toM)) return Number.NaN;
  const topDown = interpolatePath(path, fromM).position.down;
  const bottomDown = interpolatePath(path, toM).position.down;
  if (downM < topDown)
    return axis.reachesHead && downM >= element.head.down - SAME_LEVEL_M ? fromM : Number.NaN;
  if (downM > bottomDown)
    return axis.reachesToe && downM <= (element.toeDownM ?? Number.NaN) + SAME_LEVEL_M ? toM : Number.NaN;
  return depthAtDown(path, downM);
}

/** Whether something about the whole length stays unknown: an end that was not reached, or a gap. */
export function isPartlyRead(axis: JudgedAxis): boolean {
  return !axis.reachesHead || !axis.reachesToe || (axis.gaps ?? []).length > 0;
}

/** Whether the place of the axis at a depth rests on a stretch that was not read. */
export function restsOnUnread(axis: JudgedAxis, depthM: number): boolean {
  return !axis.reachesHead || (axis.gaps ?? []).some((gap) => !(gap.fromM >= depthM));
}

/** Depths of a range at which the axis is looked at: both ends and every station between them. */
export function stationDepths(path: HolePath, { fromM, toM }: DepthRange): number[] {
  const between = path.depthM.subarray(0, path.count).filter((depthM) => depthM > fromM && depthM < toM);
  return [fromM, ...between, toM];
}
