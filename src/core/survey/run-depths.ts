import { depthScale } from "../calibration/depth-scale.ts";
import { correctDepths } from "../correction/depth.ts";
import type { SurveyRun } from "../readings/survey-run.ts";
import { calibrationOf, type RunContext, type RunRecord } from "./run-context.ts";
import { stepRevisions } from "./steps.ts";

/** C5: depths of the rows in metres, with what was done to them on record. */
export function runDepths(run: SurveyRun, context: RunContext, record: RunRecord): Float64Array {
  const { readings } = run;
  const usesCounts = readings.depthM.some(Number.isNaN) && readings.depthCounts.some(Number.isFinite);
  const calibration = usesCounts ? calibrationOf(context, "depth-scale") : undefined;
  const scale = calibration === undefined ? undefined : depthScale(calibration.lengthM, calibration.counts);
  if (usesCounts && scale === undefined) record.find("error", "survey.no-depth-scale", {});
  const corrected = correctDepths(
    readings,
    scale?.metresPerCount ?? Number.NaN,
    run.depthZeroM,
    context.instrument?.cable,
  );
  record.step("depth", stepRevisions.depth, {
    zero_m: run.depthZeroM,
    ...(scale === undefined ? {} : { scale_m_per_count: scale.metresPerCount }),
    ...(corrected.largestStretchM > 0 ? { largest_stretch_m: corrected.largestStretchM } : {}),
    ...(Number.isNaN(corrected.returnMisclosureM)
      ? {}
      : { return_misclosure_m: corrected.returnMisclosureM }),
  });
  if (Math.abs(corrected.returnMisclosureM) > RETURN_LIMIT_M)
    record.find("warning", "survey.depth-return", {
      misclosure_m: corrected.returnMisclosureM,
      limit_m: RETURN_LIMIT_M,
    });
  return corrected.depthM;
}

/** Above this the cable slipped or was misread rather than stretched: common practice, no source. */
const RETURN_LIMIT_M = 0.1;
