import { type AxisRow, coverageFactor, type OffsetEllipse } from "#core";
import type { AxisParts } from "./axis-parts.ts";
import type { Place } from "./places.ts";
import type { ElementView } from "./view.ts";

/** Rows between the marked places that get their uncertainty drawn as well. */
const BETWEEN = 5;
/** Part of their usual distance that they keep from marked places. */
const LEAST_APART = 0.5;

/** Standard deviations in the half axes of an ellipse that holds 95 % of a plane. */
const FACTOR_PLANE = coverageFactor(0.95, 2);
/** Standard deviations that hold 95 % of one direction, either way: 1.96. */
const FACTOR_LINE = coverageFactor(0.95, 1);

/** How well the offset of a row is known. */
export type EllipseOf = (row: AxisRow) => OffsetEllipse | undefined;

/**
 * Looks up the ellipse of a row; for a row mixed of two, that of the nearest row of the axis.
 *
 * Undefined where nothing is known, or a number is missing.
 */
export function ellipseLookup(view: Pick<ElementView, "axis" | "ellipses">): EllipseOf {
  const byRow = new Map(view.axis.map((row, i) => [row, view.ellipses[i]]));
  const known = view.axis.filter((row) => Number.isFinite(row.downM));
  return (row) => {
    const nearest = () =>
      known.reduce<AxisRow | undefined>(
        (best, each) =>
          best === undefined || Math.abs(each.downM - row.downM) < Math.abs(best.downM - row.downM)
            ? each
            : best,
        undefined,
      );
    const own = byRow.has(row) ? row : nearest();
    const ellipse = own && byRow.get(own);
    return ellipse !== undefined && Object.values(ellipse).every(Number.isFinite) ? ellipse : undefined;
  };
}

/**
 * What the offset may be off by in one direction with 95 %: 1.96 standard deviations, metres.
 *
 * @param fromAlongRad the direction, from "along" towards "across".
 */
export function lineBand95(ellipse: OffsetEllipse, fromAlongRad: number): number {
  const turn = fromAlongRad - ellipse.majorFromAlongRad;
  const reach95 = Math.hypot(ellipse.semiMajor95M * Math.cos(turn), ellipse.semiMinor95M * Math.sin(turn));
  return (reach95 * FACTOR_LINE) / FACTOR_PLANE;
}

/** Rows whose uncertainty is drawn: the marked places, and some stations between them at about equal steps of level. */
export function uncertainRows(
  view: Pick<ElementView, "axis" | "ellipses">,
  parts: AxisParts,
  places: readonly Place[],
): readonly AxisRow[] {
  if (view.ellipses.length === 0) return [];
  const ellipseOf = ellipseLookup(view);
  const chosen = new Set(places.map(({ row }) => row));
  const stations = parts.rows.filter((row) => !row.interpolated);
  const [top, bottom] = [stations[0]?.downM ?? Number.NaN, stations.at(-1)?.downM ?? Number.NaN];
  const least = (LEAST_APART * (bottom - top)) / (BETWEEN + 1);
  for (let i = 1; i <= BETWEEN && bottom > top; i++) {
    const wanted = top + ((bottom - top) * i) / (BETWEEN + 1);
    const nearest = stations.reduce((best, row) =>
      Math.abs(row.downM - wanted) < Math.abs(best.downM - wanted) ? row : best,
    );
    if ([...chosen].every((row) => Math.abs(row.downM - nearest.downM) >= least)) chosen.add(nearest);
  }
  return [...chosen].filter((row) => ellipseOf(row) !== undefined).sort((a, b) => a.downM - b.downM);
}
