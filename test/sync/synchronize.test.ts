import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { canonicalJson, type Entry, foldJob, setDigest } from "#records";
import { openMemoryStore, type Store } from "#store";
import { type SyncOutcome, synchronize } from "#sync";
import { type BadLine, startBadLine } from "../support/bad-line.ts";
import { JOB, Pen, unwrap } from "../support/records.ts";
import {
  folderSettings,
  type Member,
  startOffice,
  storeWith,
  type TestOffice,
  temporaryFolder,
} from "../support/sync-office.ts";

const idsOf = async (store: Store) => unwrap(await store.readIds(JOB));
const stateOf = async (store: Store) => unwrap(canonicalJson(foldJob(unwrap(await store.readJob(JOB)))));
const unsentAt = async (store: Store, { office }: SyncOutcome) =>
  unwrap(await store.countNotSent(JOB, office!));

describe("a device and an office", () => {
  let office: TestOffice;
  let anna: Member;
  let folder: ReturnType<typeof temporaryFolder>;
  let line: BadLine;

  beforeEach(async () => {
    folder = temporaryFolder("sync");
    office = await startOffice(folderSettings(folder.folder));
    anna = await office.member("anna", "engineer");
    line = await startBadLine(office.address);
  });
  afterEach(async () => {
    await line.stop();
    await office.stop();
    folder.remove();
  });

  const overLine = () => office.client(anna, { address: line.address, silenceMs: 2000 });

  test("two devices end with the same entries and the same state as the office", async () => {
    const [a, b] = [await Pen.start(1), await Pen.start(2)];
    for (let i = 0; i < 450; i++) await a.set(`P${i % 7}`, "diameter_m", 1 + i / 1000);
    for (let i = 0; i < 5; i++) await b.set(`Q${i}`, "group", "wall");
    const [storeA, storeB] = [await storeWith(a.entries), await storeWith(b.entries)];
    const client = office.client(anna);
    const first = await synchronize(storeA, client, JOB);
    expect(first).toMatchObject({ sent: 451, received: 0, compared: "equal", stoppedBy: undefined });
    expect(await unsentAt(storeA, first)).toBe(0);
    expect(await synchronize(storeB, client, JOB)).toMatchObject({
      sent: 6,
      received: 451,
      compared: "equal",
    });
    expect(await synchronize(storeA, client, JOB)).toMatchObject({ sent: 0, received: 6, compared: "equal" });
    const states = await Promise.all([storeA, storeB, office.office.store].map(stateOf));
    expect(new Set(states).size).toBe(1);
    expect(await setDigest(await idsOf(storeA))).toBe(await setDigest(await idsOf(office.office.store)));
  });

  test("an answer that is lost after the commit is made up for, and nothing is there twice", async () => {
    const pen = await Pen.start(1);
    await pen.set("P1", "diameter_m", 1.2);
    const store = await storeWith(pen.entries);
    const client = overLine();
    unwrap(await client.greet());
    await line.set({ does: "lose-answer" });
    const pushed = await client.push({ format: "toeline-push/1", job: JOB, entries: [...pen.entries] });
    expect(pushed).toMatchObject({ ok: false, error: { code: "sync.no-answer" } });
    // the office has them, the device does not know
    expect(await idsOf(office.office.store)).toHaveLength(2);
    await line.set({ does: "pass" });
    const outcome = await synchronize(store, client, JOB);
    expect(outcome).toMatchObject({ sent: 2, compared: "equal" });
    expect(await idsOf(office.office.store)).toEqual(pen.entries.map((entry) => entry.id));
  });

  test("a line that is cut at any byte, there or back, loses nothing and is told", async () => {
    const pen = await Pen.start(1);
    for (let i = 0; i < 20; i++) await pen.set("P1", "group", `g${i}`);
    const store = await storeWith(pen.entries);
    const faults = [60, 400, 900, 3000, 12_000].flatMap((bytes) => [
      { does: "cut-after", bytes } as const,
      { does: "cut-answer-after", bytes } as const,
    ]);
    for (const fault of faults) {
      await line.set(fault);
      const outcome = await synchronize(store, overLine(), JOB);
      const held = new Set(await idsOf(office.office.store));
      if (outcome.office !== undefined) {
        const known = unwrap(await store.readAcknowledged(JOB, outcome.office));
        expect([...known].filter((id) => !held.has(id))).toEqual([]);
      }
      if (outcome.stoppedBy !== undefined)
        expect(["sync.no-answer", "sync.answer-damaged"]).toContain(outcome.stoppedBy.code);
    }
    await line.set({ does: "pass" });
    expect(await synchronize(store, overLine(), JOB)).toMatchObject({ compared: "equal" });
    expect(await idsOf(office.office.store)).toHaveLength(21);
  });

  test("an office that takes up the line and says nothing is given up after the time of silence", async () => {
    const store = await storeWith((await Pen.start(1)).entries);
    await line.set({ does: "silent" });
    // 30 s, run through by a timer of the test's own
    const due: { ms: number; call: () => void }[] = [];
    const timers = {
      after: (ms: number, call: () => void) => {
        const one = { ms, call };
        due.push(one);
        return () => void due.splice(due.indexOf(one), due.includes(one) ? 1 : 0);
      },
    };
    const outcome = synchronize(store, office.client(anna, { address: line.address, timers }), JOB);
    await expect.poll(() => line.connections()).toBeGreaterThan(0);
    expect(due.map(({ ms }) => ms)).toEqual([30_000]);
    due[0]!.call();
    expect((await outcome).stoppedBy).toMatchObject({ code: "sync.silent", values: { seconds: 30 } });
    expect(await idsOf(store)).toHaveLength(1);
  });

  test("no office at all is told by its cause", async () => {
    await line.stop();
    const outcome = await synchronize(openMemoryStore(), overLine(), JOB);
    expect(outcome.stoppedBy).toMatchObject({
      code: "sync.no-answer",
      values: { address: line.address, found: "ECONNREFUSED" },
    });
    line = await startBadLine(office.address);
  });

  test("a chain with two branches is kept whole and told to the device", async () => {
    const [one, copy] = [await Pen.start(1), await Pen.start(1)];
    await one.set("P1", "group", "left");
    await copy.set("P1", "group", "right");
    const client = office.client(anna);
    expect((await synchronize(await storeWith(one.entries), client, JOB)).forked).toEqual([]);
    const outcome = await synchronize(await storeWith(copy.entries), client, JOB);
    expect(outcome).toMatchObject({ forked: [one.device], compared: "equal", received: 1 });
    expect(await idsOf(office.office.store)).toHaveLength(3);
  });

  test("one bad entry is kept aside at the office and does not hold up the others", async () => {
    const pen = await Pen.start(1);
    const entries = [...pen.entries];
    for (let i = 0; i < 5; i++) entries.push(await pen.set("P1", "group", `g${i}`));
    const bad = { ...entries[2]!, author: "somebody else" };
    const store = await storeWith([...entries.slice(0, 2), bad, ...entries.slice(3)]);
    const client = office.client(anna);
    const outcome = await synchronize(store, client, JOB);
    expect([...outcome.refused]).toEqual([[bad.id, "records.id-mismatch"]]);
    expect(outcome).toMatchObject({ sent: 5, stoppedBy: undefined });
    expect(await unsentAt(store, outcome)).toBe(1);
    const [aside] = unwrap(await office.office.store.readKeptAside(JOB));
    expect(JSON.parse(aside!.text)).toEqual(bad);
    // left out on request, and everything else still goes
    await pen.set("P2", "group", "g");
    unwrap(await store.append(JOB, pen.entries.slice(-1), "2026-03-02T09:00:00.000Z"));
    expect(await synchronize(store, client, JOB, { leaveOut: outcome.refused })).toMatchObject({ sent: 1 });
  });

  test("the same id with other bytes is refused, and what is held stays", async () => {
    const pen = await Pen.start(1);
    const note = await pen.set("P1", "group", "g");
    const { store } = office.office;
    // the office holds the entry with another signature, which by itself nobody can make: as after damage
    const damaged = { ...note, signature: "0".repeat(128) };
    unwrap(await store.append(JOB, [pen.entries[0]!, damaged], "2026-03-02T09:00:00.000Z"));
    const outcome = await synchronize(await storeWith(pen.entries), office.client(anna), JOB, {
      entries: "send",
    });
    expect([...outcome.refused]).toEqual([[note.id, "store.id-taken"]]);
    expect(unwrap(await store.readJob(JOB))[1]).toEqual(damaged);
    expect(unwrap(await store.readKeptAside(JOB))).toHaveLength(1);
  });

  test("a page that is damaged at the office is told; what comes after it is taken all the same", async () => {
    const pen = await Pen.start(1);
    for (let i = 0; i < 3; i++) await pen.set("P1", "group", `g${i}`);
    const [first, second, third, last] = pen.entries as [Entry, Entry, Entry, Entry];
    const { store } = office.office;
    const at = "2026-03-02T09:00:00.000Z";
    unwrap(await store.append(JOB, [first, { ...second, signature: "0".repeat(128) }, third, last], at));
    const here = openMemoryStore();
    const outcome = await synchronize(here, office.client(anna), JOB);
    expect(outcome).toMatchObject({ received: 3, compared: "not-compared", stoppedBy: undefined });
    expect(outcome.findings.map(({ code }) => code)).toEqual(["sync.page-damaged"]);
    expect(unwrap(await here.readKeptAside(JOB))).toHaveLength(1);
    expect(unwrap(await here.readPulled(JOB, outcome.office!))).toBe(0);
  });

  test("somebody without a part in the job learns nothing of it, and a new job belongs to who brings it", async () => {
    const pen = await Pen.start(1);
    const stranger = await office.member("ben", "engineer", "job-other");
    expect((await synchronize(await storeWith(pen.entries), office.client(anna), JOB)).sent).toBe(1);
    const outcome = await synchronize(await storeWith(pen.entries), office.client(stranger), JOB);
    expect(outcome).toMatchObject({ sent: 0, received: 0, stoppedBy: { code: "sync.no-such-job" } });
    const own = await Pen.start(2, "job-of-ben");
    const begun = await synchronize(await storeWith(own.entries), office.client(stranger), "job-of-ben");
    expect(begun).toMatchObject({ sent: 1, compared: "equal" });
    expect(await office.office.access.roleIn(stranger.person, "job-of-ben")).toBe("manager");
    const nobody = office.client({ ...anna, token: "toe_nothing" });
    expect((await synchronize(openMemoryStore(), nobody, JOB)).stoppedBy?.code).toBe("sync.signed-out");
  });

  test("a program that is too old can neither send nor fetch, and is told what still works", async () => {
    const ask = async (path: string, init: RequestInit = {}) => {
      const headers = { authorization: `Bearer ${anna.token}`, "content-type": "application/json" };
      const answer = await fetch(`${office.address}/api/1/jobs/${JOB}${path}`, { headers, ...init });
      return { status: answer.status, problem: await answer.json() };
    };
    const old = JSON.stringify({ format: "toeline-push/0", job: JOB, lines: [] });
    for (const { status, problem } of [
      await ask("/push", { method: "POST", body: old }),
      await ask("/pull?format=toeline-pull/0&after=0"),
    ]) {
      expect(status).toBe(400);
      expect(problem).toMatchObject({ code: "sync.client-too-old" });
      expect(problem.detail).toContain("You can go on recording");
    }
    const other = JSON.stringify({ format: "toeline-push/1", job: "another", entries: [] });
    expect(await ask("/push", { method: "POST", body: other })).toMatchObject({
      status: 400,
      problem: { code: "records.other-job" },
    });
    expect((await ask("/push", { method: "POST", body: "{" })).problem.code).toBe("records.not-json-text");
  });
});

