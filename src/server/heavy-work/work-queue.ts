import type { Issue, Result } from "#core";
import type { JsonObject } from "#records";
import type { SignedOver } from "./tasks/task.ts";

/** How far a piece of work has come. */
export type WorkState =
  | { readonly state: "waiting" }
  | { readonly state: "running"; readonly done: number; readonly total: number }
  | { readonly state: "finished"; readonly result: JsonObject }
  | { readonly state: "failed"; readonly issue: Issue }
  | { readonly state: "cancelled" };

export interface Work {
  readonly id: string;
  readonly task: string;
  /** job the work is about; who may read the job may see the work */
  readonly job: string;
  readonly requestedBy: string;
  readonly requestedAt: string;
  /** how often somebody has begun with it; more than one if a worker was lost */
  readonly attempts: number;
  readonly progress: WorkState;
}

export interface WorkRequest {
  readonly task: string;
  readonly job: string;
  readonly input: JsonObject;
  /** entries of the job's log to go by, in their order of arrival: what comes later belongs to another piece of work */
  readonly entries: number;
  /** of the head that the office has signed over exactly these entries */
  readonly signed?: SignedOver;
  readonly requestedBy: string;
  /** the same key asks for the same piece of work, which is done once, however often it is asked for */
  readonly key: string;
}

/**
 * Heavy work outside of the requests: reports, trials, analyses of a whole site. On one machine a pool of threads, with several
 * servers a queue in the shared database; the callers see no difference.
 */
export interface WorkQueue {
  /** Errors: work.unknown-task, work.input, work.queue-full, and those of the database. */
  request(request: WorkRequest): Promise<Result<Work, Issue>>;
  find(id: string): Promise<Result<Work | undefined, Issue>>;
  ofJob(job: string): Promise<Result<readonly Work[], Issue>>;
  cancel(id: string): Promise<Result<Work | undefined, Issue>>;
  /** how many wait and run, for the metrics */
  counts(): Promise<Result<Readonly<Record<WorkState["state"], number>>, Issue>>;
  /** takes no more work, waits for what runs up to a limit, gives the rest back */
  close(): Promise<void>;
}
