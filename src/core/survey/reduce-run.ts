import {
  type Contribution,
  combinePasses,
  leadingPass,
  type PassTangents,
  usualInterval,
} from "../correction/combine-passes.ts";
import { layOutRun, type RunLayout } from "../correction/passes.ts";
import { type AngleZero, type CorrectedTilts, withoutZero } from "../correction/tilt.ts";
import { tangentFromInclination, tangentFromTilt } from "../frames/attitude.ts";
import type { TangentProfile } from "../frames/tangent-profile.ts";
import type { NorthEastDown } from "../geometry/vector.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import type { Closure } from "../uncertainty/type-a/from-closures.ts";
import { degreesFromRadians } from "../units/quantity.ts";
import { buildPath } from "./build-path.ts";
import { type PassStations, passTangents, type StationVariance, withTopRow } from "./pass-stations.ts";
import { reportAgreement } from "./report-agreement.ts";
import type { RunResult } from "./results.ts";
import { classOf, type RunContext, RunRecord } from "./run-context.ts";
import { runDepths } from "./run-depths.ts";
import { faceZeroOfRun, reportFaceZero } from "./run-face-zero.ts";
import { carriedHeadings, keyedHeadings } from "./run-headings.ts";
import { runTilts } from "./run-tilts.ts";
import { stepRevisions } from "./steps.ts";

/** A run reduced as far as directions at stations: what several runs of one hole are combined from. */
export interface ReducedRun {
  readonly result: RunResult;
  /** undefined where the run could not be worked out */
  readonly tangents: PassTangents | undefined;
  /** which readings each station rests on; empty where the run could not be worked out */
  readonly rows: readonly StationRow[];
  /** what the run says of its instrument; undefined where it could not be worked out */
  readonly evidence: RunEvidence | undefined;
}

/** What a run shows of how well its instrument reads. */
export interface RunEvidence {
  readonly passes: readonly PassStations[];
  /** heading of probe +x by row; undefined where the readings are azimuths */
  readonly headingRad: Float64Array | undefined;
  /** sines of the lean by row, with the zero taken off; undefined where the readings are inclinations */
  readonly tilts: CorrectedTilts | undefined;
  /** zero that turning the probe left to be found */
  readonly faceZero: AngleZero | undefined;
  /** what a gyro brought back, before anything was spread */
  readonly closure: (Closure & { readonly referenceRad: number }) | undefined;
}

/**
 * Works one run out: from raw readings to the axis of the hole.
 *
 * Never throws on readings: what cannot be worked out is left without a path, with findings that say why.
 *
 * Frame: readings in probe axes, result in site NED. Source: rules A to D.
 * Checked against: the rigid-body simulator (test/jobs), test/published.
 */
export function reduceRun(run: SurveyRun, context: RunContext): ReducedRun {
  const record = new RunRecord(run);
  const outcome = tangentsOfRun(run, context, record);
  const built =
    outcome === undefined
      ? undefined
      : buildPath(outcome.profile, context, record, run.stationLimitM ?? 2 * outcome.intervalM);
  const path = built?.path;
  return {
    result: {
      runId: run.id,
      elementId: run.elementId,
      tubeId: run.tubeId,
      method: context.method,
      steps: record.steps,
      findings: record.findings,
      path,
      covariances: [],
      gaps: built?.gaps ?? [],
      judgeable: path !== undefined && (outcome?.judgeable ?? false),
    },
    tangents:
      outcome === undefined || path === undefined
        ? undefined
        : {
            ...outcome.profile,
            name: run.id,
            face: 0,
            variance: outcome.variance,
            sharedVariance: outcome.sharedVariance,
          },
    rows: path === undefined ? [] : (outcome?.rows ?? []),
    evidence: path === undefined ? undefined : outcome?.evidence,
  };
}

interface RunTangents {
  readonly profile: TangentProfile;
  readonly variance: Float64Array;
  readonly sharedVariance: Float64Array;
  readonly rows: readonly StationRow[];
  readonly evidence: RunEvidence;
  readonly judgeable: boolean;
  /** usual distance between stations, metres */
  readonly intervalM: number;
}

/** Standard uncertainties, radians, of errors that all stations of a pass or of the run share. */
interface Spread {
  readonly wanderRad: number;
  readonly referenceRad: number;
  readonly zeroRad: number;
}

/** A row of the readings that speaks at a station, with its share; the shares of a station add up to 1. */
export interface StationRow {
  /** index in the profile of directions */
  readonly station: number;
  readonly row: number;
  readonly share: number;
}

function stationRows(
  contributions: readonly Contribution[],
  passes: readonly PassStations[],
): readonly StationRow[] {
  return contributions.flatMap(({ station, pass, passStation, share }) => {
    const rows = passes[pass]!.rows[passStation]!;
    return rows.map((row) => ({ station, row, share: share / rows.length }));
  });
}

