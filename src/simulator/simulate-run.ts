import {
  contract,
  type HeadingReference,
  type HolePath,
  type NorthEastDown,
  radiansFromDegrees,
  type SurveyRun,
  wrapToTurn,
} from "#core";
import { tangentOf } from "./hole-shape.ts";
import { levelledHeading } from "./levelled-heading.ts";
import { NO_ERRORS, type ProbeErrors } from "./probe-errors.ts";
import { createRandom, type RandomSource } from "./random.ts";
import { recordReadings } from "./record-readings.ts";
import { runMotion, type SetHeadings, type Stop } from "./run-motion.ts";
import type { ReferenceSpec, RunSpec, SimulatedSite } from "./run-spec.ts";
import { truePath } from "./true-path.ts";

/** What really was, row by row of the record. */
export interface RunTruth {
  /** the axis at the top (depth 0) and at the nominal stations, whether they were read or not */
  readonly path: HolePath;
  /** true depth of the probe at each row, metres */
  readonly depthM: Float64Array;
  /** heading of probe +x brought upright, radians from grid north, (-pi, pi], at each row */
  readonly headingRad: Float64Array;
  /** direction of the hole at each row */
  readonly tangents: readonly NorthEastDown[];
  /** the errors that the probe had in this run, after the chance of the run */
  readonly errors: ProbeErrors;
}

export interface SimulatedRun {
  readonly run: SurveyRun;
  readonly truth: RunTruth;
}

/**
 * One survey run through a known hole with a known probe.
 *
 * @param spec the run; see RunSpec for what is assumed where nothing is given.
 * @param seed chance of noise, spin, slip and references; the same seed and run id give the same run.
 * @returns the run as it would be read from its file, and the truth.
 * @throws ContractError if the stations do not increase, or the face changes away from the top.
 * Frame: site north-east-down.
 */
export function simulateRun(spec: RunSpec, seed: number | string): SimulatedRun {
  for (const [i, depth] of spec.stationsM.entries())
    contract(i === 0 || depth > spec.stationsM[i - 1]!, `simulateRun: station ${depth} m is out of order`);
  const { random, errors, references } = beginRun(spec, seed);
  const stops = runMotion(spec, errors, references.true, random.fork("motion"));
  const readings = recordReadings(spec, errors, stops, random.fork("record"));
  const run: SurveyRun = {
    id: spec.id,
    elementId: spec.elementId,
    tubeId: spec.tubeId,
    instrumentId: spec.instrumentId,
    measures: spec.measures,
    calibrationIds: spec.calibrationIds ?? [],
    zeroed: spec.zeroed ?? false,
    operator: spec.operator,
    startedAt: spec.startedAt,
    ...references.written,
    closureModel: "linear-time",
    closureLimitRad: undefined,
    ...azimuthsToGrid(spec),
    grooveBearingRad:
      spec.grooveBearingDeg === undefined ? undefined : radiansFromDegrees(spec.grooveBearingDeg),
    spiral: (spec.spiral ?? []).map((row) => ({
      depthM: row.depthM,
      twistRad: radiansFromDegrees(row.twistDeg),
    })),
    start: undefined,
    depthZeroM: 0,
    declaredErrors: [],
    stationLimitM: undefined,
    readings,
    file: `readings/${spec.id}.csv`,
    field: `runs[${spec.id}]`,
  };
  return { run, truth: { ...truthOf(spec, stops), errors } };
}

/** The chance of a run, and what it decides before the probe is moved: the same for the same seed and run id. */
export function beginRun(spec: RunSpec, seed: number | string) {
  const random = createRandom(seed).fork(spec.id);
  const errors = errorsOfRun(spec, random.fork("bias"));
  return { random, errors, references: setReferences(spec, random.fork("references")) };
}

function errorsOfRun(spec: RunSpec, random: RandomSource): ProbeErrors {
  const given = { ...NO_ERRORS, ...spec.errors };
  return {
    ...given,
    gyroBiasDegPerH: given.gyroBiasDegPerH + given.gyroBiasRunDegPerH * random.normal(),
  };
}

