import type { Place } from "./places.ts";
import { planOffset } from "./plan-offset.ts";
import type { PlanScale } from "./plan-scale.ts";
import { LINE } from "./style.ts";
import { circle, polygon } from "./svg/markup.ts";
import type { ElementView } from "./view.ts";

/** The lowest place that was read, of which the outline is drawn. */
export const lowestPlace = (places: readonly Place[]): Place | undefined =>
  places.findLast(({ position }) => position !== "worst");

export const DESIGN_OUTLINE = { ...LINE.outline, "stroke-dasharray": "4 3" } as const;

/** The section of the element at true scale, as designed and where it lies at the lowest place read. */
export function drawOutlines(view: ElementView, scale: PlanScale, places: readonly Place[]): string[] {
  const { section } = view.element;
  if (!view.outline || section === undefined) return [];
  const at = (north: number, east: number, style: Readonly<Record<string, string | number>>) => {
    if (section.shape === "round")
      return circle(scale.x(east), scale.y(north), scale.length(section.diameterM / 2), style);
    const [cos, sin] = [Math.cos(section.orientationRad), Math.sin(section.orientationRad)];
    const corners = [
      [1, 1],
      [1, -1],
      [-1, -1],
      [-1, 1],
    ].map(([a, b]): [number, number] => {
      const ahead = (a! * section.lengthM) / 2;
      const right = (b! * section.widthM) / 2;
      return [scale.x(east + ahead * sin + right * cos), scale.y(north + ahead * cos - right * sin)];
    });
    return polygon(corners, style);
  };
  const lowest = lowestPlace(places);
  const design = at(0, 0, DESIGN_OUTLINE);
  if (lowest === undefined) return [design];
  const { north, east } = planOffset(view, lowest.row);
  return [design, at(north, east, LINE.outline)];
}
