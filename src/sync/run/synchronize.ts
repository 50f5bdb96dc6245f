import { type Issue, ok, type Result } from "#core";
import { createVerifier, setDigest, type Verifier } from "#records";
import type { Office, Store } from "#store";
import type { OfficeClient } from "../client/office-client.ts";
import { error, warning } from "../issue.ts";
import type { Greeting } from "../messages.ts";
import { type BlobCatalogue, createBlobCatalogue } from "./blob-catalogue.ts";
import { exchangeFiles } from "./exchange-files.ts";
import { pullAll } from "./pull-all.ts";
import { pushAll } from "./push-all.ts";
import type { PartEnd, SyncCounts, SyncRun } from "./sync-run.ts";

/** A office is restored now and then, not over and over. */
const MAX_ERAS = 3;

export interface SyncSettings {
  /** for labels only: when something came or was acknowledged */
  readonly clock?: () => Date;
  readonly verifier?: Verifier;
  /** default: both */
  readonly entries?: "send" | "fetch" | "both";
  /** files that entries name. Default: send */
  readonly files?: "send" | "fetch" | "both" | "none";
  /** whether the sets of both sides are compared at the end, by their digest. Default: yes, if both ways are gone */
  readonly compare?: boolean;
  /** entries that the office has refused and that are not to be tried again in this run */
  readonly leaveOut?: ReadonlyMap<string, string>;
  readonly catalogue?: BlobCatalogue;
  /** see `FileSettings`; by office and era */
  readonly settled?: Map<string, Set<string>>;
  readonly isHeldUp?: () => boolean;
  /** called whenever something has moved on */
  readonly onProgress?: (counts: SyncCounts) => void;
}

export interface SyncOutcome extends SyncCounts {
  /** undefined if the office did not say who it is */
  readonly office: Office | undefined;
  /** entries that the office keeps aside, with the code that says why */
  readonly refused: ReadonlyMap<string, string>;
  /** devices whose chain has two branches at the office; such a device takes a new key */
  readonly forked: readonly string[];
  /** warnings: the work went on */
  readonly findings: readonly Issue[];
  /** whether the sets were compared and are equal */
  readonly compared: "equal" | "different" | "not-compared";
  /** office clock minus the clock here, milliseconds, give or take the way there and back */
  readonly clockOffsetMs: number | undefined;
  /** what ended the run before its end; what was done until then stands */
  readonly stoppedBy: Issue | undefined;
}

/**
 * Brings a job here and at the office to the same set of entries: sends what is not there, fetches what is not here, compares
 * the digests of both sets; then sends and fetches files.
 *
 * Can be broken off at any moment and called again, also by several tabs or programs at once: what is to be done is worked out
 * from the log and from what the office has named as held.
 */
export async function synchronize(
  store: Store,
  client: OfficeClient,
  job: string,
  settings: SyncSettings = {},
): Promise<SyncOutcome> {
  const clock = settings.clock ?? (() => new Date());
  const asked = clock().getTime();
  const greeting = await client.greet();
  if (!greeting.ok) return nothingDone(greeting.error);
  const answered = clock().getTime();
  const office = officeOf(client, greeting.value);
  const counts = { sent: 0, received: 0, filesSent: 0, filesFetched: 0 };
  const run: SyncRun = {
    store,
    client,
    job,
    office,
    verifier: settings.verifier ?? createVerifier(),
    now: () => clock().toISOString(),
    refused: new Map(settings.leaveOut),
    forked: new Set(),
    findings: [],
    counts,
    onProgress: () => settings.onProgress?.({ ...counts }),
  };
  const compared = await exchangeAll(run, settings);
  return {
    ...counts,
    office: run.office,
    refused: run.refused,
    forked: [...run.forked].sort(),
    findings: run.findings,
    compared: compared.ok ? compared.value : "not-compared",
    clockOffsetMs: Date.parse(greeting.value.time) - (asked + answered) / 2,
    stoppedBy: compared.ok ? undefined : compared.error,
  };
}

