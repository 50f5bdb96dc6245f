/** Where a field of a thing keeps what the folder says but the kind of entry cannot: values of another type, cells that are no number. */
export const AS_WRITTEN = "as_written";

/** Fields of `place` in job.json that are fields of the job in the log. */
export const PLACE_FIELDS: readonly string[] = [
  "crs",
  "latitude_deg",
  "longitude_deg",
  "level_datum",
  "common_points",
  "convergence_deg",
  "declination_deg",
];

/** Keys of job.json that are fields of the job in the log under the same name. */
export const JOB_FIELDS: readonly string[] = [
  "$schema",
  "name",
  "remark",
  "criteria_sets",
  "decision",
  "uncertainty",
  "limits",
];

export const JOB_FORMAT = "toeline-job/1";

/** Field of the job that lists readings files which no run names. */
export const UNUSED_READINGS = "unused_readings";
