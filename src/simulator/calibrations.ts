import { contract, EARTH_RATE_RAD_PER_S, type NorthEastDown, ned, radiansFromDegrees, scale } from "#core";
import { NO_ERRORS, type ProbeErrors } from "./probe-errors.ts";
import type { RandomSource } from "./random.ts";
import { compose, inverse, type Rotation, rotate, rotationBy } from "./rotation.ts";
import type { ScenarioCalibration, ScenarioInstrument } from "./scenario.ts";
import { senseTilt } from "./sense.ts";

/** Readings averaged for one calibration value: the noise is that of one reading over the root of this. */
const AVERAGED = 25;
const REST_HOURS = 1 / 6;
const MARKED_LENGTH_M = 10;
const TRUE_TURN_DEG = 3600;

/**
 * The entry of job.json that a calibration of the faulty probe would give.
 *
 * The bench is not faulty but its plate is not level; what the calibration finds is right but for noise.
 */
export function calibrationEntry(
  calibration: ScenarioCalibration,
  instrument: ScenarioInstrument,
  latitudeDeg: number,
  random: RandomSource,
): Readonly<Record<string, unknown>> {
  const given: ProbeErrors = { ...NO_ERRORS, ...instrument.errors };
  const errors = { ...given, tiltNoiseDeg: given.tiltNoiseDeg / Math.sqrt(AVERAGED) };
  return {
    id: calibration.id,
    instrument: calibration.instrument,
    kind: calibration.kind,
    made_at: calibration.madeAt,
    ...(calibration.validUntil === undefined ? {} : { valid_until: calibration.validUntil }),
    ...(calibration.maxRuns === undefined ? {} : { max_runs: calibration.maxRuns }),
    ...resultOf(calibration.kind, errors, instrument, latitudeDeg, random),
  };
}

function resultOf(
  kind: ScenarioCalibration["kind"],
  errors: ProbeErrors,
  instrument: ScenarioInstrument,
  latitudeDeg: number,
  random: RandomSource,
): Readonly<Record<string, unknown>> {
  switch (kind) {
    case "tilt-zero":
      return { faces: twoFaces(errors, random) };
    case "accelerometer":
      return { positions: positions(errors, random) };
    case "gyro-zero": {
      const u = errors.gyroWalkDegPerRootH / Math.sqrt(REST_HOURS);
      const earth = -degreesPerHour(EARTH_RATE_RAD_PER_S) * Math.sin(radiansFromDegrees(latitudeDeg));
      const rate = errors.gyroBiasDegPerH + (1 + errors.gyroScale) * earth + u * random.normal();
      return {
        rate_deg_per_h: digits(rate, 3),
        ...(u > 0 ? { standard_uncertainty_deg_per_h: digits(u, 3) } : {}),
        attitude: "upright",
        latitude_deg: latitudeDeg,
      };
    }
    case "gyro-scale": {
      const noise = () => 0.05 * errors.gyroWalkDegPerRootH * random.normal();
      const shown = Array.from({ length: 3 }, () =>
        digits(TRUE_TURN_DEG * (1 + errors.gyroScale) + noise(), 3),
      );
      return { true_turn_deg: TRUE_TURN_DEG, shown_turns_deg: shown };
    }
    case "depth-scale": {
      const perM = instrument.countsPerM;
      contract(perM !== undefined, `simulator: ${instrument.id} has no counts to calibrate`);
      const spread = () => errors.depthNoiseM * perM * random.normal();
      const counts = Array.from({ length: 4 }, () =>
        Math.round(MARKED_LENGTH_M * perM * (1 + errors.depthScale) + spread()),
      );
      return { length_m: MARKED_LENGTH_M, counts };
    }
  }
}

const degreesPerHour = (radiansPerS: number): number => (radiansPerS * 3600) / radiansFromDegrees(1);
const digits = (value: number, decimals: number): number => Number(value.toFixed(decimals));

/** The probe lies on the plate, then turned by half a turn about its axis; twice. */
function twoFaces(errors: ProbeErrors, random: RandomSource): readonly Readonly<Record<string, number>>[] {
  const plate = rotationBy(
    ned(radiansFromDegrees(0.2 * random.normal()), radiansFromDegrees(0.2 * random.normal()), 0),
  );
  return [1, 2, 1, 2].map((face) => {
    const attitude = compose(plate, rotationBy(ned(0, 0, face === 2 ? Math.PI : 0)));
    const { tiltXRad, tiltYRad } = senseTilt(attitude, errors, Number.NaN, random);
    return {
      face,
      x_deg: digits(tiltXRad / radiansFromDegrees(1), 4),
      y_deg: digits(tiltYRad / radiansFromDegrees(1), 4),
    };
  });
}

/** Each axis down and up, and four leans of 45 degrees. */
function positions(
  errors: ProbeErrors,
  random: RandomSource,
): readonly { readonly expected: readonly number[]; readonly shown: readonly number[] }[] {
  const quarter = Math.PI / 4;
  const axes: readonly NorthEastDown[] = [
    ned(0, 0, 0),
    ...[2, -2, 4, 1, -1].map((n) => scale(ned(0, 1, 0), n * quarter)),
    ...[2, -2, 1, -1].map((n) => scale(ned(1, 0, 0), n * quarter)),
  ];
  return axes.map((axis) => {
    const attitude: Rotation = rotationBy(axis);
    const down = rotate(inverse(attitude), ned(0, 0, 1));
    return {
      // 0 - x so that no "-0" is written
      expected: [down.north, down.east, down.down].map((part) => 0 - digits(part, 6)),
      shown: senseTilt(attitude, errors, Number.NaN, random).acceleration.map((part) => digits(part, 6)),
    };
  });
}
