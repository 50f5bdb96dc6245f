import type { TangentProfile } from "../frames/tangent-profile.ts";
import { type NorthEastDown, ned } from "../geometry/vector.ts";
import { computePath } from "../path/compute-path.ts";
import { dogleg } from "../path/dogleg.ts";
import type { HolePath } from "../path/hole-path.ts";
import type { PathMethodId } from "../path/path-method.ts";
import { degreesFromRadians } from "../units/quantity.ts";
import type { RunResult } from "./results.ts";
import type { RunRecord } from "./run-context.ts";
import { stepRevisions } from "./steps.ts";

export interface BuiltPath {
  readonly path: HolePath;
  readonly gaps: RunResult["gaps"];
}

/** Sharper than this no hole of the trade bends: a reading, a face or an axis is wrong. Common practice, no source. */
const SHARPEST_RAD_PER_M = 0.1;

/**
 * D1, D4: the path from the directions at the stations, from the reference top downwards.
 *
 * Between the top and the first station the first direction is carried upwards, and said so; below the last station nothing
 * is added. A first station too far down leaves a gap above it.
 *
 * @param limitM largest depth between stations that counts as read through, metres.
 * @returns undefined where neighbouring directions are opposed.
 */
export function buildPath(
  profile: TangentProfile,
  target: { readonly top: NorthEastDown; readonly method: PathMethodId },
  record: Pick<RunRecord, "find" | "step">,
  limitM: number,
): BuiltPath | undefined {
  const sharpest = sharpestTurn(profile);
  if (!(sharpest.angle < Math.PI / 2)) {
    record.find("error", "survey.reversed", sharpestValues(sharpest));
    return undefined;
  }
  if (sharpest.angle > SHARPEST_RAD_PER_M * Math.max(sharpest.toM - sharpest.fromM, 0.1))
    record.find("warning", "survey.sharp-turn", sharpestValues(sharpest));
  const first = profile.depthM[0]!;
  const unreadTop = first > AT_TOP_M;
  const whole = unreadTop ? withTop(profile) : profile;
  if (unreadTop)
    record.find(first > limitM ? "warning" : "note", "survey.top-unread", {
      first_m: first,
      limit_m: limitM,
    });
  if (first < -AT_TOP_M) record.find("warning", "survey.above-top", { first_m: first });
  const between = gapsOf(profile.depthM, limitM);
  for (const gap of between)
    record.find("warning", "survey.gap", { from_m: gap.fromM, to_m: gap.toM, limit_m: limitM });
  const gaps = first > Math.max(limitM, LONGEST_PROBE_M) ? [{ fromM: 0, toM: first }, ...between] : between;
  const path = computePath(whole, startOf(whole, target.top), target.method);
  record.step("path", stepRevisions.path, {
    method: target.method,
    stations: profile.depthM.length,
    from_m: first,
    to_m: profile.depthM[profile.depthM.length - 1]!,
    largest_dogleg_deg: degreesFromRadians(sharpest.angle),
  });
  return { path, gaps };
}

/** A probe that hangs from the reference top reads its first stop about so far down, metres: common practice, no source. */
const LONGEST_PROBE_M = 1;

/** A first station this close to the top is at the top, metres. */
const AT_TOP_M = 0.001;

/** The top is where depth is 0; a first station above it starts as much higher along its own direction. */
function startOf(profile: TangentProfile, top: NorthEastDown): NorthEastDown {
  const above = profile.depthM[0]!;
  return ned(
    top.north + above * profile.north[0]!,
    top.east + above * profile.east[0]!,
    top.down + above * profile.down[0]!,
  );
}

function withTop(profile: TangentProfile): TangentProfile {
  const before = (value: number, values: Float64Array) => Float64Array.from([value, ...values]);
  return {
    depthM: before(0, profile.depthM),
    north: before(profile.north[0]!, profile.north),
    east: before(profile.east[0]!, profile.east),
    down: before(profile.down[0]!, profile.down),
  };
}

const sharpestValues = (turn: { angle: number; fromM: number; toM: number }) => ({
  dogleg_deg: degreesFromRadians(turn.angle),
  from_m: turn.fromM,
  to_m: turn.toM,
});

function sharpestTurn(profile: TangentProfile): { angle: number; fromM: number; toM: number } {
  const { depthM, north, east, down } = profile;
  let sharpest = { angle: 0, fromM: Number.NaN, toM: Number.NaN };
  for (let i = 1; i < depthM.length; i++) {
    const angle = dogleg(ned(north[i - 1]!, east[i - 1]!, down[i - 1]!), ned(north[i]!, east[i]!, down[i]!));
    if (angle > sharpest.angle) sharpest = { angle, fromM: depthM[i - 1]!, toM: depthM[i]! };
  }
  return sharpest;
}

function gapsOf(depthM: Float64Array, limitM: number): RunResult["gaps"] {
  const gaps: { fromM: number; toM: number }[] = [];
  for (let i = 1; i < depthM.length; i++)
    // a hair more than the limit, so that an interval of exactly the limit is none
    if (depthM[i]! - depthM[i - 1]! > limitM * (1 + 1e-9))
      gaps.push({ fromM: depthM[i - 1]!, toM: depthM[i]! });
  return gaps;
}
