import {
  type ContinuousLog,
  contract,
  degreesFromRadians,
  radiansFromDegrees,
  SECONDS_PER_HOUR,
} from "#core";
import { atStep, csvText } from "./csv.ts";
import type { ProbeErrors } from "./probe-errors.ts";
import type { RandomSource } from "./random.ts";
import { rotate } from "./rotation.ts";
import { runMotion, type TrackPoint } from "./run-motion.ts";
import type { RecordResolution, RunSpec } from "./run-spec.ts";
import { seatProbe, senseTilt } from "./sense.ts";
import { beginRun } from "./simulate-run.ts";

/** How much a moving probe shakes, standard deviation of its lean, degrees (our own choice). */
const SHAKE_DEG = 0.3;

/** A probe that turns faster than this is turned by hand; the earth is slower. */
const TURNING_RAD_PER_S = 1e-3;

const NONE = new Float64Array(0);

/**
 * The log that an instrument writes which records all the time, through hoisting and stops: the same run through the same hole as
 * `simulateRun` gives for the spec and seed, with noise of its own.
 *
 * `tiltNoiseDeg` is the noise of one row of the log. The way between two stops is exact at the ends and even in between.
 *
 * @param spec a run with tilts or accelerations and a gyro. Gaps are kept to; other faults are not made.
 * @param rateHz rows a second, > 0.
 * @throws ContractError for another kind of run, or a fault other than a gap.
 * Frame: probe.
 */
export function simulateContinuousLog(spec: RunSpec, seed: number | string, rateHz = 100): ContinuousLog {
  const { measures } = spec;
  const isTilt = measures === "tilt-turn";
  contract(isTilt || measures === "acceleration-turn", `simulateContinuousLog: ${measures}`);
  contract(rateHz > 0, `simulateContinuousLog: ${rateHz} rows a second`);
  contract(
    (spec.faults ?? []).every(({ fault }) => fault === "gap"),
    "simulateContinuousLog: only gaps can be simulated",
  );
  const { random, errors, references } = beginRun(spec, seed);
  const track: TrackPoint[] = [];
  runMotion(spec, errors, references.true, random.fork("motion"), track);
  const shown = shownAt(spec, errors, track, random.fork("seat"));
  const count = Math.floor(track[track.length - 1]!.state.timeS * rateHz) + 1;
  const columns = sampled(track, shown, errors, count, rateHz, random.fork("log"));
  const { tiltDeg = 0, turnDeg = 0, depthM = 0, acceleration = 0 } = spec.resolution ?? {};
  const { countsPerM } = spec;
  const lean = isTilt ? radiansFromDegrees(tiltDeg) : acceleration;
  const [x, y] = [rounded(columns.x, lean), rounded(columns.y, lean)];
  return {
    measures,
    count,
    timeS: columns.timeS,
    depthM: countsPerM === undefined ? rounded(columns.depthM, depthM) : NONE,
    depthCounts:
      countsPerM === undefined ? NONE : columns.depthM.map((depth) => Math.round(depth * countsPerM)),
    tiltXRad: isTilt ? x : NONE,
    tiltYRad: isTilt ? y : NONE,
    accX: isTilt ? NONE : x,
    accY: isTilt ? NONE : y,
    accZ: isTilt ? NONE : rounded(columns.z, acceleration),
    turnRad: rounded(columns.turnRad, radiansFromDegrees(turnDeg)),
    temperatureC: NONE,
    leg: new Uint8Array(0),
    face: columns.face,
    // line 1 of the file holds the headings
    line: Int32Array.from({ length: count }, (_, i) => i + 2),
  };
}

/** What the sensors show without noise at one point of the track: lean towards x and y, and along the hole. */
type Shown = readonly [number, number, number];

function shownAt(
  spec: RunSpec,
  errors: ProbeErrors,
  track: readonly TrackPoint[],
  random: RandomSource,
): readonly Shown[] {
  const noiseless = { ...errors, tiltNoiseDeg: 0 };
  let previous: { attitude: unknown; shown: Shown } | undefined;
  return track.map(({ state }) => {
    // a probe that was not moved sits where it sat
    if (previous?.attitude === state.attitude) return previous.shown;
    const tangent = rotate(state.attitude, { north: 0, east: 0, down: 1 });
    const seated = seatProbe(state.attitude, tangent, errors.clearanceM, spec.gaugeLengthM ?? 0, random);
    const { tiltXRad, tiltYRad, acceleration } = senseTilt(seated, noiseless, Number.NaN, random);
    const shown: Shown = spec.measures === "tilt-turn" ? [tiltXRad, tiltYRad, 0] : acceleration;
    previous = { attitude: state.attitude, shown };
    return shown;
  });
}

