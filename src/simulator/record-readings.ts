import { contract, type Readings, radiansFromDegrees, SECONDS_PER_HOUR, wrapToTurn } from "#core";
import type { ProbeErrors } from "./probe-errors.ts";
import type { RandomSource } from "./random.ts";
import { rotate } from "./rotation.ts";
import type { Stop } from "./run-motion.ts";
import type { RunSpec } from "./run-spec.ts";
import { inclinationAndAzimuth, seatProbe, senseTilt } from "./sense.ts";

/** Time in which the probe takes the temperature of the hole, seconds (our own choice). */
const THERMAL_TIME_S = 400;

/** What the instrument writes down at the stops, in core units, rounded as the instrument rounds. */
export function recordReadings(
  spec: RunSpec,
  errors: ProbeErrors,
  stops: readonly Stop[],
  random: RandomSource,
): Readings {
  const { measures } = spec;
  const withTilt = measures === "tilt-turn" || measures === "keyed-tilt";
  const withGyro = measures === "tilt-turn" || measures === "acceleration-turn";
  const temperature = stops.map((stop) => temperatureAt(spec, stop.state.timeS));
  const tilt = readTilts(spec, errors, stops, temperature, random.fork("tilt"));
  const turn = readTurns(spec, errors, stops, random.fork("gyro"));
  const direction = readDirections(spec, errors, stops, random.fork("direction"));
  const { tiltDeg = 0, turnDeg = 0, depthM = 0, acceleration = 0 } = spec.resolution ?? {};
  const column = (wanted: boolean, value: (i: number) => number, step = 0): Float64Array =>
    Float64Array.from(stops, (_, i) => (wanted ? roundTo(value(i), step) : Number.NaN));
  const angleStep = radiansFromDegrees(tiltDeg);
  const shownDepth = (i: number) => stops[i]!.shownDepthM;
  const averaged = withTilt && spec.samplesPerRow !== undefined;
  const standardError = (): number => radiansFromDegrees(errors.tiltNoiseDeg);
  return {
    count: stops.length,
    timeS: column(true, (i) => stops[i]!.state.timeS - stops[0]!.state.timeS, 0.001),
    depthM: column(spec.countsPerM === undefined, shownDepth, depthM),
    depthCounts: column(spec.countsPerM !== undefined, (i) => shownDepth(i) * (spec.countsPerM ?? 0), 1),
    tiltXRad: column(withTilt, (i) => tilt[i]!.tiltXRad, angleStep),
    tiltYRad: column(withTilt, (i) => tilt[i]!.tiltYRad, angleStep),
    turnRad: column(withGyro, (i) => turn[i]!, radiansFromDegrees(turnDeg)),
    accX: column(measures === "acceleration-turn", (i) => tilt[i]!.acceleration[0], acceleration),
    accY: column(measures === "acceleration-turn", (i) => tilt[i]!.acceleration[1], acceleration),
    accZ: column(measures === "acceleration-turn", (i) => tilt[i]!.acceleration[2], acceleration),
    inclinationRad: column(measures === "inclination-azimuth", (i) => direction[i]!.inclination, angleStep),
    azimuthRad: column(measures === "inclination-azimuth", (i) => direction[i]!.azimuth, angleStep),
    leg: stops.map((stop) => stop.leg),
    face: Uint8Array.from(stops, (stop) => writtenFace(spec, stop.face)),
    temperatureC: column(spec.temperature !== undefined, (i) => temperature[i]!, 0.1),
    samples: column(averaged, () => spec.samplesPerRow ?? 0),
    seTiltXRad: column(averaged, standardError, angleStep / 10),
    seTiltYRad: column(averaged, standardError, angleStep / 10),
    // line 1 of the file holds the headings
    line: Int32Array.from(stops, (_, i) => i + 2),
  };
}

const roundTo = (value: number, step: number): number => (step > 0 ? Math.round(value / step) * step : value);

function writtenFace(spec: RunSpec, face: 1 | 2): 1 | 2 {
  const swapped = spec.faults?.some((fault) => fault.fault === "swapped-faces") ?? false;
  return swapped ? (face === 1 ? 2 : 1) : face;
}

function temperatureAt(spec: RunSpec, timeS: number): number {
  if (spec.temperature === undefined) return Number.NaN;
  const { surfaceC, groundC } = spec.temperature;
  return groundC + (surfaceC - groundC) * Math.exp(-timeS / THERMAL_TIME_S);
}

function readTilts(
  spec: RunSpec,
  errors: ProbeErrors,
  stops: readonly Stop[],
  temperature: readonly number[],
  random: RandomSource,
): readonly ReturnType<typeof senseTilt>[] {
  contract(
    errors.clearanceM === 0 || (spec.gaugeLengthM ?? 0) > 0,
    `simulateRun: run ${spec.id} has play in the tube but no gauge length`,
  );
  return stops.map(({ state }, i) => {
    const tangent = rotate(state.attitude, { north: 0, east: 0, down: 1 });
    const seated = seatProbe(state.attitude, tangent, errors.clearanceM, spec.gaugeLengthM ?? 0, random);
    return senseTilt(seated, errors, temperature[i]!, random);
  });
}

/** The gyro: true count, scale, zero rate, random walk, and what it lost on the way. Radians. */
function readTurns(
  spec: RunSpec,
  errors: ProbeErrors,
  stops: readonly Stop[],
  random: RandomSource,
): readonly number[] {
  const bias = radiansFromDegrees(errors.gyroBiasDegPerH) / SECONDS_PER_HOUR;
  const walkPerRootS = radiansFromDegrees(errors.gyroWalkDegPerRootH) / Math.sqrt(SECONDS_PER_HOUR);
  const jumps = (spec.faults ?? []).filter((fault) => fault.fault === "gyro-jump");
  let [walk, time, deepest] = [0, 0, Number.NEGATIVE_INFINITY];
  return stops.map(({ state }) => {
    walk += walkPerRootS * Math.sqrt(state.timeS - time) * random.normal();
    time = state.timeS;
    deepest = Math.max(deepest, state.depthM);
    const lost = jumps.reduce((sum, jump) => sum + (deepest >= jump.atM ? jump.jumpDeg : 0), 0);
    return (1 + errors.gyroScale) * state.turnRad + bias * state.timeS + walk + radiansFromDegrees(lost);
  });
}

/** Inclination and azimuth from the north the run names. */
function readDirections(
  spec: RunSpec,
  errors: ProbeErrors,
  stops: readonly Stop[],
  random: RandomSource,
): readonly { inclination: number; azimuth: number }[] {
  const { site, azimuthNorth = "grid" } = spec;
  const field = site.declinationDeg + (site.declinationErrorDeg ?? 0);
  const fromGridDeg =
    azimuthNorth === "grid" ? 0 : site.convergenceDeg - (azimuthNorth === "magnetic" ? field : 0);
  return stops.map(({ state }) => {
    const { inclination, azimuth } = inclinationAndAzimuth(state.attitude);
    const leanNoise = radiansFromDegrees(errors.inclinationNoiseDeg) * random.normal();
    const azimuthError = errors.azimuthBiasDeg + errors.azimuthNoiseDeg * random.normal();
    return {
      inclination: Math.abs(inclination + leanNoise),
      azimuth: wrapToTurn(azimuth + radiansFromDegrees(fromGridDeg + azimuthError)),
    };
  });
}
