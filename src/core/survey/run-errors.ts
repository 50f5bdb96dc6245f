import { depthScale } from "../calibration/depth-scale.ts";
import type { HeadingReference, Readings, SurveyRun } from "../readings/survey-run.ts";
import type { SourceId } from "../uncertainty/error-source.ts";
import { calibrationOf, type RunContext } from "./run-context.ts";

/** Values of sources to act on one run, SI and radians. A source that is missing is 0. */
export type SourceValues = ReadonlyMap<SourceId, number>;

/** Chance of one run: each reading's own, and each tie's. What is missing is 0. */
export interface ChanceErrors {
  readonly rows?: RowErrors;
  /** error of the heading of each tie, radians */
  readonly tiesRad?: readonly number[];
}

/** Chance of one run row by row, added to what is read. Arrays by row of the readings. */
export interface RowErrors {
  /** noise and seating together, radians */
  readonly tiltXRad: Float64Array;
  readonly tiltYRad: Float64Array;
  readonly turnRad: Float64Array;
  readonly depthM: Float64Array;
  readonly inclinationRad: Float64Array;
  readonly azimuthRad: Float64Array;
}

/**
 * The same run, read with a probe, references and a top that are off by the given values.
 *
 * Everything after goes through the unchanged computation, so that every sign pattern is the real one: what turns with the
 * probe turns, what two faces cancel is cancelled, what a closure takes out is taken out.
 *
 * @param chance of every row and every tie; none when left out.
 *
 * Frame: readings in probe axes, top in site NED. Source: rules E1, E2, E4.
 */
export function withErrors(
  run: SurveyRun,
  context: RunContext,
  values: SourceValues,
  chance: ChanceErrors = {},
): { readonly run: SurveyRun; readonly context: RunContext } {
  const value = (id: SourceId): number => values.get(id) ?? 0;
  const declination = value("declination");
  const turned = (reference: HeadingReference, own: number): HeadingReference => ({
    ...reference,
    headingRad: reference.headingRad + own + (reference.givenNorth === "magnetic" ? declination : 0),
  });
  const top = {
    north: context.top.north + value("head-north"),
    east: context.top.east + value("head-east"),
    down: context.top.down - value("head-level"),
  };
  return {
    run: {
      ...run,
      readings: readingsWithErrors(run.readings, value, chance.rows, metresPerCount(context)),
      opening: run.opening && turned(run.opening, value("opening-heading")),
      ties: run.ties.map((tie, i) => turned(tie, chance.tiesRad?.[i] ?? 0)),
      closing: run.closing && turned(run.closing, value("closing-heading")),
      grooveBearingRad:
        run.grooveBearingRad === undefined ? undefined : run.grooveBearingRad + value("groove-bearing"),
      azimuthToGridRad:
        run.azimuthToGridRad + value("azimuth-bias") + (run.azimuthNorth === "magnetic" ? declination : 0),
      depthZeroM: run.depthZeroM + value("depth-zero"),
    },
    context: { ...context, top },
  };
}

/** NaN where the run has no depth scale, and so no depth from counts. */
function metresPerCount(context: RunContext): number {
  const calibration = calibrationOf(context, "depth-scale");
  return calibration === undefined
    ? Number.NaN
    : depthScale(calibration.lengthM, calibration.counts).metresPerCount;
}

function readingsWithErrors(
  readings: Readings,
  value: (id: SourceId) => number,
  rows: RowErrors | undefined,
  metresPerCount: number,
): Readings {
  const zeroX = value("tilt-zero-x") + value("misalignment-x");
  const zeroY = value("tilt-zero-y") + value("misalignment-y");
  const scale = value("tilt-scale");
  const cross = value("cross-axis");
  const at = (array: Float64Array | undefined, i: number): number => array?.[i] ?? 0;
  const tiltX = (x: number, y: number, i: number) => zeroX + scale * x + cross * y + at(rows?.tiltXRad, i);
  const tiltY = (x: number, y: number, i: number) => zeroY + scale * y + cross * x + at(rows?.tiltYRad, i);
  const { tiltXRad, tiltYRad, accX, accY, accZ, turnRad, timeS, depthM, depthCounts } = readings;
  const magnitude = (i: number) => Math.hypot(accX[i]!, accY[i]!, accZ[i]!);
  const gyroBias = value("gyro-bias");
  const gyroScale = value("gyro-scale");
  const stretched = 1 + value("depth-scale");
  const inclinationBias = value("inclination-bias");
  return {
    ...readings,
    tiltXRad: tiltXRad.map((x, i) => x + tiltX(x, tiltYRad[i]!, i)),
    tiltYRad: tiltYRad.map((y, i) => y + tiltY(tiltXRad[i]!, y, i)),
    accX: accX.map((x, i) => x + magnitude(i) * tiltX(x / magnitude(i), accY[i]! / magnitude(i), i)),
    accY: accY.map((y, i) => y + magnitude(i) * tiltY(accX[i]! / magnitude(i), y / magnitude(i), i)),
    turnRad: turnRad.map((turn, i) => turn + gyroBias * timeS[i]! + gyroScale * turn + at(rows?.turnRad, i)),
    depthM: depthM.map((depth, i) => depth * stretched + at(rows?.depthM, i)),
    depthCounts: depthCounts.map((counts, i) => counts * stretched + at(rows?.depthM, i) / metresPerCount),
    inclinationRad: readings.inclinationRad.map((inclination, i) =>
      // plumb with no azimuth has no direction in which to be off
      Number.isNaN(readings.azimuthRad[i]!)
        ? inclination
        : inclination + inclinationBias + at(rows?.inclinationRad, i),
    ),
    azimuthRad: readings.azimuthRad.map((azimuth, i) => azimuth + at(rows?.azimuthRad, i)),
  };
}
