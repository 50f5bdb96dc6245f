import type { ElementRow } from "../../../worker/desk.ts";

/** Which part of the site is seen: the place in the middle, and how many pixels a metre has. */
export interface PlanView {
  readonly eastM: number;
  readonly northM: number;
  readonly pxPerM: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

const ROOM_PX = 48;
/** Nothing nearer than this is of interest, pixels a metre. */
const CLOSEST = 4000;
const FARTHEST = 0.05;

export const toScreen = (
  view: PlanView,
  size: Size,
  eastM: number,
  northM: number,
): { readonly x: number; readonly y: number } => ({
  x: size.width / 2 + (eastM - view.eastM) * view.pxPerM,
  y: size.height / 2 - (northM - view.northM) * view.pxPerM,
});

/** The whole job with some room around it. */
export function wholePlan(elements: readonly ElementRow[], size: Size): PlanView {
  let [west, east, south, north] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const element of elements) {
    const half = halfSizeM(element);
    west = Math.min(west, element.eastM - half);
    east = Math.max(east, element.eastM + half);
    south = Math.min(south, element.northM - half);
    north = Math.max(north, element.northM + half);
  }
  const across = (extent: number, px: number) => Math.max(px - 2 * ROOM_PX, 50) / Math.max(extent, 1);
  const pxPerM = Math.min(across(east - west, size.width), across(north - south, size.height));
  return { eastM: (west + east) / 2, northM: (south + north) / 2, pxPerM };
}

/** Enlarges about a place on the screen, which stays where it is. */
export function zoomed(view: PlanView, size: Size, factor: number, x: number, y: number): PlanView {
  const pxPerM = Math.min(CLOSEST, Math.max(FARTHEST, view.pxPerM * factor));
  const shift = 1 / view.pxPerM - 1 / pxPerM;
  return {
    pxPerM,
    eastM: view.eastM + (x - size.width / 2) * shift,
    northM: view.northM - (y - size.height / 2) * shift,
  };
}

/** Moves the sheet by so many pixels. */
export const moved = (view: PlanView, dx: number, dy: number): PlanView => ({
  ...view,
  eastM: view.eastM - dx / view.pxPerM,
  northM: view.northM + dy / view.pxPerM,
});

/** Half of the largest measure of the section, metres. */
export function halfSizeM({ section }: ElementRow): number {
  if (section === undefined) return 0.1;
  return section.shape === "round" ? section.diameterM / 2 : Math.hypot(section.lengthM, section.widthM) / 2;
}

/** The longest round length that takes up no more than the pixels given: 1, 2 or 5 with zeros. */
export function scaleBarM(pxPerM: number, mostPx: number): number {
  const most = mostPx / pxPerM;
  const power = 10 ** Math.floor(Math.log10(most));
  return [5, 2, 1].map((n) => n * power).find((length) => length <= most) ?? power;
}
