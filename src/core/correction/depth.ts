import type { HangingCable } from "../calibration/calibration.ts";
import type { Leg } from "../readings/survey-run.ts";

/** Depth of every row, and what was done to get there. Metres along the hole, 0 at the tube's reference top. */
export interface CorrectedDepths {
  readonly depthM: Float64Array;
  /** largest hanging stretch added, metres */
  readonly largestStretchM: number;
  /** reading at the closing row less that at the opening row, metres; NaN where there are no two rows at the top */
  readonly returnMisclosureM: number;
}

/**
 * Stretch of a hanging cable at a depth: (W L + w L^2 / 2) / EA.
 *
 * @returns metres, added to the depth read at the top.
 * Frame: none. Source: elastic bar under its own weight and an end load; docs/sources.md [E8].
 * Checked against: example of a 60 m cable in the test.
 */
export function hangingStretch(depthM: number, cable: HangingCable): number {
  const { axialStiffnessN, probeWeightN, cableWeightNPerM } = cable;
  return (probeWeightN * depthM + (cableWeightNPerM * depthM * depthM) / 2) / axialStiffnessN;
}

/** Depths of a run before correction. Arrays of equal length; a row has metres or counts. */
export interface RawDepths {
  readonly depthM: Float64Array;
  readonly depthCounts: Float64Array;
  readonly leg: readonly Leg[];
}

/**
 * Depths with scale, zero, cable stretch and the misclosure of the return to the top spread over the travel.
 *
 * The misclosure is only formed where rows at the top say so themselves (legs open and close).
 *
 * @param metresPerCount for rows with counts; NaN leaves them missing. @param zeroM added to every row.
 * @returns NaN where a row has neither metres nor counts.
 *
 * Frame: along the hole, down. Source: rule C5.
 */
export function correctDepths(
  raw: RawDepths,
  metresPerCount: number,
  zeroM: number,
  cable: HangingCable | undefined,
): CorrectedDepths {
  const { leg } = raw;
  const count = leg.length;
  const depthM = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const given = raw.depthM[i]!;
    depthM[i] = (Number.isNaN(given) ? raw.depthCounts[i]! * metresPerCount : given) + zeroM;
  }
  const returnMisclosureM = spreadReturn(depthM, leg);
  let largestStretchM = 0;
  if (cable !== undefined) {
    for (let i = 0; i < count; i++) {
      const stretch = hangingStretch(depthM[i]!, cable);
      depthM[i]! += stretch;
      if (stretch > largestStretchM) largestStretchM = stretch;
    }
  }
  return { depthM, largestStretchM, returnMisclosureM };
}

function spreadReturn(depthM: Float64Array, leg: readonly Leg[]): number {
  const open = leg.lastIndexOf("open");
  const close = leg.indexOf("close");
  if (open < 0 || close <= open) return Number.NaN;
  const misclosure = depthM[close]! - depthM[open]!;
  const travelled = travelFrom(depthM, open);
  const whole = travelled[close]!;
  if (!(whole > 0) || Number.isNaN(misclosure)) return misclosure;
  for (let i = open + 1; i < depthM.length; i++)
    depthM[i]! -= misclosure * Math.min(1, travelled[i]! / whole);
  return misclosure;
}

/** Cable run since a row, metres; a row whose depth is missing stands where the row before it stood. */
function travelFrom(depthM: Float64Array, from: number): Float64Array {
  const travelled = new Float64Array(depthM.length);
  let last = depthM[from]!;
  for (let i = from + 1; i < depthM.length; i++) {
    const depth = depthM[i]!;
    travelled[i] = travelled[i - 1]! + (Number.isNaN(depth) ? 0 : Math.abs(depth - last));
    if (!Number.isNaN(depth)) last = depth;
  }
  return travelled;
}