function sampled(
  track: readonly TrackPoint[],
  shown: readonly Shown[],
  errors: ProbeErrors,
  count: number,
  rateHz: number,
  random: RandomSource,
) {
  const columns = {
    timeS: Float64Array.from({ length: count }, (_, i) => i / rateHz),
    depthM: new Float64Array(count),
    turnRad: new Float64Array(count),
    x: new Float64Array(count),
    y: new Float64Array(count),
    z: new Float64Array(count),
    face: new Uint8Array(count),
  };
  const bias = radiansFromDegrees(errors.gyroBiasDegPerH) / SECONDS_PER_HOUR;
  const walkStep = radiansFromDegrees(errors.gyroWalkDegPerRootH) / Math.sqrt(SECONDS_PER_HOUR * rateHz);
  const noise = radiansFromDegrees(errors.tiltNoiseDeg);
  const shake = radiansFromDegrees(SHAKE_DEG);
  let walk = 0;
  let k = 0;
  for (let i = 0; i < count; i++) {
    const time = columns.timeS[i]!;
    while (k + 2 < track.length && track[k + 1]!.state.timeS <= time) k++;
    const [from, to] = [track[k]!, track[k + 1]!];
    const span = to.state.timeS - from.state.timeS;
    const share = span > 0 ? Math.min(1, (time - from.state.timeS) / span) : 0;
    const between = (a: number, b: number): number => a + share * (b - a);
    const isTurned = Math.abs(to.state.turnRad - from.state.turnRad) > TURNING_RAD_PER_S * span;
    const isMoving = isTurned || to.state.travelM !== from.state.travelM;
    const spread = isMoving ? Math.hypot(noise, shake) : noise;
    walk += walkStep * random.normal();
    columns.depthM[i] = between(from.shownDepthM, to.shownDepthM);
    columns.turnRad[i] =
      (1 + errors.gyroScale) * between(from.state.turnRad, to.state.turnRad) + bias * time + walk;
    columns.x[i] = between(shown[k]![0], shown[k + 1]![0]) + spread * random.normal();
    columns.y[i] = between(shown[k]![1], shown[k + 1]![1]) + spread * random.normal();
    columns.z[i] = between(shown[k]![2], shown[k + 1]![2]) + spread * random.normal();
    columns.face[i] = to.face;
  }
  return columns;
}

const rounded = (values: Float64Array, step: number): Float64Array =>
  step > 0 ? values.map((value) => Math.round(value / step) * step) : values;

/** The readings file of a continuous log, in the layout of the job folder; seconds in `time_s`. */
export function continuousLogText(log: ContinuousLog, resolution: RecordResolution = {}): string {
  const { tiltDeg, turnDeg, depthM, acceleration } = resolution;
  const columns: readonly (readonly [string, Float64Array, number | undefined, boolean])[] = [
    ["time_s", log.timeS, 0.001, false],
    ["depth_m", log.depthM, depthM, false],
    ["count", log.depthCounts, 1, false],
    ["tilt_x_deg", log.tiltXRad, tiltDeg, true],
    ["tilt_y_deg", log.tiltYRad, tiltDeg, true],
    ["acc_x", log.accX, acceleration, false],
    ["acc_y", log.accY, acceleration, false],
    ["acc_z", log.accZ, acceleration, false],
    ["turn_deg", log.turnRad, turnDeg, true],
    ["face", Float64Array.from(log.face), 1, false],
  ];
  const used = columns.filter(([, values]) => values.length > 0);
  return csvText(
    used.map(([heading]) => heading),
    Array.from(log.timeS, (_, row) =>
      used.map(([, values, step, isAngle]) =>
        atStep(isAngle ? degreesFromRadians(values[row]!) : values[row]!, step),
      ),
    ),
  );
}
