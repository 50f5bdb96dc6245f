import { proxy } from "comlink";
import {
  contract,
  type Decision,
  type ElementResult,
  fail,
  type Issue,
  type Language,
  ok,
  type PathMethodId,
  type Result,
  reduceJob,
} from "#core";
import { statementsFromJobFolder } from "#exchange";
import { calibrationFigures, elementView, figures } from "#figures";
import { readJobFolder, writeZip } from "#formats";
import { findCrs } from "#geodesy";
import { foldChains, type JsonObject, type JsonValue, type ThingState, utf8, walkChains } from "#records";
import { openBrowserStore, type Store } from "#store";
import { createOfficeClient, keepSynchronized, type OfficeClient, type SyncStatus } from "#sync";
import type {
  Author,
  AxesView,
  ConflictView,
  Desk,
  DeviceStatus,
  ElementDetail,
  HistoryRow,
  Imported,
  InputFile,
  JobCard,
  JobSettings,
  JobView,
  NewStatement,
  ReadingPlace,
  RunDetail,
  RunRow,
} from "./desk.ts";
import type {
  AllowancesView,
  MapGrid,
  RuleDraft,
  RulePreview,
  RuleSetView,
  ScheduleInput,
  ScheduleProposal,
  Swap,
  Trial,
} from "./desk-set-up.ts";
import { type Device, openDevice } from "./device/device.ts";
import { deviceStatus } from "./device/device-status.ts";
import { becomeWriter } from "./device/writer-lock.ts";
import { error } from "./issue.ts";
import { inputFolder } from "./jobs/input-folder.ts";
import { JobCards } from "./jobs/job-cards.ts";
import { newJobId } from "./jobs/job-id.ts";
import type { JobLog } from "./jobs/job-log.ts";
import { type KeptResults, openKeptResults } from "./jobs/kept-results.ts";
import { OpenJob } from "./jobs/open-job.ts";
import type { JobNow } from "./jobs/worked-job.ts";
import { Listeners } from "./listeners.ts";
import { loggerDesk } from "./logger/logger-desk.ts";
import { recordDesk } from "./record/record-desk.ts";
import { reviewDesk } from "./review/review-desk.ts";
import { allowancesView, rulePreview } from "./set-up/allowances-view.ts";
import { proposeSchedule } from "./set-up/propose-schedule.ts";
import { ruleSets } from "./set-up/rule-sets.ts";
import { takeSetApart } from "./set-up/take-set-apart.ts";
import { tryRules } from "./set-up/try-rules.ts";
import { axesView } from "./view/axes-view.ts";
import { elementDetail } from "./view/element-detail.ts";
import { historyRows } from "./view/history-rows.ts";
import { allFindings } from "./view/job-view.ts";
import { runDetail, runRows } from "./view/run-view.ts";
import { settlingStatement } from "./write/settling-statement.ts";
import { keepBlobs, writeStatements } from "./write/writer.ts";

const STORE = "toeline";
/** All windows of the browser tell each other here that a log has grown. */
const CHANNEL = "toeline-log";
const EMPTY_CHAINS = walkChains([]);
const EMPTY_LOG: JobLog = { entries: [], chains: EMPTY_CHAINS, state: foldChains(EMPTY_CHAINS) };

interface Opened {
  readonly store: Store;
  readonly device: Device;
  readonly office: OfficeClient;
  readonly results: KeptResults;
}

type Written = Result<readonly string[], readonly Issue[]>;

/** The desk: log, results and figures of the jobs that are open. One in each window; one of them writes. */
export class DeskInWorker implements Desk {
  readonly review = proxy(
    reviewDesk({
      now: (job) => this.#now(job),
      author: () => this.#author,
      write: (job, statements) => this.#write(job, statements),
      setRows: (kind, job, run, places, reason) => this.#write(job, rowStatements(kind, run, places, reason)),
    }),
  );
  readonly record = proxy(
    recordDesk({
      now: (job) => this.#now(job),
      readBlob: async (blob) => {
        const opened = await this.#opened;
        const bytes = opened.ok ? await opened.value.store.readBlob(blob) : undefined;
        return bytes?.ok ? bytes.value : undefined;
      },
      device: async () => {
        const opened = await this.#opened;
        return opened.ok ? opened.value.device.publicKey() : undefined;
      },
    }),
  );
  readonly logger = proxy(
    loggerDesk({
      now: (job) => this.#now(job),
      write: (job, statements) => this.#write(job, statements),
    }),
  );
  readonly #opened: Promise<Result<Opened, Issue>> = openAll();
  readonly #jobs = new Map<string, Promise<OpenJob>>();
  /** by the number of the watch */
  readonly #watched = new Map<number, { readonly job: OpenJob; readonly own: number }>();
  readonly #syncWatched = new Map<number, { readonly job: OpenJob; readonly own: number }>();
  readonly #jobsWatchers = new Listeners<void>();
  readonly #deviceWatchers = new Listeners<DeviceStatus>();
  readonly #channel = new BroadcastChannel(CHANNEL);
  #cards: JobCards | undefined;
  #writer: DeviceStatus["writer"] = "elsewhere";
  #author: Author | undefined;
  #lastWatch = 0;
  #lastTrial = 0;
  /** writing into one log goes one after the other: each entry links to the one before */
  #queue: Promise<unknown> = Promise.resolve();

