import { type Issue, ok, type Result } from "#core";
import { type Chains, type Entry, foldChains, type JobState, walkChains } from "#records";
import type { Store } from "#store";

/** The entries of one job as they were last read, and the state they fold to. */
export interface JobLog {
  readonly entries: readonly Entry[];
  readonly chains: Chains;
  readonly state: JobState;
}

/** Reads the log of a job and folds it. Errors: those of the store. */
export async function readJobLog(store: Store, job: string): Promise<Result<JobLog, Issue>> {
  const entries = await store.readJob(job);
  if (!entries.ok) return entries;
  const chains = walkChains(entries.value);
  return ok({ entries: entries.value, chains, state: foldChains(chains) });
}
