import { gyroOwnRate, gyroScale } from "../calibration/gyro-zero.ts";
import type { ChainRows } from "../correction/heading-chain.ts";
import { type ClosedHeadings, closeHeadings, type KnownHeading } from "../correction/heading-closure.ts";
import type { RunLayout } from "../correction/passes.ts";
import type { CorrectedTilts } from "../correction/tilt.ts";
import { earthRateGrid } from "../frames/earth.ts";
import type { HeadingReference, SurveyRun } from "../readings/survey-run.ts";
import type { Closure } from "../uncertainty/type-a/from-closures.ts";
import { degreesFromRadians, SECONDS_PER_HOUR } from "../units/quantity.ts";
import { calibrationOf, classOf, type RunContext, type RunRecord } from "./run-context.ts";
import { stepRevisions } from "./steps.ts";

/** Heading of probe +x at every row; whether the run's references agree well enough to judge by it. */
export interface RunHeadings {
  /** radians from grid north */
  readonly headingRad: Float64Array;
  readonly judgeable: boolean;
  /** standard uncertainty of a pass's heading against that of another pass of the run, radians */
  readonly wanderRad: number;
  /** standard uncertainty of the run's headings as a whole, radians: what another run need not share */
  readonly referenceRad: number;
  /** what the gyro brought back, with the uncertainty of one reference; undefined where nothing was closed */
  readonly closure: (Closure & { readonly referenceRad: number }) | undefined;
}

/** A6: heading of a keyed probe: the groove's bearing, its spiral by depth, and half a turn on face 2. */
export function keyedHeadings(
  run: SurveyRun,
  depthM: Float64Array,
  record: RunRecord,
): RunHeadings | undefined {
  const groove = run.grooveBearingRad;
  if (groove === undefined) {
    record.find("error", "survey.no-groove-bearing", {});
    return undefined;
  }
  const headingRad = depthM.map((depth, i) => {
    const turned = run.readings.face[i] === 2 ? Math.PI : 0;
    return groove + turned + twistAt(run.spiral, depth);
  });
  const first = run.spiral[0];
  const last = run.spiral[run.spiral.length - 1];
  record.step("heading", stepRevisions.heading, {
    groove_bearing_deg: degreesFromRadians(groove),
    ...(last === undefined ? {} : { twist_at_last_deg: degreesFromRadians(last.twistRad) }),
  });
  const deepest = depthM.filter(Number.isFinite).reduce((most, depth) => Math.max(most, depth), 0);
  if (first !== undefined && last !== undefined && last.depthM < deepest - 0.001)
    record.find("warning", "survey.spiral-short", { spiral_to_m: last.depthM, read_to_m: deepest });
  return { headingRad, judgeable: true, wanderRad: 0, referenceRad: 0, closure: undefined };
}

/** Twist of the groove at a depth: linear between the measured depths, the nearest one's outside of them. */
function twistAt(spiral: SurveyRun["spiral"], depthM: number): number {
  if (spiral.length === 0) return 0;
  const below = spiral.findIndex((entry) => entry.depthM >= depthM);
  if (below === 0) return spiral[0]!.twistRad;
  if (below < 0) return Number.isNaN(depthM) ? Number.NaN : spiral[spiral.length - 1]!.twistRad;
  const upper = spiral[below - 1]!;
  const lower = spiral[below]!;
  const part = (depthM - upper.depthM) / (lower.depthM - upper.depthM);
  return upper.twistRad + part * (lower.twistRad - upper.twistRad);
}

