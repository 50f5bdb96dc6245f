import { fail, type Issue, ok, type Result } from "#core";
import type { Store } from "#store";
import type { Synchronizer, SyncStatus } from "#sync";
import type { JobView } from "../desk.ts";
import { error } from "../issue.ts";
import { Listeners } from "../listeners.ts";
import { jobView } from "../view/job-view.ts";
import type { KeptResults } from "./kept-results.ts";
import { type JobNow, WorkedJob } from "./worked-job.ts";

/** While a job is worked out, screens are told this often at most, milliseconds. */
const TELL_EVERY_MS = 250;

/** A job that screens look at: its results, who is told, and its line to the office. */
export class OpenJob {
  readonly worked: WorkedJob;
  readonly watchers = new Listeners<Result<JobView, Issue>>();
  readonly syncWatchers = new Listeners<SyncStatus>();
  readonly sync: Synchronizer;
  readonly #store: Store;
  #revision = 0;
  #toldAt = Number.NEGATIVE_INFINITY;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #trouble: Issue | undefined;
  #size = 0;
  /** nothing of the job is here, and the office has not been asked to the end yet */
  #isFetching = true;
  #grewElsewhere: () => void;

  constructor(id: string, store: Store, kept: KeptResults, sync: Synchronizer, grewElsewhere: () => void) {
    this.#store = store;
    this.sync = sync;
    this.#grewElsewhere = grewElsewhere;
    this.worked = new WorkedJob(id, store, kept, () => this.#tellSoon());
    sync.onStatus((status) => {
      this.syncWatchers.tell(status);
      void this.#lookForMore(status);
    });
  }

  get revision(): number {
    return this.#revision;
  }

  now(): JobNow | undefined {
    return this.worked.now();
  }

  /** @returns undefined until the log was read, or while a job of the office has not been fetched yet. */
  view(): Result<JobView, Issue> | undefined {
    if (this.#trouble !== undefined) return fail(this.#trouble);
    const now = this.worked.now();
    if (now === undefined) return undefined;
    const view = jobView(this.worked.id, this.#revision, now);
    return ok(this.#isFetching ? { ...view, work: { phase: "fetching", done: 0, total: 0 } } : view);
  }

  async refresh(): Promise<void> {
    const done = await this.worked.refresh();
    this.#trouble = done.ok ? undefined : done.error;
    this.#size = this.worked.now()?.log.entries.length ?? 0;
    if (this.#size > 0) this.#isFetching = false;
    this.#tellSoon();
  }

  /** What the office has sent stands in the log now. A job that comes for the first time is shown once all of it is here. */
  async #lookForMore({ nextTry, lastHeard, cause }: SyncStatus): Promise<void> {
    const hasEnded = nextTry !== undefined && (lastHeard !== undefined || cause !== undefined);
    if (this.#isFetching && !hasEnded) return;
    const size = await this.#store.size(this.worked.id);
    if (this.#isFetching && size.ok && size.value === 0) {
      this.#isFetching = false;
      this.#trouble = cause ?? error("desk.no-such-job", { job: this.worked.id });
      return this.#tellSoon();
    }
    if (!size.ok || size.value === this.#size) return;
    this.#size = size.value;
    this.#grewElsewhere();
    await this.refresh();
  }

  #tellSoon(): void {
    this.#revision++;
    if (this.#timer !== undefined) return;
    const wait = Math.max(0, this.#toldAt + TELL_EVERY_MS - performance.now());
    this.#timer = setTimeout(() => {
      this.#timer = undefined;
      this.#toldAt = performance.now();
      const view = this.view();
      if (view !== undefined) this.watchers.tell(view);
    }, wait);
  }
}