describe("an office that was restored from a back-up", () => {
  let folder: ReturnType<typeof temporaryFolder>;
  beforeAll(() => {
    folder = temporaryFolder("restored");
  });
  afterAll(() => folder.remove());

  test("gets what it has lost from the device that holds it; so does one that has lost something unknowingly", async () => {
    const pen = await Pen.start(1);
    for (let i = 0; i < 9; i++) await pen.set("P1", "group", `g${i}`);
    const store = await storeWith(pen.entries);
    const runAt = async (name: string, era: number, before: readonly Entry[]) => {
      const office = await startOffice(folderSettings(`${folder.folder}/${name}`), (opened) => ({
        ...opened,
        id: "the same office",
        era,
      }));
      const anna = await office.member("anna", "engineer");
      unwrap(await office.office.store.append(JOB, before, "2026-03-02T09:00:00.000Z"));
      // the address of an office does not change with its machine
      const client = { ...office.client(anna), address: "https://office.example" };
      const outcome = await synchronize(store, client, JOB);
      const held = await idsOf(office.office.store);
      await office.stop();
      return { outcome, held };
    };
    const first = await runAt("first", 1, []);
    expect(first.outcome).toMatchObject({ sent: 10, compared: "equal" });
    const restored = await runAt("restored", 2, pen.entries.slice(0, 4));
    expect(restored.outcome).toMatchObject({ sent: 10, compared: "equal", office: { era: 2 } });
    expect(restored.held).toHaveLength(10);
    // era 2 again, but one entry is gone and the office does not know
    const lost = await runAt("lost", 2, pen.entries.toSpliced(6, 1));
    expect(lost.outcome.findings.map(({ code }) => code)).toEqual(["sync.office-lost"]);
    expect(lost.outcome.compared).toBe("equal");
    expect(new Set(lost.held)).toEqual(new Set(pen.entries.map((entry) => entry.id)));
  });
});
