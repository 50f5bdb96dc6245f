import { fail, type Job, type JobResults, ok, type ReduceOptions, type Result, reduceJob } from "#core";
import { type ReadJob, readJobFolder } from "#formats";
import type { Surroundings } from "./command.ts";
import { openJob } from "./files/open-job.ts";
import { progressBar } from "./terminal/progress.ts";

/** A job as far as it could be read and worked out. `job` is undefined where nothing could be read at all. */
export interface WorkedOutJob {
  readonly read: ReadJob;
  readonly job: Job | undefined;
  readonly results: JobResults | undefined;
}

/** What the user may choose of the computation. */
export type ReductionOptions = Omit<ReduceOptions, "onProgress">;

/** Reads the job folder at a path and reduces what can be reduced. Fails only where the path itself is no job. */
export async function workOutJob(
  path: string,
  options: ReductionOptions,
  { terminal, now }: Surroundings,
): Promise<Result<WorkedOutJob, string>> {
  const opened = openJob(path);
  if (!opened.ok) return fail(opened.error);
  const reading = progressBar(terminal, "runs read", now);
  const read = await readJobFolder(opened.value, reading.report);
  reading.finish();
  const { job } = read;
  if (job === undefined) return ok({ read, job, results: undefined });
  const reducing = progressBar(terminal, "elements worked out", now);
  const results = reduceJob(job, { ...options, onProgress: reducing.report });
  reducing.finish();
  return ok({ read, job, results });
}
