import { sameStopM, usualInterval } from "../correction/combine-passes.ts";
import { type FaceZero, zeroFromFaces } from "../correction/face-zero.ts";
import type { RunLayout } from "../correction/passes.ts";
import { type CorrectedTilts, withoutZero } from "../correction/tilt.ts";
import { degreesFromRadians } from "../units/quantity.ts";
import { longestPass } from "./pass-stations.ts";
import type { RunRecord } from "./run-context.ts";
import { stepRevisions } from "./steps.ts";

const MAX_ROUNDS = 6;
const SETTLED_RAD = 1e-9;

/**
 * C2: what turning the probe shows to be the probe's own.
 *
 * A zero in the tilts makes the axis seem to jump where the probe is turned, and a carried heading follows that jump
 * (A4); so the headings are carried again with the zero taken off until both agree.
 *
 * @param headingsOf headings by row that go with the tilts, radians; undefined where there are none.
 * @returns undefined where no stop was read on both faces.
 */
export function faceZeroOfRun(
  tilts: CorrectedTilts,
  headingsOf: (tilts: CorrectedTilts) => Float64Array | undefined,
  layout: RunLayout,
  depthM: Float64Array,
): FaceZero | undefined {
  const longest = longestPass(layout.passes);
  const faces = new Set(layout.passes.map((pass) => pass.face));
  if (longest === undefined || !(faces.has(1) && faces.has(2))) return undefined;
  const sameDepthM = sameStopM(usualInterval(Float64Array.from(longest.rows, (row) => depthM[row]!)));
  let zero: FaceZero | undefined;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const headingRad = headingsOf(zero === undefined ? tilts : withoutZero(tilts, zero));
    if (headingRad === undefined) return undefined;
    const next = zeroFromFaces(tilts, headingRad, depthM, layout.passes, sameDepthM);
    if (next === undefined) return undefined;
    const change = zero === undefined ? Infinity : Math.hypot(next.xRad - zero.xRad, next.yRad - zero.yRad);
    zero = next;
    if (change < SETTLED_RAD) break;
  }
  return zero;
}

/** A face sum this many times the usual scatter is told: common practice, no source. */
const FACE_OUTLIER = 4;
/** scatter below which the sums are as good as the resolution of the readings, radians */
const LEAST_SCATTER_RAD = 1e-4;

/** Puts the zero found by turning the probe on record, and the stop whose sum is far from the others. */
export function reportFaceZero(zero: FaceZero, depthM: Float64Array, record: RunRecord): void {
  record.step("two-face", stepRevisions["two-face"], {
    stops: zero.stops,
    zero_x_deg: degreesFromRadians(zero.xRad),
    zero_y_deg: degreesFromRadians(zero.yRad),
    scatter_deg: degreesFromRadians(zero.scatterRad),
    largest_departure_deg: degreesFromRadians(zero.largestRad),
    largest_at_m: depthM[zero.largestRow]!,
  });
  if (zero.stops > 3 && zero.largestRad > FACE_OUTLIER * Math.max(zero.scatterRad, LEAST_SCATTER_RAD))
    record.find(
      "warning",
      "survey.face-sum",
      {
        depth_m: depthM[zero.largestRow]!,
        departure_deg: degreesFromRadians(zero.largestRad),
        scatter_deg: degreesFromRadians(zero.scatterRad),
      },
      zero.largestRow,
    );
}
