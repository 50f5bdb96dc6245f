import type { Job, SurveyRun } from "#core";
import type { TrialChoices } from "../desk-review.ts";

/** Kinds of calibration without which a run can still be worked out. */
const CALIBRATIONS: ReadonlySet<string> = new Set(["tilt-zero", "accelerometer", "gyro-zero", "gyro-scale"]);

/** What of an element's computation may be left out: what it really uses, in the order of the steps. */
export function switchesOf(job: Job, element: string): readonly string[] {
  const runs = job.runs.filter(({ elementId }) => elementId === element);
  const kinds = new Map(job.calibrations.map(({ id, kind }) => [id, kind]));
  const used = new Set<string>(
    runs.flatMap(({ calibrationIds }) => calibrationIds.map((id) => kinds.get(id) ?? "")),
  );
  const instruments = new Set(runs.map(({ instrumentId }) => instrumentId));
  const hangs = job.instruments.some(({ id, cable }) => instruments.has(id) && cable !== undefined);
  return [
    ...(hangs ? ["stretch"] : []),
    ...[...CALIBRATIONS].filter((kind) => used.has(kind)),
    ...(runs.some(({ spiral }) => spiral.length > 0) ? ["spiral"] : []),
  ];
}

/** The job as it would be with other choices for one element. */
export function switchedJob(job: Job, element: string, { closure, without = [] }: TrialChoices): Job {
  const out = new Set(without);
  const kinds = new Map(job.calibrations.map(({ id, kind }) => [id, kind]));
  const switched = (run: SurveyRun): SurveyRun => ({
    ...run,
    calibrationIds: run.calibrationIds.filter((id) => !out.has(kinds.get(id) ?? "")),
    closureModel: closure ?? run.closureModel,
    spiral: out.has("spiral") ? [] : run.spiral,
  });
  return {
    ...job,
    runs: job.runs.map((run) => (run.elementId === element ? switched(run) : run)),
    instruments: out.has("stretch")
      ? job.instruments.map((instrument) => ({ ...instrument, cable: undefined }))
      : job.instruments,
  };
}
