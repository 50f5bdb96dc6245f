import { availableParallelism } from "node:os";
import { fail, type Job, type JobResults, ok, type ReduceOptions, type Result } from "#core";
import { type ReadJob, readJobFolder } from "#formats";
import type { Surroundings } from "./command.ts";
import { openJob } from "./files/open-job.ts";
import { reduceWithWorkers } from "./reduce-with-workers.ts";
import { progressBar } from "./terminal/progress.ts";

/** A job as far as it could be read and worked out. `job` is undefined where nothing could be read at all. */
export interface WorkedOutJob {
  readonly read: ReadJob;
  readonly job: Job | undefined;
  readonly results: JobResults | undefined;
}

/** What the user may choose of the computation. */
export interface ReductionOptions extends Omit<ReduceOptions, "onProgress"> {
  /** threads that share the elements; undefined: as the job is worth */
  readonly workers?: number;
}

/** Fewer elements than this are done before a worker has started. */
const WORTH_WORKERS = 40;

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
  const { workers: asked, ...chosen } = options;
  const workers = asked ?? (job.elements.length >= WORTH_WORKERS ? availableParallelism() : 1);
  const results = await reduceWithWorkers(job, chosen, workers, reducing.report);
  reducing.finish();
  return ok({ read, job, results });
}
