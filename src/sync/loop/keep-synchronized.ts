import type { Issue } from "#core";
import type { Store } from "#store";
import type { OfficeClient } from "../client/office-client.ts";
import { type LiveSocket, platformTimers, type Timers } from "../platform.ts";
import { createBlobCatalogue } from "../run/blob-catalogue.ts";
import { type SyncOutcome, type SyncSettings, synchronize } from "../run/synchronize.ts";
import { PAUSES, pauseAfterFailures, spread } from "./back-off.ts";
import { liveLine } from "./live-line.ts";
import { CONNECTED_MS, type SyncStatus } from "./status.ts";
import { unsentHere } from "./unsent-here.ts";

/** How often the sets of both sides are compared, and refused entries are tried again: it is work for both. Milliseconds. */
const THOROUGH_MS = 10 * 60_000;

/** A person has to do something about these; trying often would not help. */
const NEEDS_A_PERSON = new Set([
  "sync.signed-out",
  "sync.not-allowed",
  "sync.client-too-old",
  "sync.no-such-job",
]);

/** Only one tab at a time sends, if the platform can say which: `navigator.locks.request(name, task)`. */
export type Exclusively = <T>(name: string, task: () => Promise<T>) => Promise<T>;

export interface KeepSettings {
  readonly timers?: Timers;
  readonly clock?: () => Date;
  /** from 0 to 1, for the jitter of the pauses */
  readonly random?: () => number;
  /** makes a WebSocket; without it the office is asked now and then */
  readonly connect?: (address: string) => LiveSocket;
  readonly exclusively?: Exclusively;
  readonly files?: SyncSettings["files"];
}

/** Keeps a job and the office in step for as long as the program runs. */
export interface Synchronizer {
  status(): SyncStatus;
  /** Calls with every change of the status. @returns what ends it. */
  onStatus(listener: (status: SyncStatus) => void): () => void;
  /** Tells that something was written into the log here: it goes soon. Nothing is lost if this is forgotten, only later. */
  wrote(): void;
  /** Tries at once, whatever the pause; refused entries too. @returns the status after it. */
  sendNow(): Promise<SyncStatus>;
  /** Ends it after what is under way. */
  stop(): Promise<void>;
}

/**
 * Sends and fetches whenever there is something to, with pauses that grow while the office does not answer, and says how things
 * stand in facts for a screen. It reads the log again each time, and never goes by a notice alone.
 */
export function keepSynchronized(
  store: Store,
  client: OfficeClient,
  job: string,
  settings: KeepSettings = {},
): Synchronizer {
  return new Loop(store, client, job, settings);
}

class Loop implements Synchronizer {
  readonly #store: Store;
  readonly #client: OfficeClient;
  readonly #job: string;
  readonly #timers: Timers;
  readonly #clock: () => Date;
  readonly #random: () => number;
  readonly #exclusively: Exclusively;
  readonly #sync: Pick<
    Required<SyncSettings>,
    "clock" | "catalogue" | "settled" | "isHeldUp" | "onProgress"
  > &
    Pick<SyncSettings, "files">;
  readonly #live;
  readonly #listeners = new Set<(status: SyncStatus) => void>();
  readonly #endHearing: () => void;
  #status: Omit<SyncStatus, "connection">;
  #office: SyncOutcome["office"];
  /** entries at the office, as the live connection last said */
  #sizeThere = -1;
  #failures = 0;
  #thoroughAt = Number.NEGATIVE_INFINITY;
  #cancelTimer: () => void = () => {};
  #running: Promise<void> | undefined;
  /** something was written since the run under way began */
  #isMoreWritten = false;
  /** the office told that it has grown since the run under way began */
  #isMoreThere = false;
  #isStopped = false;
  #isSending = false;
  #isCountDue = false;
  #counting: Promise<void> | undefined;