function tangentsOfRun(run: SurveyRun, context: RunContext, record: RunRecord): RunTangents | undefined {
  const depthM = runDepths(run, context, record);
  const layout = layOutRun(run.readings.leg, run.readings.face, depthM);
  if (run.measures === "inclination-azimuth") {
    const { inclinationRad, azimuthRad } = run.readings;
    if (run.azimuthNorth !== undefined && run.azimuthNorth !== "grid")
      record.step("north", stepRevisions.north, {
        given_north: run.azimuthNorth,
        added_deg: degreesFromRadians(run.azimuthToGridRad),
      });
    const directionOf = (row: number) =>
      tangentFromInclination(inclinationRad[row]!, azimuthRad[row]! + run.azimuthToGridRad);
    const spread = { wanderRad: 0, referenceRad: run.azimuthUncertaintyRad, zeroRad: 0 };
    const shown = { headingRad: undefined, tilts: undefined, faceZero: undefined, closure: undefined };
    return combineRun(run, context, layout, depthM, directionOf, spread, shown, true, record);
  }
  const rawTilts = runTilts(run, context, record);
  const headingsOf = (tilts: CorrectedTilts, into: RunRecord) =>
    run.measures === "keyed-tilt"
      ? keyedHeadings(run, depthM, into)
      : carriedHeadings(run, context, depthM, tilts, layout, into);
  const tried = (tilts: CorrectedTilts) => headingsOf(tilts, new RunRecord(run))?.headingRad;
  const zero = faceZeroOfRun(rawTilts, tried, layout, depthM);
  const tilts = zero === undefined ? rawTilts : withoutZero(rawTilts, zero);
  const headings = headingsOf(tilts, record);
  if (headings === undefined) return undefined;
  if (zero !== undefined) reportFaceZero(zero, depthM, record);
  const directionOf = (row: number) =>
    tangentFromTilt({ x: tilts.x[row]!, y: tilts.y[row]! }, headings.headingRad[row]!);
  return combineRun(
    run,
    context,
    layout,
    depthM,
    directionOf,
    { ...headings, zeroRad: zero === undefined ? classOf(context).tilt.zeroRad : 0 },
    { headingRad: headings.headingRad, tilts, faceZero: zero, closure: headings.closure },
    headings.judgeable,
    record,
  );
}

function combineRun(
  run: SurveyRun,
  context: RunContext,
  layout: RunLayout,
  depthM: Float64Array,
  directionOf: (row: number) => NorthEastDown,
  spread: Spread,
  shown: Omit<RunEvidence, "passes">,
  judgeable: boolean,
  record: RunRecord,
): RunTangents | undefined {
  const { noiseRad } = classOf(context).tilt;
  const { seTiltXRad, seTiltYRad } = run.readings;
  const varianceOf = (row: number, lateral: number): StationVariance => {
    const squares = [seTiltXRad[row]!, seTiltYRad[row]!].map((se) => (Number.isNaN(se) ? 0 : se * se));
    return {
      own: noiseRad * noiseRad + (squares[0]! + squares[1]!) / 2,
      shared: (lateral * spread.wanderRad) ** 2,
    };
  };
  const passes = withTopRow(layout, depthM)
    .map((pass) => passTangents(pass, depthM, directionOf, varianceOf, record))
    .filter((pass) => pass.depthM.length > 0);
  const stations = passes.reduce((most, pass) => Math.max(most, pass.depthM.length), 0);
  if (stations < 2) {
    record.find("error", "survey.too-few-stations", { stations });
    return undefined;
  }
  const { profile, agreement, passesAt, contributions } = combinePasses(passes);
  if (passes.length > 1) {
    record.step("combine-passes", stepRevisions["combine-passes"], {
      passes: passes.length,
      stations_read_more_than_once: passesAt.reduce((sum, n) => sum + (n > 1 ? 1 : 0), 0),
    });
    reportAgreement(agreement, "survey.passes-disagree", record);
  }
  const base = leadingPass(passes);
  const own = base.variance.map((variance, i) => variance - base.sharedVariance[i]!);
  const meanOwn = own.reduce((sum, v) => sum + v, 0) / own.length;
  const sharedVariance = profile.north.map(
    (north, i) => spread.zeroRad ** 2 + (Math.hypot(north, profile.east[i]!) * spread.referenceRad) ** 2,
  );
  return {
    profile,
    variance: sharedVariance.map((shared, i) => shared + meanOwn / Math.max(passesAt[i]!, 1)),
    sharedVariance,
    rows: stationRows(contributions, passes),
    evidence: { ...shown, passes },
    judgeable,
    intervalM: usualInterval(base.depthM),
  };
}
