import { type Issue, type Job, ok, type Result, reduceJob } from "#core";
import { folderFromState } from "#exchange";
import { type FolderReader, type ReadJob, readJobFolder } from "#formats";
import type { Store } from "#store";
import type { Work } from "../desk.ts";
import { groupBy } from "../group-by.ts";
import { breath } from "./breath.ts";
import { elementKeys } from "./element-keys.ts";
import { type JobLog, readJobLog } from "./job-log.ts";
import type { KeptResults, WorkedElement } from "./kept-results.ts";
import { scheduleOnly } from "./schedule-only.ts";

/** So long the worker goes on before questions of the screens are looked at again, milliseconds; an element is not interrupted. */
const AT_ONCE_MS = 30;

/** What is known of a job now. */
export interface JobNow {
  readonly log: JobLog;
  readonly read: ReadJob;
  /** of the folder that the log gives, beside those of `read` */
  readonly findings: readonly Issue[];
  readonly results: ReadonlyMap<string, WorkedElement>;
  readonly work: Work;
}

/** A job that is open: its log, what was read of it, and its results, worked out in the background. */
export class WorkedJob {
  readonly id: string;
  readonly #store: Store;
  readonly #kept: KeptResults;
  /** called with every change; views are made from `now()` */
  readonly #changed: () => void;
  #log: JobLog | undefined;
  #read: ReadJob | undefined;
  #findings: readonly Issue[] = [];
  #files: ReadonlyMap<string, string | Uint8Array> = new Map();
  #keys: ReadonlyMap<string, string> = new Map();
  #results = new Map<string, WorkedElement>();
  #phase: Work["phase"] = "reading";
  #running: Promise<Result<true, Issue>> | undefined;
  #isStale = false;
  /** raised to end the work under way */
  #turn = 0;

  constructor(id: string, store: Store, kept: KeptResults, changed: () => void) {
    this.id = id;
    this.#kept = kept;
    this.#store = store;
    this.#changed = changed;
  }

  /** Undefined before the log was read for the first time. */
  now(): JobNow | undefined {
    if (this.#log === undefined || this.#read === undefined) return undefined;
    const total = this.#read.job?.elements.length ?? 0;
    return {
      log: this.#log,
      read: this.#read,
      findings: this.#findings,
      results: this.#results,
      work: { phase: this.#phase, done: total - this.#waiting().length, total },
    };
  }

  /** Reads the log anew and works out what has changed. Calls while it runs are taken together. */
  refresh(): Promise<Result<true, Issue>> {
    this.#isStale = true;
    this.#running ??= this.#refreshUntilFresh().finally(() => {
      this.#running = undefined;
    });
    return this.#running;
  }

  /** The job as a folder, as it was last read. */
  files(): ReadonlyMap<string, string | Uint8Array> {
    return this.#files;
  }

  stop(): void {
    this.#turn++;
    if (this.#phase === "working") this.#phase = "stopped";
    this.#changed();
  }

  goOn(): void {
    void this.#work();
  }

  /** @returns the log as it was last read, fresh enough to write on. */
  async log(): Promise<Result<JobLog, Issue>> {
    if (this.#log === undefined || this.#running !== undefined) {
      const done = await this.refresh();
      if (!done.ok) return done;
    }
    return this.#log === undefined ? readJobLog(this.#store, this.id) : ok(this.#log);
  }

  async #refreshUntilFresh(): Promise<Result<true, Issue>> {
    while (this.#isStale) {
      this.#isStale = false;
      const log = await readJobLog(this.#store, this.id);
      if (!log.ok) return log;
      await this.#take(log.value);
    }
    void this.#work();
    return ok(true);
  }

  async #take(log: JobLog): Promise<void> {
    const given = await folderFromState(log.state, log.entries, async (blob) => {
      const bytes = await this.#store.readBlob(blob);
      return bytes.ok ? bytes.value : undefined;
    });
    if (this.#read === undefined) await this.#showSchedule(log, given.folder);
    const read = await readJobFolder(given.folder);
    this.#turn++;
    this.#log = log;
    this.#read = read;
    this.#findings = given.findings;
    this.#files = given.files;
    this.#keys = read.job === undefined ? new Map() : elementKeys(read.job, given.files);
    for (const [id, { key }] of this.#results) if (this.#keys.get(id) !== key) this.#results.delete(id);
    const kept = await this.#kept.read(this.id, this.#waiting());
    for (const [id, worked] of kept) if (this.#keys.get(id) === worked.key) this.#results.set(id, worked);
    this.#phase = this.#waiting().length === 0 ? "ready" : "working";
    this.#changed();
  }

  /** Before all readings are read for the first time: lists and plan need the schedule only. */
  async #showSchedule(log: JobLog, folder: FolderReader): Promise<void> {
    this.#log = log;
    this.#read = await readJobFolder(scheduleOnly(folder));
    this.#changed();
    await breath();
  }

  #waiting(): readonly string[] {
    return (this.#read?.job?.elements ?? []).map(({ id }) => id).filter((id) => !this.#results.has(id));
  }

  async #work(): Promise<void> {
    const job = this.#read?.job;
    const waiting = this.#waiting();
    const turn = ++this.#turn;
    this.#phase = waiting.length === 0 ? "ready" : "working";
    if (job === undefined || waiting.length === 0) return this.#changed();
    // evidence of all runs goes into all budgets then: nothing can be worked out by itself
    const shares = job.typeA === "replace" ? [waiting] : waiting.map((id) => [id]);
    let since = Number.NEGATIVE_INFINITY;
    for (const share of shares) {
      if (performance.now() - since > AT_ONCE_MS) {
        await breath();
        if (this.#turn !== turn) return;
        since = performance.now();
      }
      this.#workOut(job, share);
      this.#changed();
    }
    this.#phase = "ready";
    this.#changed();
  }

  #workOut(job: Job, ids: readonly string[]): void {
    const { elements, runs } = reduceJob(job, { only: ids });
    const runsOf = groupBy(runs, ({ elementId }) => elementId);
    for (const result of elements) {
      const id = result.elementId;
      const worked = { key: this.#keys.get(id) ?? "", result, runs: runsOf.get(id) ?? [] };
      this.#results.set(id, worked);
      this.#kept.keep(this.id, id, worked);
    }
  }
}
