import type { AxisRow } from "#core";
import type { ElementView } from "./view.ts";

/**
 * Offset of a row as the plan shows it, metres to north and east on the page.
 *
 * Plumb: the horizontal offset itself. Raked: along and across, turned so that "along" points to its bearing; the view is down the
 * design axis, and the length on the page is the true offset, which the north and east parts of a vector square to a rake would not give.
 */
export function planOffset(
  view: Pick<ElementView, "element" | "alongBearingRad">,
  row: Pick<AxisRow, "offsetNorthM" | "offsetEastM" | "alongM" | "acrossM">,
): { readonly north: number; readonly east: number } {
  if (view.element.rakeRad === 0) return { north: row.offsetNorthM, east: row.offsetEastM };
  const cos = Math.cos(view.alongBearingRad);
  const sin = Math.sin(view.alongBearingRad);
  return { north: row.alongM * cos - row.acrossM * sin, east: row.alongM * sin + row.acrossM * cos };
}