  constructor() {
    becomeWriter(() => {
      this.#writer = "here";
      void this.#tellDevice();
    });
    this.#channel.onmessage = ({ data }) => void this.#grewElsewhere(String(data));
  }

  async begin(author: Author): Promise<void> {
    this.#author = author;
  }

  async deviceStatus(): Promise<DeviceStatus> {
    const opened = await this.#opened;
    return deviceStatus(
      this.#writer,
      opened.ok ? opened.value.device : undefined,
      opened.ok ? undefined : opened.error,
    );
  }

  async watchDevice(tell: (status: DeviceStatus) => void): Promise<void> {
    this.#deviceWatchers.add(tell);
    tell(await this.deviceStatus());
  }

  async jobs(): Promise<Result<readonly JobCard[], Issue>> {
    const opened = await this.#opened;
    if (!opened.ok) return opened;
    this.#cards ??= new JobCards(opened.value.store);
    return this.#cards.read(opened.value.office.address);
  }

  async watchJobs(tell: () => void): Promise<number> {
    return this.#jobsWatchers.add(tell);
  }

  async unwatchJobs(watch: number): Promise<void> {
    this.#jobsWatchers.remove(watch);
  }

  async createJob(name: string, place: JsonObject = {}): Promise<Result<string, readonly Issue[]>> {
    const job = newJobId(name);
    const written = await this.#write(job, [{ kind: "job", body: { set: { name, ...place } } }], EMPTY_LOG);
    return written.ok ? ok(job) : written;
  }

  async watchJob(job: string, tell: (view: Result<JobView, Issue>) => void): Promise<number> {
    const opened = await this.#opened;
    const watch = ++this.#lastWatch;
    if (!opened.ok) {
      tell(opened);
      return watch;
    }
    const open = await this.#open(job, opened.value);
    this.#watched.set(watch, { job: open, own: open.watchers.add(tell) });
    const view = open.view();
    if (view !== undefined) tell(view);
    return watch;
  }

  async unwatchJob(watch: number): Promise<void> {
    const watched = this.#watched.get(watch);
    watched?.job.watchers.remove(watched.own);
    this.#watched.delete(watch);
  }

