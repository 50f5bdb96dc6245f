import { fail, type Issue, ok, type Result } from "#core";
import { type Entry, nextBatch, type PushAnswer, UNKNOWN_OFFICE, viewAfterPush } from "#records";
import { error } from "../issue.ts";
import { acknowledge, entriesOf, type PartEnd, type SyncRun } from "./sync-run.ts";

/** A batch that is refused as a whole is divided to find the entry at fault; not endlessly, if it is the office that refuses all. */
const MAX_REFUSED_BATCHES = 30;

/** The whole batch was refused, not entries in it. */
const IS_REFUSAL = new Set(["sync.refused"]);

/**
 * Sends what the office has not named as held, batch by batch, until nothing is left but what it refuses. What is written meanwhile
 * goes too: what is to be sent is read from the log again each time, there is no mark to rely on.
 */
export async function pushAll(run: SyncRun): Promise<Result<PartEnd, Issue>> {
  const budget = { refusedBatches: MAX_REFUSED_BATCHES };
  for (;;) {
    const unsent = await run.store.readNotSent(run.job, run.office);
    if (!unsent.ok) return unsent;
    let waiting = unsent.value.filter((entry) => !run.refused.has(entry.id));
    if (waiting.length === 0) return ok("done");
    while (waiting.length > 0) {
      const batch = nextBatch(run.job, waiting, new Map());
      const entries = entriesOf(batch?.entries ?? []);
      const end = await pushBatch(run, entries, budget);
      if (!end.ok || end.value === "new-era") return end;
      waiting = waiting.slice(entries.length);
    }
  }
}

async function pushBatch(
  run: SyncRun,
  batch: readonly Entry[],
  budget: { refusedBatches: number },
): Promise<Result<PartEnd, Issue>> {
  const { client, job } = run;
  const answer = await client.push({ format: "toeline-push/1", job, entries: [...batch] });
  if (answer.ok) return takeAnswer(run, answer.value, batch);
  if (!IS_REFUSAL.has(answer.error.code) || budget.refusedBatches-- === 0) return answer;
  if (batch.length === 1) {
    run.refused.set(batch[0]!.id, answer.error.code);
    return ok("done");
  }
  const half = Math.ceil(batch.length / 2);
  for (const part of [batch.slice(0, half), batch.slice(half)]) {
    const end = await pushBatch(run, part, budget);
    if (!end.ok || end.value === "new-era") return end;
  }
  return ok("done");
}

async function takeAnswer(
  run: SyncRun,
  answer: PushAnswer,
  batch: readonly Entry[],
): Promise<Result<PartEnd, Issue>> {
  const { era, server } = run.office;
  if (answer.era < era) return fail(error("sync.answer-damaged", { found: `era ${answer.era}` }));
  const view = viewAfterPush({ ...UNKNOWN_OFFICE, era }, answer, batch);
  run.office = { server, era: view.era };
  const known = await acknowledge(run, view.acknowledged);
  if (!known.ok) return known;
  for (const [id, code] of view.refused) run.refused.set(id, code);
  for (const { id } of batch)
    if (!view.acknowledged.has(id) && !view.refused.has(id)) run.refused.set(id, "sync.not-named");
  for (const device of answer.forked) run.forked.add(device);
  run.onProgress();
  return ok(view.era === era ? "done" : "new-era");
}