/** Two offices may come to stand at one address, one after the other; what the first held says nothing of the second. */
export const officeOf = (client: OfficeClient, { office, era }: Greeting): Office => ({
  server: `${client.address} ${office}`,
  era,
});

type Compared = SyncOutcome["compared"];

async function exchangeAll(run: SyncRun, settings: SyncSettings): Promise<Result<Compared, Issue>> {
  // remembered before anything is sent, so that what is not sent can be told without the office
  const known = await run.store.keepPulled(run.job, run.office, 0);
  if (!known.ok) return known;
  let compared: Compared = "not-compared";
  for (let eras = 1, isAgain = false; ; ) {
    const ended = await exchangeEntries(run, settings);
    if (!ended.ok) return ended;
    if (ended.value.end === "new-era") {
      if (++eras > MAX_ERAS) return { ok: false, error: error("sync.answer-damaged", { found: "era" }) };
      run.findings.push(warning("sync.office-restored"));
      continue;
    }
    compared = ended.value.compared;
    if (compared !== "different" || isAgain) break;
    const forgotten = await startAnew(run);
    if (!forgotten.ok) return forgotten;
    isAgain = true;
  }
  if (compared === "different") run.findings.push(warning("sync.sets-differ"));
  const files = await exchangeFilesOf(run, settings);
  return files.ok ? ok(compared) : files;
}

async function exchangeEntries(
  run: SyncRun,
  settings: SyncSettings,
): Promise<Result<{ readonly end: PartEnd; readonly compared: Compared }, Issue>> {
  const way = settings.entries ?? "both";
  if (way !== "fetch") {
    const pushed = await pushAll(run);
    if (!pushed.ok) return pushed;
    if (pushed.value === "new-era") return ok({ end: "new-era", compared: "not-compared" });
  }
  if (way === "send") return ok({ end: "done", compared: "not-compared" });
  const isWanted = settings.compare ?? true;
  // another tab may have sent something between the last page and the comparison: then the page after it settles the matter
  for (let isLast = false; ; isLast = true) {
    const pulled = await pullAll(run, isWanted ? "with-digest" : "no-digest");
    if (!pulled.ok) return pulled;
    const { end, digest } = pulled.value;
    if (end === "new-era" || !isWanted || digest === null) return ok({ end, compared: "not-compared" });
    const held = await run.store.readAcknowledged(run.job, run.office);
    if (!held.ok) return held;
    const isEqual = (await setDigest(held.value)) === digest;
    if (isEqual || isLast) return ok({ end, compared: isEqual ? "equal" : "different" });
  }
}

/** The office does not hold what it had named: everything is asked for again, and what it has lost is sent again. */
async function startAnew(run: SyncRun): Promise<Result<true, Issue>> {
  run.findings.push(warning("sync.office-lost"));
  return run.store.forgetOffice(run.job, run.office);
}

async function exchangeFilesOf(run: SyncRun, settings: SyncSettings): Promise<Result<true, Issue>> {
  const files = settings.files ?? "send";
  if (files === "none") return ok(true);
  const life = `${run.office.era} ${run.office.server}`;
  const settled = settings.settled?.get(life) ?? new Set<string>();
  settings.settled?.set(life, settled);
  return exchangeFiles(run, {
    send: files !== "fetch",
    fetch: files !== "send",
    isHeldUp: settings.isHeldUp ?? (() => false),
    catalogue: settings.catalogue ?? createBlobCatalogue(run.store, run.job),
    settled,
  });
}

const nothingDone = (stoppedBy: Issue): SyncOutcome => ({
  sent: 0,
  received: 0,
  filesSent: 0,
  filesFetched: 0,
  office: undefined,
  refused: new Map(),
  forked: [],
  findings: [],
  compared: "not-compared",
  clockOffsetMs: undefined,
  stoppedBy,
});