/** A4, A5, C4: headings of a probe that carries its heading by a gyro, closed on what is known. */
export function carriedHeadings(
  run: SurveyRun,
  context: RunContext,
  depthM: Float64Array,
  tilts: CorrectedTilts,
  layout: RunLayout,
  record: RunRecord,
): RunHeadings | undefined {
  const known = knownHeadings(run, layout);
  if (known.length === 0) {
    record.find("error", "survey.no-heading", {});
    return undefined;
  }
  const { latitudeRad } = context.place;
  if (latitudeRad === undefined) {
    record.find("error", "survey.no-latitude", {});
    return undefined;
  }
  reportNorth(run, record);
  const whole = chainRows(run, context, depthM, tilts, layout, record);
  const usable = usableRows(whole);
  const rows = pickRows(whole, usable);
  const usableKnown = known.flatMap((reference) => {
    const row = usable.indexOf(reference.row);
    if (row < 0) record.find("error", "survey.reference-row-unusable", {}, reference.row);
    return row < 0 ? [] : [{ ...reference, row }];
  });
  if (usableKnown.length < known.length) return undefined;
  const ownRateRadPerS = ownRateOf(context, record);
  const closed = closeHeadings(
    rows,
    { ownRateRadPerS, earthRate: earthRateGrid(latitudeRad, context.place.convergenceRad ?? 0) },
    usableKnown,
    run.closureModel,
  );
  record.step("heading", stepRevisions.heading, {
    holonomy_deg: degreesFromRadians(closed.holonomyRad),
    earth_turn_deg: degreesFromRadians(closed.earthTurnRad),
  });
  const judgeable = reportClosure(run, context, rows, usableKnown, closed, record);
  const spanS = rows.timeS[rows.timeS.length - 1]! - rows.timeS[0]!;
  const parts = closed.model === "none" ? 1 : 4;
  const headingRad = new Float64Array(depthM.length).fill(Number.NaN);
  usable.forEach((row, i) => {
    headingRad[row] = closed.headingRad[i]!;
  });
  const walkRad = classOf(context).gyro.walk * Math.sqrt(spanS / parts);
  const references = usableKnown.map((reference) => reference.standardUncertaintyRad);
  const [first, last] = [references[0]!, references[references.length - 1]!];
  const seconds = rows.timeS[usableKnown[usableKnown.length - 1]!.row]! - rows.timeS[usableKnown[0]!.row]!;
  // Closed on two headings, the way down leans on the first and the way up on the last.
  const between = closed.model === "none" ? 0 : Math.hypot(first, last) / Math.SQRT2;
  return {
    headingRad,
    judgeable,
    wanderRad: Math.hypot(walkRad, between),
    referenceRad: Math.hypot(walkRad, closed.model === "none" ? first : Math.hypot(first, last) / 2),
    closure:
      seconds > 0 && Number.isFinite(closed.misclosureRad)
        ? {
            misclosureRad: closed.misclosureRad,
            seconds,
            referenceRad: Math.hypot(first, last) / Math.SQRT2,
          }
        : undefined,
  };
}

function knownHeadings(run: SurveyRun, layout: RunLayout): readonly KnownHeading[] {
  const at = (reference: HeadingReference | undefined, row: number | undefined): KnownHeading[] =>
    reference === undefined || row === undefined ? [] : [{ row, ...reference }];
  return [
    ...at(run.opening, layout.openingRow),
    ...run.ties.flatMap((tie, i) => at(tie, layout.tieRows[i])),
    ...at(run.closing, layout.closingRow),
  ].sort((a, b) => a.row - b.row);
}

function reportNorth(run: SurveyRun, record: RunRecord): void {
  for (const [which, reference] of Object.entries({ opening: run.opening, closing: run.closing })) {
    if (reference === undefined || reference.givenNorth === "grid") continue;
    record.step("north", stepRevisions.north, {
      reference: which,
      given_deg: degreesFromRadians(reference.givenHeadingRad),
      given_north: reference.givenNorth,
      ...(reference.givenNorth === "magnetic"
        ? {
            declination_deg: degreesFromRadians(reference.declinationRad),
            declination_uncertainty_deg: degreesFromRadians(reference.declinationUncertaintyRad),
          }
        : {}),
      convergence_deg: degreesFromRadians(reference.convergenceRad),
      grid_deg: degreesFromRadians(reference.headingRad),
    });
  }
}

function chainRows(
  run: SurveyRun,
  context: RunContext,
  depthM: Float64Array,
  tilts: CorrectedTilts,
  layout: RunLayout,
  record: RunRecord,
): ChainRows {
  const { readings } = run;
  const calibration = calibrationOf(context, "gyro-scale");
  let { turnRad } = readings;
  if (calibration !== undefined) {
    const scale = gyroScale(calibration.trueTurnRad, calibration.shownTurnsRad);
    turnRad = turnRad.map((turn) => turn / scale);
    record.step("gyro-scale", stepRevisions["gyro-scale"], { calibration: calibration.id, scale });
  }
  const longest = layout.passes.reduce(
    (best, pass) => (pass.rows.length > best.length ? pass.rows : best),
    [] as readonly number[],
  );
  return { timeS: readings.timeS, turnRad, depthM, tiltX: tilts.x, tiltY: tilts.y, ladder: longest };
}

