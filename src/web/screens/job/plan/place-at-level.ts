import type { AxesView, ElementRow } from "../../../worker/desk.ts";

/** Where the axis of an element is at a level, metres. */
export interface PlaceAtLevel {
  readonly eastM: number;
  readonly northM: number;
}

/** Where the design has the axis; undefined above its head and below its toe. */
export function designAtLevel(element: ElementRow, levelM: number): PlaceAtLevel | undefined {
  const below = element.headLevelM - levelM;
  if (below < 0 || levelM < (element.toeLevelM ?? element.headLevelM)) return undefined;
  const aside = below * Math.tan(element.rakeRad);
  const bearing = element.rakeBearingRad ?? 0;
  return {
    eastM: element.eastM + aside * Math.sin(bearing),
    northM: element.northM + aside * Math.cos(bearing),
  };
}

/**
 * Where the axis was found at a level, on the straight line between two rows of it: rows are close together.
 *
 * @param i place of the element in `axes.ids`.
 * @returns undefined where nothing was read.
 */
export function foundAtLevel(axes: AxesView, i: number, levelM: number): PlaceAtLevel | undefined {
  const from = axes.start[i]!;
  const to = axes.start[i + 1]!;
  const { levelM: levels, eastM, northM, origin } = axes;
  if (to <= from || levelM > levels[from]! || levelM < levels[to - 1]!) return undefined;
  let low = from;
  let high = to - 1;
  // levels fall along the axis
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (levels[middle]! >= levelM) low = middle;
    else high = middle;
  }
  const step = levels[low]! - levels[high]!;
  const share = step > 0 ? (levels[low]! - levelM) / step : 0;
  return {
    eastM: origin.eastM + eastM[low]! + share * (eastM[high]! - eastM[low]!),
    northM: origin.northM + northM[low]! + share * (northM[high]! - northM[low]!),
  };
}
