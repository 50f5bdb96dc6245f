import { offsetFromDesign } from "../elements/design-axis.ts";
import type { AccessTube, DesignElement } from "../elements/element.ts";
import { add, type NorthEastDown, ned, unit } from "../geometry/vector.ts";
import type { HolePath } from "../path/hole-path.ts";
import { depthAtDown, interpolatePath, positionAt, tangentAt } from "../path/interpolate-path.ts";
import type { AxisRow } from "./results.ts";

/** A surveyed hole of an element: its own bore, or a tube at its place in the element. */
export interface SurveyedHole {
  readonly tube: AccessTube | undefined;
  readonly path: HolePath;
}

/** Place of a tube in its element. Metres from the element's axis. */
interface Offset {
  readonly north: number;
  readonly east: number;
}

/**
 * Where a tube stands in its element.
 *
 * As the tube list says; else from the middle of the heads of all the element's tubes; a tube alone is taken as the axis.
 */
export function tubeOffset(tube: AccessTube, allTubes: readonly AccessTube[]): Offset {
  if (tube.offsetInElement !== undefined) return tube.offsetInElement;
  const heads = allTubes.map((each) => each.head);
  const mean = (of: "north" | "east") => heads.reduce((sum, head) => sum + head[of], 0) / heads.length;
  return { north: tube.head.north - mean("north"), east: tube.head.east - mean("east") };
}

/** A path moved sideways as a whole. */
function shiftPath(path: HolePath, north: number, east: number): HolePath {
  return {
    ...path,
    northM: path.northM.map((value) => value + north),
    eastM: path.eastM.map((value) => value + east),
  };
}

/**
 * The as-built axis of an element from its surveyed holes: each moved by its tube's place in the element, then the mean at
 * equal level.
 *
 * @param holes at least one. @param allTubes every tube of the element, surveyed or not.
 * @returns a path with a station at each station of the hole read deepest, over the levels that all holes share.
 *
 * Frame: site NED. Source: rule F1; centre of a pattern that moves as one, docs/method/computation.md.
 */
export function elementPath(holes: readonly SurveyedHole[], allTubes: readonly AccessTube[]): HolePath {
  const moved = holes.map(({ tube, path }) => {
    if (tube === undefined) return path;
    const offset = tubeOffset(tube, allTubes);
    return shiftPath(path, -offset.north, -offset.east);
  });
  const first = moved[0]!;
  return moved.length === 1 ? first : meanPath(moved);
}

function meanPath(paths: readonly HolePath[]): HolePath {
  const deepest = paths.reduce((best, path) =>
    path.downM[path.count - 1]! > best.downM[best.count - 1]! ? path : best,
  );
  const rows: { depthM: number; position: NorthEastDown; tangent: NorthEastDown }[] = [];
  for (let i = 0; i < deepest.count; i++) {
    const downM = deepest.downM[i]!;
    const points = paths.map((path) =>
      path === deepest
        ? { position: positionAt(path, i), tangent: tangentAt(path, i) }
        : interpolatePath(path, depthAtDown(path, downM)),
    );
    const sum = points.reduce((total, point) => add(total, point.position), ned(0, 0, 0));
    const direction = points.reduce((total, point) => add(total, point.tangent), ned(0, 0, 0));
    if (!Number.isFinite(sum.north)) continue;
    rows.push({
      depthM: deepest.depthM[i]!,
      position: ned(sum.north / points.length, sum.east / points.length, downM),
      tangent: unit(direction),
    });
  }
  return pathFromRows(rows);
}

function pathFromRows(
  rows: readonly { depthM: number; position: NorthEastDown; tangent: NorthEastDown }[],
): HolePath {
  const column = (of: (row: (typeof rows)[number]) => number) => Float64Array.from(rows, of);
  return {
    count: rows.length,
    depthM: column((row) => row.depthM),
    northM: column((row) => row.position.north),
    eastM: column((row) => row.position.east),
    downM: column((row) => row.position.down),
    tangentNorth: column((row) => row.tangent.north),
    tangentEast: column((row) => row.tangent.east),
    tangentDown: column((row) => row.tangent.down),
  };
}

/**
 * The axis against the design, station by station, and at the cut-off level where that lies between stations.
 *
 * Frame: site NED. Source: rule F1.
 */
export function axisRows(path: HolePath, element: DesignElement): readonly AxisRow[] {
  const rows = Array.from({ length: path.count }, (_, i) =>
    axisRow(path.depthM[i]!, positionAt(path, i), element, false),
  );
  const { cutoffDownM } = element;
  if (cutoffDownM === undefined || rows.some((row) => Math.abs(row.downM - cutoffDownM) < 1e-9)) return rows;
  const depthM = depthAtDown(path, cutoffDownM);
  if (Number.isNaN(depthM)) return rows;
  const cutoff = axisRow(depthM, interpolatePath(path, depthM).position, element, true);
  return [...rows, cutoff].sort((a, b) => a.depthM - b.depthM);
}

function axisRow(
  depthM: number,
  position: NorthEastDown,
  element: DesignElement,
  interpolated: boolean,
): AxisRow {
  const offset = offsetFromDesign(element, position);
  return {
    depthM,
    northM: position.north,
    eastM: position.east,
    downM: position.down,
    offsetNorthM: offset.north,
    offsetEastM: offset.east,
    offsetM: offset.offset,
    alongM: offset.along,
    acrossM: offset.across,
    interpolated,
  };
}
