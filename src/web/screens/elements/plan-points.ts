/** A small plan in a box of its own: x to the right, y down the sheet. */
export interface PlanPoints {
  readonly points: readonly { readonly x: number; readonly y: number }[];
  /** length of the scale bar on the sheet, and what it stands for */
  readonly bar: { readonly length: number; readonly metres: number };
}

interface Position {
  readonly eastM: number;
  readonly northM: number;
}

/** room for names beside the points */
const MARGIN = 48;

/** Lays positions into a box, with the same scale to both sides and north up the sheet. */
export function planPoints(positions: readonly Position[], width: number, height: number): PlanPoints {
  const known = positions.filter(({ eastM, northM }) => Number.isFinite(eastM) && Number.isFinite(northM));
  if (known.length === 0) return { points: [], bar: { length: 0, metres: 0 } };
  const least = (of: (each: Position) => number) =>
    known.reduce((low, each) => Math.min(low, of(each)), Infinity);
  const most = (of: (each: Position) => number) =>
    known.reduce((top, each) => Math.max(top, of(each)), -Infinity);
  const [west, east] = [least(({ eastM }) => eastM), most(({ eastM }) => eastM)];
  const [south, north] = [least(({ northM }) => northM), most(({ northM }) => northM)];
  const scale = Math.min(
    (width - 2 * MARGIN) / Math.max(east - west, 1),
    (height - 2 * MARGIN) / Math.max(north - south, 1),
  );
  const [middleEast, middleNorth] = [(west + east) / 2, (south + north) / 2];
  const metres = roundBelow(width / 4 / scale);
  return {
    points: positions.map(({ eastM, northM }) => ({
      x: width / 2 + (eastM - middleEast) * scale,
      y: height / 2 - (northM - middleNorth) * scale,
    })),
    bar: { length: metres * scale, metres },
  };
}

/** The largest of 1, 2, 5 times a power of ten that is not more. */
function roundBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return [5, 2, 1].map((step) => step * power).find((step) => step <= value) ?? power;
}
