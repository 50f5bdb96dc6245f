import type { Verdict } from "#core";
import type { AxesView, ElementRow } from "../../../worker/desk.ts";
import { designAtLevel, foundAtLevel, type PlaceAtLevel } from "./place-at-level.ts";
import { halfSizeM, type PlanView, type Size, toScreen } from "./plan-view.ts";

/** An element as the plan has it at one level. */
export interface DrawnElement {
  readonly row: ElementRow;
  readonly design: PlaceAtLevel | undefined;
  readonly found: PlaceAtLevel | undefined;
  /** drawn faint: its verdict is not among those asked for */
  readonly isFaint: boolean;
}

export function drawnElements(
  elements: readonly ElementRow[],
  axes: AxesView | undefined,
  levelM: number,
  only: ReadonlySet<Verdict>,
): readonly DrawnElement[] {
  const places = new Map(axes?.ids.map((id, i) => [id, i]));
  return elements.map((row) => {
    const i = places.get(row.id);
    return {
      row,
      design: designAtLevel(row, levelM),
      found: axes === undefined || i === undefined ? undefined : foundAtLevel(axes, i, levelM),
      isFaint: only.size > 0 && (row.verdict === undefined || !only.has(row.verdict)),
    };
  });
}

/** A finger is not more exact than this, pixels. */
const LEAST_REACH_PX = 18;

/** The element under a place of the screen, the nearest one if several are. */
export function elementAt(
  drawn: readonly DrawnElement[],
  view: PlanView,
  size: Size,
  x: number,
  y: number,
): DrawnElement | undefined {
  let nearest: DrawnElement | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const each of drawn) {
    const place = each.found ?? each.design ?? each.row;
    const at = toScreen(view, size, place.eastM, place.northM);
    const distance = Math.hypot(at.x - x, at.y - y);
    if (distance < least && distance <= Math.max(LEAST_REACH_PX, halfSizeM(each.row) * view.pxPerM)) {
      nearest = each;
      least = distance;
    }
  }
  return nearest;
}
