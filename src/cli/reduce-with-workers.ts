import { isMainThread, parentPort, Worker, workerData } from "node:worker_threads";
import { type Job, type JobResults, type ReduceOptions, reduceJob } from "#core";

/** What a worker is handed: the whole job, and the elements that are its share. */
interface Share {
  readonly job: Job;
  readonly options: Omit<ReduceOptions, "onProgress">;
}

type Message = { readonly done: number } | { readonly results: JobResults };

/** Told of progress this many times less often than elements are done: a message costs more than a plumb pile. */
const TELL_EVERY = 8;

/**
 * Works a job out by several workers, each with a share of the elements.
 *
 * An element does not depend on the others, and the trials of its budget are found by seed, name and number, so the results are
 * the same for any number of workers.
 *
 * @param workers 1 works in this thread. @param onProgress told how many elements are done.
 */
export async function reduceWithWorkers(
  job: Job,
  options: Omit<ReduceOptions, "onProgress">,
  workers: number,
  onProgress: (done: number, total: number) => void,
): Promise<JobResults> {
  const { only } = options;
  const ids = job.elements.map(({ id }) => id).filter((id) => only === undefined || only.includes(id));
  if (workers <= 1 || ids.length < 2) return reduceJob(job, { ...options, onProgress });
  const count = Math.min(workers, ids.length);
  const done = new Array<number>(count).fill(0);
  const report = (worker: number, elements: number) => {
    done[worker] = elements;
    onProgress(
      done.reduce((sum, each) => sum + each, 0),
      ids.length,
    );
  };
  const parts = await Promise.all(
    done.map((_, worker) => {
      // every n-th element, so that a stretch of long holes is shared out
      const own = { only: ids.filter((_id, i) => i % count === worker), evidenceFrom: ids };
      return shareOf({ job, options: { ...options, ...own } }, (elements) => report(worker, elements));
    }),
  );
  return inOrder(parts, ids);
}

function shareOf(share: Share, onDone: (elements: number) => void): Promise<JobResults> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL(import.meta.url), { workerData: share });
    worker.on("message", (message: Message) => {
      if ("results" in message) resolve(message.results);
      else onDone(message.done);
    });
    worker.on("error", reject);
    // after an answer this changes nothing
    worker.on("exit", () => reject(new Error("A worker stopped before its share was done.")));
  });
}

/** Results of all shares in the order of the schedule, as one thread gives them. */
function inOrder(parts: readonly JobResults[], ids: readonly string[]): JobResults {
  const placeOf = new Map(ids.map((id, i) => [id, i]));
  const sorted = <T>(values: readonly T[], idOf: (value: T) => string) =>
    [...values].sort((a, b) => placeOf.get(idOf(a))! - placeOf.get(idOf(b))!);
  return {
    runs: sorted(
      parts.flatMap(({ runs }) => runs),
      (run) => run.elementId,
    ),
    elements: sorted(
      parts.flatMap(({ elements }) => elements),
      (element) => element.elementId,
    ),
    evidence: parts[0]!.evidence,
  };
}

/** The other side: works the share out and answers. @returns false in the main thread, where there is nothing to answer. */
export function answerAsWorker(): boolean {
  if (isMainThread || parentPort === null) return false;
  const port = parentPort;
  const { job, options } = workerData as Share;
  const tell = (message: Message) => port.postMessage(message);
  const results = reduceJob(job, {
    ...options,
    onProgress: (done) => {
      if (done % TELL_EVERY === 0) tell({ done });
    },
  });
  tell({ results });
  return true;
}
