import type { AllowancePicture } from "../../worker/desk-set-up.ts";

/** The drawing of an allowance on a sheet of its own, x to the right, y down. */
export interface DrawingShape {
  /** outline of what is allowed; empty where the rule speaks of single levels only */
  readonly envelope: string;
  /** at each single level a bar from side to side */
  readonly bars: readonly { readonly x: number; readonly y: number; readonly width: number }[];
  readonly axis: { readonly x: number; readonly top: number; readonly bottom: number };
  /** so many times larger sideways than down the hole */
  readonly times: number;
}

export const SHEET = { width: 240, height: 220, margin: 16 } as const;

/** Lays the allowance on the sheet: the largest one fills its width. */
export function drawingShape({ points, lengthM }: AllowancePicture): DrawingShape {
  const { width, height, margin } = SHEET;
  const middle = width / 2;
  const widest = points.reduce((most, { allowedM }) => Math.max(most, allowedM), 0);
  const sideways = widest > 0 ? (middle - margin) / widest : 0;
  const down = (height - 2 * margin) / Math.max(lengthM, 1e-9);
  const y = (depthM: number) => margin + depthM * down;
  const at = (x: number, depthM: number) => `${x.toFixed(1)} ${y(depthM).toFixed(1)}`;
  const left = points.map(({ allowedM, depthM }) => at(middle - allowedM * sideways, depthM));
  const right = points.toReversed().map(({ allowedM, depthM }) => at(middle + allowedM * sideways, depthM));
  const isSingle = points.length < 3;
  return {
    envelope: isSingle ? "" : `M${[...left, ...right].join(" L")} Z`,
    bars: isSingle
      ? points.map(({ allowedM, depthM }) => ({
          x: middle - allowedM * sideways,
          y: y(depthM),
          width: 2 * allowedM * sideways,
        }))
      : [],
    axis: { x: middle, top: margin, bottom: height - margin },
    times: sideways / down,
  };
}
