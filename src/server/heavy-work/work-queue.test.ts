import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, describe, expect, test } from "vitest";
import { setDigest } from "#records";
import { openSqliteStore } from "#store";
import { JOB, Pen, unwrap } from "../../../test/support/records.ts";
import { openOfficeTables } from "../tables/open-office-tables.ts";
import { openWorkQueue, STORE_FILE } from "./open-work-queue.ts";
import { requestForJob } from "./request-for-job.ts";
import { MAX_UNFINISHED_PER_PERSON } from "./take-request.ts";
import type { Work, WorkQueue, WorkRequest } from "./work-queue.ts";

const AT = "2026-03-02T09:00:00.000Z";
const clock = () => new Date(AT);
const root = mkdtempSync(join(tmpdir(), "toeline-work-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const request = (key: string, more: Partial<WorkRequest> = {}): WorkRequest => ({
  task: "check-log",
  job: JOB,
  input: {},
  entries: 4,
  requestedBy: "anna",
  key,
  ...more,
});

/** An office with one job of four entries. */
async function office(workers: number) {
  const dataFolder = mkdtempSync(join(root, "data-"));
  const store = unwrap(await openSqliteStore(join(dataFolder, STORE_FILE)));
  const pen = await Pen.start(1);
  for (let i = 1; i <= 4; i++) await pen.set("P1", "diameter_m", i);
  unwrap(await store.append(JOB, pen.entries, AT));
  const tables = unwrap(await openOfficeTables({ dataFolder, database: undefined }));
  const open = async (threads: number) =>
    unwrap(await openWorkQueue({ dataFolder, database: undefined, workers: threads }, tables, clock));
  const queue = await open(workers);
  const close = async (one: WorkQueue) => {
    await one.close();
    await tables.db.destroy();
    await store.close();
  };
  return { pen, store, tables, queue, open, close };
}

async function ended(queue: WorkQueue, id: string): Promise<Work> {
  for (;;) {
    const work = unwrap(await queue.find(id));
    if (work !== undefined && !["waiting", "running"].includes(work.progress.state)) return work;
    await wait(30);
  }
}

describe("heavy work on one machine", () => {
  test("is done in a thread, once for a key, on the entries that were there when it was asked for", async () => {
    const { pen, queue, close } = await office(2);
    const first = unwrap(await queue.request(request("a")));
    expect(first).toMatchObject({ job: JOB, requestedBy: "anna", requestedAt: AT, task: "check-log" });
    const second = unwrap(await queue.request(request("a", { requestedBy: "bernd" })));
    expect(second.id).toBe(first.id);
    const done = await ended(queue, first.id);
    const ids = pen.entries.slice(0, 4).map((entry) => entry.id);
    expect(done.attempts).toBe(1);
    expect(done.progress).toMatchObject({
      state: "finished",
      result: { entries: 4, sound: 4, devices: 1, digest: await setDigest(ids) },
    });
    expect(unwrap(await queue.request(request("a"))).progress.state).toBe("finished");
    expect(unwrap(await queue.counts())).toMatchObject({ finished: 1, waiting: 0, running: 0 });
    expect(unwrap(await queue.ofJob(JOB)).map(({ id }) => id)).toEqual([first.id]);
    await close(queue);
  });

  test("that waited or ran when the program ended is taken up again", async () => {
    const { tables, queue, open, close } = await office(0);
    const waiting = unwrap(await queue.request(request("a")));
    const begun = unwrap(await queue.request(request("b")));
    await tables.db
      .updateTable("work")
      .set({ state: "running", worker: "one that was killed", attempts: 1 })
      .where("id", "=", begun.id)
      .execute();
    const again = await open(1);
    expect((await ended(again, waiting.id)).progress.state).toBe("finished");
    expect(await ended(again, begun.id)).toMatchObject({ attempts: 2, progress: { state: "finished" } });
    await queue.close();
    await close(again);
  });

  test("is given back when the server stops, as if nobody had begun", async () => {
    const { tables, queue, open, close } = await office(1);
    const works: Work[] = [];
    for (let i = 0; i < 30; i++) works.push(unwrap(await queue.request(request(`key ${i}`))));
    await queue.close();
    expect(unwrap(await queue.counts()).running).toBe(0);
    const rows = await tables.db.selectFrom("work").selectAll().where("state", "=", "waiting").execute();
    expect(rows.every((row) => row.attempts === 0 && row.worker === null)).toBe(true);
    const again = await open(1);
    for (const { id } of works) expect((await ended(again, id)).progress.state).toBe("finished");
    await close(again);
  });

  test("can be cancelled while it waits and while it runs, and asked for anew", async () => {
    const { tables, queue, open, close } = await office(0);
    const work = unwrap(await queue.request(request("a")));
    expect(unwrap(await queue.cancel(work.id))?.progress.state).toBe("cancelled");
    expect(unwrap(await queue.cancel("none"))).toBeUndefined();
    expect(unwrap(await queue.request(request("a")))).toMatchObject({
      id: work.id,
      progress: { state: "waiting" },
    });
    const again = await open(1);
    await ended(again, work.id);
    expect(unwrap(await again.cancel(work.id))?.progress.state).toBe("finished");
    await tables.db.deleteFrom("work").execute();
    const second = unwrap(await again.request(request("b")));
    await again.cancel(second.id);
    await wait(1500);
    expect(unwrap(await again.find(second.id))?.progress.state).toBe("cancelled");
    await queue.close();
    await close(again);
  });

  test("of one person does not hold up that of others", async () => {
    const { tables, queue, open, close } = await office(0);
    for (let i = 0; i < 8; i++) unwrap(await queue.request(request(`anna ${i}`)));
    const other = unwrap(await queue.request(request("bernd", { requestedBy: "bernd" })));
    const again = await open(1);
    await ended(again, other.id);
    const { finished } = unwrap(await again.counts());
    // anna's first piece was asked for before; with one thread nothing else came in between but what had begun meanwhile
    expect(finished).toBeLessThan(5);
    await again.close();
    const left = await tables.db
      .selectFrom("work")
      .select("requested_by")
      .where("state", "=", "waiting")
      .execute();
    expect(left.every((row) => row.requested_by === "anna")).toBe(true);
    await close(queue);
  });

  test("is refused if it is unknown, wrongly asked for, or too much", async () => {
    const { queue, close } = await office(0);
    const codeOf = async (asked: WorkRequest) => {
      const taken = await queue.request(asked);
      return taken.ok ? "taken" : taken.error.code;
    };
    expect(await codeOf(request("x", { task: "brew-coffee" }))).toBe("work.unknown-task");
    expect(await codeOf(request("x", { input: { surprise: 1 } }))).toBe("work.input");
    for (let i = 0; i < MAX_UNFINISHED_PER_PERSON; i++) expect(await codeOf(request(`${i}`))).toBe("taken");
    expect(await codeOf(request("one more"))).toBe("work.queue-full");
    expect(await codeOf(request("0"))).toBe("taken");
    expect(await codeOf(request("other", { requestedBy: "bernd" }))).toBe("taken");
    expect(unwrap(await queue.counts()).waiting).toBe(MAX_UNFINISHED_PER_PERSON + 1);
    await close(queue);
  });

  test("on a job that the store does not hold tells what is there: nothing", async () => {
    const { store, queue, close } = await office(1);
    const asked = unwrap(
      await requestForJob({ store }, { task: "check-log", job: "none", input: {}, requestedBy: "anna" }),
    );
    const work = unwrap(await queue.request(asked));
    expect((await ended(queue, work.id)).progress).toMatchObject({ result: { entries: 0, devices: 0 } });
    await close(queue);
  });
});
