import {
  type AccelerometerFit,
  correctAccelerations,
  fitAccelerometer,
} from "../calibration/accelerometer-fit.ts";
import { tiltZero } from "../calibration/tilt-zero.ts";
import {
  type AngleZero,
  type CorrectedTilts,
  tiltsFromAccelerations,
  tiltsFromAngles,
  withoutZero,
} from "../correction/tilt.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { degreesFromRadians } from "../units/quantity.ts";
import { calibrationOf, type RunContext, type RunRecord } from "./run-context.ts";
import { stepRevisions } from "./steps.ts";

const noZero: AngleZero = { xRad: 0, yRad: 0 };

/** Magnitudes that differ by more than this show a probe that moved or a sensor in trouble: common practice, no source. */
const MAGNITUDE_LIMIT = 0.01;

/** A1, C1: sines of the lean of every row, with zero and scale taken care of and on record. */
export function runTilts(run: SurveyRun, context: RunContext, record: RunRecord): CorrectedTilts {
  const zero = zeroOf(run, context, record);
  if (run.measures !== "acceleration-turn") return tiltsFromAngles(run.readings, zero);
  const fit = fitOf(context, record);
  const tilts = tiltsFromAccelerations(run.readings, (x, y, z) =>
    fit === undefined ? [x, y, z] : correctAccelerations(fit, x, y, z),
  );
  for (const row of tilts.upsideDownRows) record.find("error", "survey.upside-down", {}, row);
  if (tilts.magnitudeSpread > MAGNITUDE_LIMIT)
    record.find("warning", "survey.magnitude", {
      spread_percent: 100 * tilts.magnitudeSpread,
      limit_percent: 100 * MAGNITUDE_LIMIT,
    });
  const rightWayUp = { x: tilts.x.slice(), y: tilts.y };
  for (const row of tilts.upsideDownRows) rightWayUp.x[row] = Number.NaN;
  return zero === noZero ? rightWayUp : withoutZero(rightWayUp, zero);
}

function zeroOf(run: SurveyRun, context: RunContext, record: RunRecord): AngleZero {
  const calibration = calibrationOf(context, "tilt-zero");
  if (calibration === undefined) return noZero;
  if (run.zeroed) {
    record.find("note", "survey.zeroed-by-instrument", { calibration: calibration.id });
    return noZero;
  }
  const zero = tiltZero(calibration.faces);
  record.step("tilt-zero", stepRevisions["tilt-zero"], {
    calibration: calibration.id,
    zero_x_deg: degreesFromRadians(zero.xRad),
    zero_y_deg: degreesFromRadians(zero.yRad),
    pairs: zero.pairs,
    misfit_deg: degreesFromRadians(zero.misfitRad),
  });
  return zero;
}

function fitOf(context: RunContext, record: RunRecord): AccelerometerFit | undefined {
  const calibration = calibrationOf(context, "accelerometer");
  if (calibration === undefined) return undefined;
  const fit = fitAccelerometer(calibration.positions);
  if (fit === undefined) {
    record.find("error", "survey.accelerometer-undetermined", {
      calibration: calibration.id,
      positions: calibration.positions.length,
    });
    return undefined;
  }
  record.step("accelerometer", stepRevisions.accelerometer, {
    calibration: calibration.id,
    positions: calibration.positions.length,
    residual_deviation: fit.residualDeviation,
  });
  return fit;
}