/** Rows that have all that carrying a heading needs; the others are passed over, and found when the stations are made. */
function usableRows(rows: ChainRows): readonly number[] {
  return Array.from(rows.turnRad, (_, i) => i).filter(
    (i) =>
      Number.isFinite(rows.timeS[i]! + rows.turnRad[i]! + rows.depthM[i]!) &&
      Math.hypot(rows.tiltX[i]!, rows.tiltY[i]!) <= 1,
  );
}

function pickRows(rows: ChainRows, picked: readonly number[]): ChainRows {
  const pick = (values: Float64Array) => Float64Array.from(picked, (row) => values[row]!);
  const placeOf = new Map(picked.map((row, i) => [row, i]));
  return {
    timeS: pick(rows.timeS),
    turnRad: pick(rows.turnRad),
    depthM: pick(rows.depthM),
    tiltX: pick(rows.tiltX),
    tiltY: pick(rows.tiltY),
    ladder: rows.ladder.flatMap((row) => placeOf.get(row) ?? []),
  };
}

function ownRateOf(context: RunContext, record: RunRecord): number {
  const calibration = calibrationOf(context, "gyro-zero");
  if (calibration === undefined) return 0;
  const rate = gyroOwnRate(calibration);
  record.step("gyro-zero", stepRevisions["gyro-zero"], {
    calibration: calibration.id,
    shown_deg_per_h: degreesFromRadians(calibration.rateRadPerS) * SECONDS_PER_HOUR,
    own_rate_deg_per_h: degreesFromRadians(rate) * SECONDS_PER_HOUR,
  });
  return rate;
}

/** Largest misclosure that references, gyro noise and left-over drift explain, three standard deviations wide. */
function closureLimit(
  run: SurveyRun,
  context: RunContext,
  rows: ChainRows,
  known: readonly KnownHeading[],
): number {
  if (run.closureLimitRad !== undefined) return run.closureLimitRad;
  const first = known[0]!;
  const last = known[known.length - 1]!;
  const { walk, biasRadPerS } = classOf(context).gyro;
  const seconds = rows.timeS[last.row]! - rows.timeS[first.row]!;
  return (
    3 *
    Math.sqrt(
      first.standardUncertaintyRad ** 2 +
        last.standardUncertaintyRad ** 2 +
        walk ** 2 * seconds +
        (biasRadPerS * seconds) ** 2,
    )
  );
}

/** @returns false where the misclosure is over its limit: the path is worked out all the same, the verdict is not. */
function reportClosure(
  run: SurveyRun,
  context: RunContext,
  rows: ChainRows,
  known: readonly KnownHeading[],
  closed: ClosedHeadings,
  record: RunRecord,
): boolean {
  if (Number.isNaN(closed.misclosureRad) && known.length < 2) {
    record.find("warning", "survey.heading-open", {});
    return true;
  }
  const limit = closureLimit(run, context, rows, known);
  const misclosure_deg = degreesFromRadians(closed.misclosureRad);
  const limit_deg = degreesFromRadians(limit);
  record.step("heading-closure", stepRevisions["heading-closure"], {
    model: closed.model,
    misclosure_deg,
    limit_deg,
    largest_correction_deg: degreesFromRadians(
      closed.driftRad.reduce((most, drift) => Math.max(most, Math.abs(drift)), 0),
    ),
  });
  if (closed.modelChanged !== undefined)
    record.find("warning", "survey.closure-model", {
      asked: run.closureModel,
      used: closed.model,
      why: closed.modelChanged,
    });
  // asks for what must be true, so that a misclosure that is not a number never passes
  if (Math.abs(closed.misclosureRad) <= limit) return true;
  record.find("error", "survey.misclosure", { misclosure_deg, limit_deg });
  return false;
}