  constructor(store: Store, client: OfficeClient, job: string, settings: KeepSettings) {
    this.#store = store;
    this.#client = client;
    this.#job = job;
    this.#timers = settings.timers ?? platformTimers;
    this.#clock = settings.clock ?? (() => new Date());
    this.#random = settings.random ?? Math.random;
    this.#exclusively = settings.exclusively ?? ((_name, task) => task());
    this.#sync = {
      ...(settings.files !== undefined && { files: settings.files }),
      clock: this.#clock,
      catalogue: createBlobCatalogue(store, job),
      settled: new Map(),
      isHeldUp: () => this.#isMoreWritten || this.#isStopped,
      onProgress: () => void this.#countUnsent(),
    };
    this.#status = {
      state: "on-this-device-only",
      unsent: undefined,
      refused: new Map(),
      forked: [],
      lastHeard: undefined,
      nextTry: undefined,
      cause: undefined,
      findings: [],
      clockOffset: undefined,
    };
    this.#endHearing = client.onAnswer(() => this.#heard());
    this.#live = liveLine(client.liveAddress(job), settings.connect, {
      // a sign of life; whether there is something to fetch is told by the place it names
      onMessage: ({ size }) => {
        this.#heard();
        const isNews = size !== this.#sizeThere;
        this.#sizeThere = size;
        if (!isNews) return;
        // a run under way may have asked before the office grew
        if (this.#running === undefined) this.#schedule(spread(PAUSES.gathering, this.#random()));
        else this.#isMoreThere = true;
      },
      onEnd: () => {
        if (this.#running === undefined && this.#failures === 0)
          this.#schedule(spread(PAUSES.polling, this.#random()));
      },
    });
    void this.#countUnsent();
    this.#schedule(0);
  }

  status(): SyncStatus {
    const { lastHeard } = this.#status;
    const age = lastHeard && this.#clock().getTime() - lastHeard.getTime();
    const isConnected = age !== undefined && age >= 0 && age < CONNECTED_MS;
    return { ...this.#status, connection: isConnected ? "connected" : "not-connected" };
  }

  onStatus(listener: (status: SyncStatus) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  wrote(): void {
    this.#isMoreWritten = true;
    void this.#countUnsent();
    // a line that is known to be down is not tried with every reading
    if (this.#failures === 0 && this.#running === undefined) this.#schedule(PAUSES.gathering);
  }

  async sendNow(): Promise<SyncStatus> {
    await this.#running;
    this.#thoroughAt = Number.NEGATIVE_INFINITY;
    await this.#run();
    return this.status();
  }

  async stop(): Promise<void> {
    this.#isStopped = true;
    this.#cancelTimer();
    this.#live.close();
    await this.#running;
    this.#endHearing();
    this.#change({ nextTry: undefined });
    this.#listeners.clear();
  }

  #run(): Promise<void> {
    this.#cancelTimer();
    if (this.#isStopped) return Promise.resolve();
    this.#running ??= this.#runOnce().finally(() => {
      this.#running = undefined;
    });
    return this.#running;
  }

  async #runOnce(): Promise<void> {
    this.#isMoreWritten = false;
    this.#isMoreThere = false;
    const now = this.#clock().getTime();
    const isThorough = now - this.#thoroughAt >= THOROUGH_MS;
    const hasUnsent = (this.#status.unsent?.entries ?? 0) > 0;
    this.#isSending = true;
    this.#change({ nextTry: undefined, ...(hasUnsent && { state: "sending" as const }) });
    const outcome = await this.#exclusively(`toeline-sync ${this.#client.address} ${this.#job}`, () =>
      synchronize(this.#store, this.#client, this.#job, {
        ...this.#sync,
        compare: isThorough,
        leaveOut: isThorough ? new Map() : this.#status.refused,
      }),
    );
    if (isThorough && outcome.stoppedBy === undefined) this.#thoroughAt = now;
    this.#isSending = false;
    this.#take(outcome);
    await this.#countUnsent();
    this.#schedule(this.#pauseAfter(outcome.stoppedBy));
  }

  #take(outcome: SyncOutcome): void {
    const { office, stoppedBy, clockOffsetMs } = outcome;
    this.#office = office ?? this.#office;
    this.#failures = stoppedBy === undefined ? 0 : this.#failures + 1;
    if (stoppedBy === undefined) this.#live.open();
    this.#change({
      cause: stoppedBy,
      ...(office !== undefined && {
        refused: outcome.refused,
        forked: outcome.forked,
        findings: outcome.findings,
      }),
      ...(clockOffsetMs !== undefined && { clockOffset: { ms: clockOffsetMs, at: this.#clock() } }),
    });
  }

  #pauseAfter(stoppedBy: Issue | undefined): number {
    if (stoppedBy === undefined) {
      if (this.#isMoreWritten || this.#isMoreThere) return PAUSES.gathering;
      return spread(this.#live.isOpen() ? PAUSES.live : PAUSES.polling, this.#random());
    }
    if (NEEDS_A_PERSON.has(stoppedBy.code)) return spread(PAUSES.longest, this.#random());
    const asked = stoppedBy.code === "sync.busy" ? 1000 * Number(stoppedBy.values["seconds"]) : 0;
    return pauseAfterFailures(this.#failures, this.#random(), asked);
  }

  #schedule(pause: number): void {
    this.#cancelTimer();
    if (this.#isStopped) return;
    this.#cancelTimer = this.#timers.after(pause, () => void this.#run());
    this.#change({ nextTry: new Date(this.#clock().getTime() + pause) });
  }

  /** Counts anew. While a count is under way, any number of further wishes are met by one more. */
  #countUnsent(): Promise<void> {
    this.#isCountDue = true;
    this.#counting ??= this.#count().finally(() => {
      this.#counting = undefined;
    });
    return this.#counting;
  }

  async #count(): Promise<void> {
    while (this.#isCountDue) {
      this.#isCountDue = false;
      const unsent = await unsentHere(this.#store, this.#client, this.#job, this.#office);
      if (!unsent.ok) return this.#change({ cause: unsent.error });
      const isEmpty = unsent.value.entries === 0;
      const state = isEmpty ? "at-the-office" : this.#isSending ? "sending" : "on-this-device-only";
      this.#change({ unsent: unsent.value, state });
    }
  }

  #heard(): void {
    this.#change({ lastHeard: this.#clock() });
  }

  #change(change: Partial<Omit<SyncStatus, "connection">>): void {
    this.#status = { ...this.#status, ...change };
    const status = this.status();
    for (const listener of this.#listeners) listener(status);
  }
}
