import { type AxisRow, degreesFromRadians, type OffsetEllipse } from "#core";
import type { AxisParts } from "./axis-parts.ts";
import { roundFactor } from "./offset-scale.ts";
import type { Place } from "./places.ts";
import { planOffset } from "./plan-offset.ts";
import type { PlanScale } from "./plan-scale.ts";
import { ELLIPSE } from "./style.ts";
import { fixed, tag } from "./svg/markup.ts";
import { ellipseLookup, uncertainRows } from "./uncertain-offset.ts";
import type { ElementView } from "./view.ts";

/** Ellipses smaller than this hide behind the marks of places, drawing units. */
const SMALLEST_REACH = 8;
/** How large the largest one is drawn, about, where all are exaggerated; no larger than the empty rim, drawing units. */
const EXAGGERATED_REACH = 20;
/** Ellipses between the marked places keep this far from each other, drawing units. */
const CLEAR = 16;

export interface PlanEllipses {
  /** how many times larger than the offsets they are drawn; undefined where there are none */
  readonly factor: number | undefined;
  readonly markup: string;
}

interface Drawn {
  readonly row: AxisRow;
  readonly ellipse: OffsetEllipse;
  readonly x: number;
  readonly y: number;
}

/**
 * Ellipses that hold the true offset with 95 %, at the marked places and at some stations between.
 *
 * True to the scale of the offsets, or all larger by one round factor where they would be too small to see.
 */
export function planEllipses(
  view: ElementView,
  parts: AxisParts,
  places: readonly Place[],
  scale: PlanScale,
): PlanEllipses {
  const drawn = rowsWithRoom(view, parts, places, scale);
  const largest = scale.length(Math.max(0, ...drawn.map(({ ellipse }) => ellipse.semiMajor95M)));
  if (!(largest > 0 && Number.isFinite(view.alongBearingRad))) return { factor: undefined, markup: "" };
  const factor = largest < SMALLEST_REACH ? roundFactor(EXAGGERATED_REACH / largest) : 1;
  const shapes = drawn.map(({ ellipse, x, y }) => {
    const bearing = degreesFromRadians(view.alongBearingRad + ellipse.majorFromAlongRad);
    return tag("ellipse", {
      cx: x,
      cy: y,
      rx: factor * scale.length(ellipse.semiMinor95M),
      ry: factor * scale.length(ellipse.semiMajor95M),
      transform: `rotate(${fixed(bearing)} ${fixed(x)} ${fixed(y)})`,
      ...ELLIPSE,
    });
  });
  return { factor, markup: tag("g", { "data-part": "ellipses", "data-factor": String(factor) }, ...shapes) };
}

/** The marked places always; stations between them as far as there is room. */
function rowsWithRoom(
  view: ElementView,
  parts: AxisParts,
  places: readonly Place[],
  scale: PlanScale,
): readonly Drawn[] {
  const ellipseOf = ellipseLookup(view);
  const marked = new Set(places.map(({ row }) => row));
  const rows = uncertainRows(view, parts, places);
  const chosen: Drawn[] = [];
  for (const row of rows.toSorted((a, b) => Number(marked.has(b)) - Number(marked.has(a)))) {
    const { north, east } = planOffset(view, row);
    const [x, y] = [scale.x(east), scale.y(north)];
    const isFree = chosen.every((other) => Math.hypot(other.x - x, other.y - y) >= CLEAR);
    if (marked.has(row) || isFree) chosen.push({ row, ellipse: ellipseOf(row)!, x, y });
  }
  return chosen;
}
