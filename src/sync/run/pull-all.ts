import { fail, type Issue, ok, type Result } from "#core";
import { type PullAnswer, type Received, receiveBatch, UNKNOWN_OFFICE, viewAfterPull } from "#records";
import { error, warning } from "../issue.ts";
import { acknowledge, type PartEnd, type SyncRun } from "./sync-run.ts";

/** What came of pulling to the end of the office's log. */
export interface Pulled {
  readonly end: PartEnd;
  /** digest that came with the last page; null if none was wanted, or if the log could not be taken over as a whole */
  readonly digest: string | null;
}

interface Page {
  readonly answer: PullAnswer;
  readonly received: Received;
}

/**
 * Takes over the office's log from where it was left to its end. Every sound entry goes into the log here before the place is kept;
 * damaged ones are kept aside, and the place then stays before them, so that they are asked for again the next time.
 */
export async function pullAll(
  run: SyncRun,
  wanted: "with-digest" | "no-digest",
): Promise<Result<Pulled, Issue>> {
  const { store, job } = run;
  const place = await store.readPulled(job, run.office);
  if (!place.ok) return place;
  let cursor = place.value;
  let isWhole = true;
  for (;;) {
    const page = await fetchPage(run, cursor, wanted);
    if (!page.ok) return page;
    if (page.value === "new-era") return ok({ end: "new-era", digest: null });
    const { answer, received } = page.value;
    const kept = await keepPage(run, received);
    if (!kept.ok) return kept;
    const { cursor: next } = viewAfterPull({ ...UNKNOWN_OFFICE, era: answer.era, cursor }, answer, received);
    const isSound = next === cursor + answer.entries.length;
    if (!isSound) run.findings.push(warning("sync.page-damaged", { count: received.quarantined.length }));
    isWhole &&= isSound;
    cursor += answer.entries.length;
    if (isWhole) {
      const moved = await store.keepPulled(job, run.office, cursor);
      if (!moved.ok) return moved;
    }
    run.onProgress();
    if (!answer.more) return ok({ end: "done", digest: isWhole ? answer.digest : null });
    if (answer.entries.length === 0) return fail(error("sync.answer-damaged", { found: "an empty page" }));
  }
}

/** A page with damaged entries is asked for twice: the damage may have come on the way. */
async function fetchPage(
  run: SyncRun,
  after: number,
  wanted: "with-digest" | "no-digest",
): Promise<Result<Page | "new-era", Issue>> {
  const { client, job, office, verifier } = run;
  for (let isLast = false; ; isLast = true) {
    const pulled = await client.pull({ format: "toeline-pull/1", job, after }, wanted);
    if (!pulled.ok) return pulled;
    const answer = pulled.value;
    if (answer.era > office.era) {
      run.office = { ...office, era: answer.era };
      return ok("new-era");
    }
    if (answer.era < office.era || answer.from !== after)
      return fail(error("sync.answer-damaged", { found: `era ${answer.era}, place ${answer.from}` }));
    const received = await receiveBatch(job, answer.entries, verifier);
    if (isLast || received.quarantined.length === 0) return ok({ answer, received });
  }
}

async function keepPage(run: SyncRun, received: Received): Promise<Result<true, Issue>> {
  const { store, job } = run;
  const appended = await store.append(job, received.sound, run.now());
  if (!appended.ok) return appended;
  run.counts.received += appended.value.added;
  const aside = await store.keepAside(job, received.quarantined, run.now());
  if (!aside.ok) return aside;
  // what comes from there is there
  const before = run.counts.sent;
  const known = await acknowledge(
    run,
    received.sound.map((entry) => entry.id),
  );
  run.counts.sent = before;
  return known.ok ? ok(true) : known;
}
