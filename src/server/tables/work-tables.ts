/** A piece of heavy work, from its request on. */
export interface WorkTable {
  id: string;
  /** what was asked for, in one text: the same key is the same piece of work */
  key: string;
  task: string;
  job: string;
  /** JSON */
  input: string;
  requested_by: string;
  requested_at: string;
  /** how many pieces of the same person had not been done when it was asked for, itself among them: who asks for less goes first */
  share: number;
  /** how often somebody has begun with it; with `worker` it says whose outcome counts */
  attempts: number;
  state: "waiting" | "running" | "finished" | "failed" | "cancelled";
  /** who has it: an id of `workers`; null unless it is running */
  worker: string | null;
  done: number;
  total: number;
  /** JSON, of a finished one */
  result: string | null;
  /** JSON, of a failed one */
  issue: string | null;
}

/** Server processes that take work, as long as they are heard of. */
export interface WorkerTable {
  id: string;
  /** by the clock of the database, milliseconds */
  seen_ms: number;
  /** JSON: names under which it takes tickets of the shared queue */
  holders: string;
}

export interface WorkTables {
  work: WorkTable;
  workers: WorkerTable;
}
