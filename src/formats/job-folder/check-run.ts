import { type AccessTube, type DesignElement, designLengthM, type Readings } from "#core";
import type { Finder } from "../finding/finder.ts";

/** Readings may go this much below what was to be built before a slip of unit or of element is suspected. Common practice, no source. */
const LONGER_BY_RATIO = 1.2;
const LONGER_BY_M = 2;

/** Tells a run that goes far deeper than its element or tube does. Warning: formats.depth-beyond-toe. */
export function checkAgainstElement(
  readings: Readings,
  element: DesignElement,
  tube: AccessTube | undefined,
  file: string,
  found: Finder,
): void {
  const lengthM = tube?.lengthM ?? designLengthM(element);
  if (lengthM === undefined || !Number.isFinite(lengthM)) return;
  const limit = LONGER_BY_RATIO * lengthM + LONGER_BY_M;
  const first = readings.depthM.findIndex((depth) => depth > limit);
  if (first < 0) return;
  const values = { found: readings.depthM[first]!, expected: `at most about ${lengthM.toFixed(2)} m`, file };
  found.warning("formats.depth-beyond-toe", { line: readings.line[first]!, field: "depth_m" }, values);
}

/** Columns of a keyed run: a groove, and a spiral with rising depths. Errors: formats.groove-missing, formats.spiral-order. */
export function checkSpiral(
  spiral: readonly (readonly [number, number])[],
  field: string,
  found: Finder,
): void {
  for (const [index, [depth]] of spiral.entries()) {
    const above = spiral[index - 1]?.[0] ?? Number.NEGATIVE_INFINITY;
    if (depth > above) continue;
    found.block(
      "formats.spiral-order",
      { field: `${field}.spiral[${index}]` },
      { found: depth, expected: `more than ${above}` },
    );
  }
}
