import { assignLegs, type StopInLeg } from "./assign-legs.ts";
import { averageStop, secondsOf } from "./average-stop.ts";
import type {
  CondenseOptions,
  ContinuousLog,
  NoReadingReason,
  PassedOver,
  StopReading,
  Stretch,
} from "./continuous-log.ts";
import { type StillStretches, stillStretches } from "./still-stretches.ts";
import type { Readings } from "./survey-run.ts";

/** Pauses shorter than this are no stops that anybody meant as one, seconds. */
const NO_STOP_S = 1;

export interface CondensedLog {
  /** one row a stop; at the top one stop may be an opening and a station */
  readonly readings: Readings;
  /** the rows of the log behind each row of the readings */
  readonly stretches: readonly Stretch[];
  readonly passedOver: readonly PassedOver[];
}

/**
 * Turns a run logged continuously into the readings of a run read stop by stop.
 *
 * Finds the stretches at rest, averages each into one row with its standard errors, and says which leg it belongs to.
 * The time and memory taken grow in proportion to the rows. What was read while the probe moved is not used: the gyro has
 * already added it up.
 *
 * @returns readings with no rows where nothing was at rest. Each row keeps the line of the first row behind it.
 *
 * Frame: probe. Source: rule C3, docs/method/steadiness.md.
 * Checked against: simulated logs with known truth (src/simulator/continuous-log.test.ts).
 */
export function condenseLog(log: ContinuousLog, options: CondenseOptions): CondensedLog {
  const usesCounts = log.depthM.length === 0;
  const depth = usesCounts ? log.depthCounts : log.depthM;
  const depthM = usesCounts ? depth.map((count) => count * options.metresPerCount) : depth;
  const { steady } = options;
  const found = stillStretches(log, depthM, steady.depthM, steady.turnRad);
  const { stretches, restRateRadPerS } = found;
  const passedOver: PassedOver[] = [];
  const passOver = (stretch: Stretch, why: NoReadingReason): void => {
    const { fromRow } = stretch;
    const seconds = secondsOf(log, stretch);
    if (seconds >= NO_STOP_S) passedOver.push({ fromRow, seconds, depth: depth[fromRow]!, why });
  };
  const stops: StopReading[] = [];
  for (const stretch of stretches) {
    const stop = averageStop(log, stretch, depth, depthM, { steady, restRateRadPerS });
    if (typeof stop === "string") passOver(stretch, stop);
    else keepLonger(stops, stop, log, steady.depthM, passOver);
  }
  for (const pause of turningPauses(log, found)) passOver(pause, "turn");
  const rows = stops.length === 0 ? [] : assignLegs(stops, options);
  return {
    readings: readingsOf(rows, log, usesCounts),
    stretches: rows.map(({ stop: { fromRow, toRow } }) => ({ fromRow, toRow })),
    passedOver: passedOver.toSorted((a, b) => a.fromRow - b.fromRow),
  };
}

/** Pauses of the cable in which the gyro was never at rest. */
function turningPauses(log: ContinuousLog, { stretches, pauses }: StillStretches): readonly Stretch[] {
  let next = 0;
  return pauses.filter((pause) => {
    let longest = 0;
    for (; next < stretches.length && stretches[next]!.toRow <= pause.toRow; next++)
      longest = Math.max(longest, secondsOf(log, stretches[next]!));
    return longest < NO_STOP_S;
  });
}

/** Two readings after each other at one place, between which the probe only shook, are one station: the longer one counts. */
function keepLonger(
  stops: StopReading[],
  stop: StopReading,
  log: ContinuousLog,
  samePlaceM: number,
  passOver: (stretch: Stretch, why: NoReadingReason) => void,
): void {
  const before = stops[stops.length - 1];
  const isSamePlace =
    before !== undefined &&
    Math.abs(stop.depthM - before.depthM) <= samePlaceM &&
    stop.face === before.face &&
    stop.leg === before.leg &&
    stop.depthM > shallowest(stops) + samePlaceM;
  if (!isSamePlace) stops.push(stop);
  else if (secondsOf(log, stop) <= secondsOf(log, before)) passOver(stop, "same-place");
  else {
    passOver(before, "same-place");
    stops[stops.length - 1] = stop;
  }
}

/** At the top the probe is turned between readings on purpose: there they are all kept. */
const shallowest = (stops: readonly StopReading[]): number =>
  stops.reduce((least, { depthM }) => Math.min(least, depthM), Number.POSITIVE_INFINITY);

function readingsOf(rows: readonly StopInLeg[], log: ContinuousLog, usesCounts: boolean): Readings {
  const column = (pick: (stop: StopReading) => number): Float64Array =>
    Float64Array.from(rows, ({ stop }) => pick(stop));
  const missing = (): Float64Array => new Float64Array(rows.length).fill(Number.NaN);
  return {
    count: rows.length,
    timeS: column((stop) => stop.timeS),
    depthM: usesCounts ? missing() : column((stop) => stop.depth),
    depthCounts: usesCounts ? column((stop) => stop.depth) : missing(),
    tiltXRad: column((stop) => stop.tiltXRad),
    tiltYRad: column((stop) => stop.tiltYRad),
    turnRad: column((stop) => stop.turnRad),
    accX: column((stop) => stop.accX),
    accY: column((stop) => stop.accY),
    accZ: column((stop) => stop.accZ),
    inclinationRad: missing(),
    azimuthRad: missing(),
    leg: rows.map(({ leg }) => leg),
    face: Uint8Array.from(rows, ({ stop }) => stop.face),
    temperatureC: column((stop) => stop.temperatureC),
    samples: column((stop) => stop.toRow - stop.fromRow),
    seTiltXRad: column((stop) => stop.seTiltXRad),
    seTiltYRad: column((stop) => stop.seTiltYRad),
    line: Int32Array.from(rows, ({ stop }) => log.line[stop.fromRow]!),
  };
}