function truthOf(spec: RunSpec, stops: readonly Stop[]): Omit<RunTruth, "errors"> {
  const tangentAt = tangentOf(spec.hole);
  const tangents = stops.map((stop) => tangentAt(stop.state.depthM).tangent);
  const depths = spec.stationsM[0] === 0 ? spec.stationsM : [0, ...spec.stationsM];
  return {
    path: truePath(spec.hole, spec.head, depths),
    depthM: Float64Array.from(stops, (stop) => stop.state.depthM),
    headingRad: Float64Array.from(stops, (stop, i) => levelledHeading(stop.state.attitude, tangents[i]!)),
    tangents,
  };
}

type Written = Pick<SurveyRun, "opening" | "closing" | "ties">;

function setReferences(spec: RunSpec, random: RandomSource): { true: SetHeadings; written: Written } {
  const withGyro = spec.measures === "tilt-turn" || spec.measures === "acceleration-turn";
  const exact: ReferenceSpec = { headingDeg: 0, north: "grid", standardUncertaintyDeg: 0 };
  const opening = spec.opening ?? (withGyro ? exact : undefined);
  const all = [opening, ...(spec.ties ?? []), spec.closing].map((reference) =>
    reference === undefined
      ? undefined
      : {
          written: headingReference(reference, spec.site),
          true: trueHeading(reference, spec.site, random.normal()),
        },
  );
  const ties = all.slice(1, -1).flatMap((tie) => (tie === undefined ? [] : [tie]));
  return {
    true: {
      opening: all[0]?.true ?? 0,
      ties: ties.map((tie) => tie.true),
      closing: all.at(-1)?.true,
    },
    written: {
      opening: all[0]?.written,
      ties: ties.map((tie) => tie.written),
      closing: all.at(-1)?.written,
    },
  };
}

/** What has to be added to a bearing from the named north to have it from grid north, as the job states it. */
function toGridDeg(north: ReferenceSpec["north"], site: SimulatedSite): number {
  if (north === "grid") return 0;
  return (north === "magnetic" ? site.declinationDeg : 0) - site.convergenceDeg;
}

function headingReference(reference: ReferenceSpec, site: SimulatedSite): HeadingReference {
  const magnetic = reference.north === "magnetic";
  return {
    headingRad: wrapToTurn(radiansFromDegrees(reference.headingDeg + toGridDeg(reference.north, site))),
    standardUncertaintyRad: radiansFromDegrees(reference.standardUncertaintyDeg),
    givenNorth: reference.north,
    givenHeadingRad: radiansFromDegrees(reference.headingDeg),
    declinationRad: magnetic ? radiansFromDegrees(site.declinationDeg) : 0,
    declinationUncertaintyRad: magnetic ? radiansFromDegrees(site.declinationUncertaintyDeg ?? 0) : 0,
    convergenceRad: reference.north === "grid" ? 0 : radiansFromDegrees(site.convergenceDeg),
  };
}

function trueHeading(reference: ReferenceSpec, site: SimulatedSite, chance: number): number {
  const error = reference.errorDeg ?? chance * reference.standardUncertaintyDeg;
  const field = reference.north === "magnetic" ? (site.declinationErrorDeg ?? 0) : 0;
  return radiansFromDegrees(reference.headingDeg + toGridDeg(reference.north, site) + field - error);
}

function azimuthsToGrid(
  spec: RunSpec,
): Pick<
  SurveyRun,
  "azimuthNorth" | "azimuthToGridRad" | "azimuthUncertaintyRad" | "azimuthDeclinationUncertaintyRad"
> {
  const grid = { azimuthToGridRad: 0, azimuthUncertaintyRad: 0, azimuthDeclinationUncertaintyRad: 0 };
  if (spec.measures !== "inclination-azimuth") return { azimuthNorth: undefined, ...grid };
  const north = spec.azimuthNorth ?? "grid";
  const uncertainty = north === "magnetic" ? (spec.site.declinationUncertaintyDeg ?? 0) : 0;
  return {
    ...grid,
    azimuthNorth: north,
    azimuthToGridRad: radiansFromDegrees(toGridDeg(north, spec.site)),
    azimuthDeclinationUncertaintyRad: radiansFromDegrees(uncertainty),
  };
}