  async stopWork(job: string): Promise<void> {
    (await this.#jobs.get(job))?.worked.stop();
  }

  async goOnWorking(job: string): Promise<void> {
    (await this.#jobs.get(job))?.worked.goOn();
  }

  async axes(job: string): Promise<AxesView | undefined> {
    const open = await this.#jobs.get(job);
    const now = open?.now();
    return open && now && axesView(open.revision, now);
  }

  async element(job: string, element: string): Promise<ElementDetail | undefined> {
    const now = await this.#now(job);
    return now && elementDetail(now, element);
  }

  async run(job: string, run: string): Promise<RunDetail | undefined> {
    const now = await this.#now(job);
    return now && runDetail(now, run);
  }

  async runs(job: string): Promise<readonly RunRow[]> {
    const now = await this.#now(job);
    return now === undefined ? [] : runRows(now);
  }

  async settings(job: string): Promise<JobSettings | undefined> {
    const read = (await this.#now(job))?.read.job;
    if (read === undefined) return undefined;
    const { name, place, criteria, decision, instruments, calibrations } = read;
    return { name, place, criteria, decision, instruments, calibrations };
  }

  async findings(job: string): Promise<readonly Issue[]> {
    const now = await this.#now(job);
    return now === undefined ? [] : allFindings(now);
  }

  async conflicts(job: string): Promise<readonly ConflictView[]> {
    const state = (await this.#now(job))?.log.state;
    return (state?.conflicts ?? []).map(({ thing, field }) => ({
      thing,
      field,
      values: state?.things[thing]?.fields[field] ?? [],
    }));
  }

  async things(job: string, prefix: string): Promise<Readonly<Record<string, ThingState>>> {
    const things = (await this.#now(job))?.log.state.things ?? {};
    return Object.fromEntries(Object.entries(things).filter(([key]) => key.startsWith(prefix)));
  }

  async history(
    job: string,
    thing: string | undefined,
    from: number,
    count: number,
  ): Promise<readonly HistoryRow[]> {
    const now = await this.#now(job);
    return now === undefined ? [] : historyRows(now.log, thing, from, count);
  }

  async tryElement(job: string, element: string, method: PathMethodId): Promise<ElementResult | undefined> {
    const read = (await this.#now(job))?.read.job;
    return read && reduceJob(read, { only: [element], method }).elements[0];
  }

  async figure(
    job: string,
    element: string,
    figure: string,
    language: Language,
  ): Promise<string | undefined> {
    const now = await this.#now(job);
    const read = now?.read.job;
    const design = read?.elements.find(({ id }) => id === element);
    const result = now?.results.get(element)?.result;
    if (read === undefined || design === undefined || result === undefined) return undefined;
    const { criteria, decision, name: jobName } = read;
    const view = elementView({ element: design, result, criteria, decision, language, jobName });
    return figures.find(({ id }) => id === figure)?.draw(view);
  }

  async calibrationFigure(
    job: string,
    calibration: string,
    figure: string,
    language: Language,
  ): Promise<string | undefined> {
    const read = (await this.#now(job))?.read.job;
    const found = read?.calibrations.find(({ id }) => id === calibration);
    if (read === undefined || found === undefined) return undefined;
    const view = { calibration: found, jobName: read.name, language };
    return calibrationFigures.find(({ id }) => id === figure)?.draw(view);
  }

  write(job: string, statements: readonly NewStatement[]): Promise<Written> {
    return this.#write(job, statements);
  }

  setAside(job: string, run: string, places: readonly ReadingPlace[], reason: string): Promise<Written> {
    return this.#write(job, rowStatements("set-aside", run, places, reason));
  }

  putBack(job: string, run: string, places: readonly ReadingPlace[], reason: string): Promise<Written> {
    return this.#write(job, rowStatements("put-back", run, places, reason));
  }

  async settle(job: string, thing: string, field: string, value: JsonValue): Promise<Written> {
    const statement = settlingStatement(thing, field, value);
    return statement === undefined
      ? fail([error("desk.cannot-settle", { thing, field })])
      : this.#write(job, [statement]);
  }

  async importFolder(
    files: readonly InputFile[],
    into: string | undefined,
    progress: (done: number, total: number) => void,
  ): Promise<Result<Imported, readonly Issue[]>> {
    const opened = await this.#opened;
    if (!opened.ok) return fail([opened.error]);
    const folder = inputFolder(files);
    if (!folder.ok) return folder;
    const read = await readJobFolder(folder.value);
    const name = read.job?.name;
    if (name === undefined) return fail(read.findings);
    const job = into ?? newJobId(name);
    const log = await this.#log(job, opened.value);
    if (!log.ok) return fail([log.error]);
    const author = this.#author?.id ?? "";
    const said = await statementsFromJobFolder(folder.value, { author, state: log.value.state });
    if (!said.ok) return said;
    const { statements, blobs, findings } = said.value;
    const kept = await keepBlobs(opened.value.store, blobs);
    if (!kept.ok) return kept;
    const written = await this.#write(job, statements, log.value, (done) =>
      progress(done, statements.length),
    );
    if (!written.ok) return written;
    return ok({ job, name, added: written.value.length, findings: [...findings, ...read.findings] });
  }

  async exportFolder(job: string): Promise<Result<Uint8Array<ArrayBuffer>, readonly Issue[]>> {
    const files = (await this.#jobs.get(job))?.worked.files() ?? new Map<string, string | Uint8Array>();
    if (files.size === 0) return fail([error("desk.job-not-open", { job })]);
    const written = [...files].map(
      ([name, content]) =>
        [name, typeof content === "string" ? utf8(content) : Uint8Array.from(content)] as const,
    );
    return ok(writeZip(new Map(written)));
  }

  async watchSync(job: string, tell: (status: SyncStatus) => void): Promise<number> {
    const opened = await this.#opened;
    const watch = ++this.#lastWatch;
    if (!opened.ok) return watch;
    const open = await this.#open(job, opened.value);
    this.#syncWatched.set(watch, { job: open, own: open.syncWatchers.add(tell) });
    tell(open.sync.status());
    return watch;
  }

  async unwatchSync(watch: number): Promise<void> {
    const watched = this.#syncWatched.get(watch);
    watched?.job.syncWatchers.remove(watched.own);
    this.#syncWatched.delete(watch);
  }

  async syncNow(job: string): Promise<SyncStatus> {
    const open = await this.#jobs.get(job);
    contract(open !== undefined, `syncNow: ${job} is not open`);
    return open.sync.sendNow();
  }

  async proposeSchedule(
    job: string,
    input: ScheduleInput,
    swap: Swap,
  ): Promise<ScheduleProposal | undefined> {
    const open = await this.#jobs.get(job);
    const now = open?.now();
    return open && now && proposeSchedule(now, open.worked.files(), input, swap);
  }

  async allowances(job: string, language: Language): Promise<AllowancesView | undefined> {
    const now = await this.#now(job);
    return now && allowancesView(now, language);
  }

  async ruleSets(job: string, language: Language): Promise<readonly RuleSetView[]> {
    const now = await this.#now(job);
    return now === undefined ? [] : ruleSets(now, language);
  }

  async previewRule(job: string, draft: RuleDraft, language: Language): Promise<RulePreview | undefined> {
    const now = await this.#now(job);
    return now && rulePreview(now, draft, language);
  }

  async tryRules(
    job: string,
    rules: readonly RuleDraft[],
    decision: Decision,
    progress: (done: number, total: number) => void,
  ): Promise<Trial | undefined> {
    const now = await this.#now(job);
    const trial = ++this.#lastTrial;
    return now && tryRules(now, rules, decision, progress, () => this.#lastTrial === trial);
  }

  async stopTrial(): Promise<void> {
    this.#lastTrial++;
  }

  async takeSetApart(job: string, ofSet: number): Promise<readonly NewStatement[]> {
    const now = await this.#now(job);
    return now === undefined ? [] : takeSetApart(now, ofSet);
  }

  async grid(crs: string): Promise<Result<MapGrid, readonly Issue[]>> {
    const found = findCrs(crs);
    return found.ok ? ok({ name: found.value.name, ...found.value.area }) : found;
  }

  async #now(job: string): Promise<JobNow | undefined> {
    return (await this.#jobs.get(job))?.now();
  }

  /** Opens a job once, however many ask at the same time. It stays open: going back to it is free. */
  #open(job: string, { store, office, results }: Opened): Promise<OpenJob> {
    const known = this.#jobs.get(job);
    if (known !== undefined) return known;
    const opening = (async () => {
      const sync = keepSynchronized(store, office, job, {
        connect: (address) => new WebSocket(address),
        exclusively: (name, task) => navigator.locks.request(name, task),
      });
      const open = new OpenJob(job, store, results, sync, () => this.#jobsWatchers.tell());
      void open.refresh();
      return open;
    })();
    this.#jobs.set(job, opening);
    return opening;
  }

  async #log(job: string, opened: Opened): Promise<Result<JobLog, Issue>> {
    const size = await opened.store.size(job);
    if (!size.ok) return size;
    return size.value === 0 ? ok(EMPTY_LOG) : (await this.#open(job, opened)).worked.log();
  }

  #write(
    job: string,
    statements: readonly NewStatement[],
    log?: JobLog,
    progress?: (done: number) => void,
  ): Promise<Written> {
    const written = this.#queue.then(() => this.#writeNow(job, statements, log, progress));
    this.#queue = written;
    return written;
  }

  async #writeNow(
    job: string,
    statements: readonly NewStatement[],
    log: JobLog | undefined,
    progress: ((done: number) => void) | undefined,
  ): Promise<Written> {
    const opened = await this.#opened;
    if (!opened.ok) return fail([opened.error]);
    if (this.#writer === "elsewhere") return fail([error("desk.writer-elsewhere")]);
    if (this.#author === undefined) return fail([error("desk.nobody-signed-in")]);
    const { store, device } = opened.value;
    const known = log === undefined ? await this.#log(job, opened.value) : ok(log);
    if (!known.ok) return fail([known.error]);
    const written = await writeStatements(
      { store, device, author: this.#author },
      job,
      known.value,
      statements,
      progress,
    );
    this.#channel.postMessage(job);
    this.#jobsWatchers.tell();
    void this.#tellDevice();
    const open = await this.#open(job, opened.value);
    open.sync.wrote();
    // read anew before the next one writes: its entry links to this one
    await open.refresh();
    return written;
  }

  async #grewElsewhere(job: string): Promise<void> {
    this.#jobsWatchers.tell();
    await (await this.#jobs.get(job))?.refresh();
  }

  async #tellDevice(): Promise<void> {
    this.#deviceWatchers.tell(await this.deviceStatus());
  }
}

async function openAll(): Promise<Result<Opened, Issue>> {
  const store = await openBrowserStore(STORE);
  if (!store.ok) return store;
  const device = await openDevice();
  if (!device.ok) return device;
  const office = createOfficeClient({
    address: self.location.origin,
    fetch: (...request) => fetch(...request),
  });
  if (!office.ok) return office;
  const results = await openKeptResults(self.location.href);
  return ok({ store: store.value, device: device.value, office: office.value, results });
}

function rowStatements(
  kind: "set-aside" | "put-back",
  run: string,
  places: readonly ReadingPlace[],
  reason: string,
): readonly NewStatement[] {
  const byEntry = new Map<string, number[]>();
  for (const { entry, row } of places) byEntry.set(entry, [...(byEntry.get(entry) ?? []), row]);
  return [...byEntry].map(([readings, rows]) => ({ kind, body: { run, readings, rows, reason } }));
}
