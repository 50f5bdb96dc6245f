import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { WebSocket } from "ws";
import type { Store } from "#store";
import { openMemoryStore } from "#store";
import { keepSynchronized, PAUSES, type SyncStatus, whereEntriesAre } from "#sync";
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

const AT = "2026-03-02T09:00:00.000Z";

/** Timers that run when the test says so, and keep to its clock. */
class Clock {
  now = Date.parse(AT);
  #due: { at: number; call: () => void }[] = [];
  readonly clock = () => new Date(this.now);
  readonly timers = {
    after: (ms: number, call: () => void) => {
      const one = { at: this.now + ms, call };
      this.#due.push(one);
      return () => {
        this.#due = this.#due.filter((other) => other !== one);
      };
    },
  };
  pass(ms: number): void {
    this.now += ms;
    const ripe = this.#due.filter(({ at }) => at <= this.now);
    this.#due = this.#due.filter(({ at }) => at > this.now);
    for (const { call } of ripe) call();
  }
}

describe("a device that keeps in step", () => {
  let office: TestOffice;
  let anna: Member;
  let folder: ReturnType<typeof temporaryFolder>;
  let line: BadLine;
  let clock: Clock;
  const ends: (() => Promise<void>)[] = [];

  beforeEach(async () => {
    folder = temporaryFolder("keep");
    office = await startOffice(folderSettings(folder.folder));
    anna = await office.member("anna", "technician");
    line = await startBadLine(office.address);
    clock = new Clock();
  });
  afterEach(async () => {
    for (const end of ends.splice(0)) await end();
    await line.stop();
    await office.stop();
    folder.remove();
  });

  const keep = (store: Store, isLive = false) => {
    const client = office.client(anna, { address: line.address });
    const kept = keepSynchronized(store, client, JOB, {
      timers: clock.timers,
      clock: clock.clock,
      random: () => 0.5,
      ...(isLive && {
        connect: (address: string) =>
          new WebSocket(address, { headers: { authorization: `Bearer ${anna.token}` } }),
      }),
    });
    ends.push(() => kept.stop());
    return kept;
  };
  const until = (kept: { status(): SyncStatus }, isReached: (status: SyncStatus) => boolean) =>
    expect.poll(() => isReached(kept.status()), { timeout: 20_000 }).toBe(true);
  const write = async (pen: Pen, store: Store, group: string) => {
    const entry = await pen.write("note", { about: "job", text: group });
    unwrap(await store.append(JOB, [entry], AT));
    return entry;
  };

  test("says what is not sent before the office has answered, tries later each time, and sends when it can", async () => {
    const pen = await Pen.start(1);
    const store = await storeWith(pen.entries);
    await line.stop();
    const kept = keep(store);
    expect(kept.status()).toMatchObject({ state: "on-this-device-only", connection: "not-connected" });
    clock.pass(0);
    const waits: number[] = [];
    for (let i = 0; i < 8; i++) {
      await until(kept, ({ nextTry, cause }) => cause !== undefined && nextTry !== undefined);
      waits.push(kept.status().nextTry!.getTime() - clock.now);
      if (i < 7) clock.pass(waits.at(-1)!);
      await until(kept, ({ nextTry }) => i === 7 || (nextTry?.getTime() ?? 0) > clock.now);
    }
    const doubled = [1, 2, 4, 8, 16, 32].map((times) => times * PAUSES.first);
    expect(waits).toEqual([...doubled, PAUSES.longest, PAUSES.longest]);
    expect(kept.status()).toMatchObject({
      state: "on-this-device-only",
      unsent: { entries: 1, byKind: { device: 1 } },
      cause: { code: "sync.no-answer" },
      lastHeard: undefined,
    });
    line = await startBadLine(office.address);
    const again = keep(store);
    expect(await again.sendNow()).toMatchObject({
      state: "at-the-office",
      connection: "connected",
      cause: undefined,
      unsent: { entries: 0 },
    });
    clock.now += 60_000;
    expect(again.status()).toMatchObject({ state: "at-the-office", connection: "not-connected" });
  });

  test("what is written goes soon, and what was acknowledged is known after a restart without the office", async () => {
    const pen = await Pen.start(1);
    const store = await storeWith(pen.entries);
    const kept = keep(store);
    await kept.sendNow();
    await write(pen, store, "one");
    kept.wrote();
    await until(kept, ({ unsent }) => unsent?.entries === 1);
    clock.pass(PAUSES.gathering);
    await until(kept, ({ state }) => state === "at-the-office");
    await kept.stop();
    await line.set({ does: "silent" });
    await write(pen, store, "two");
    const restarted = keep(store);
    await until(restarted, ({ unsent }) => unsent?.entries === 1);
    expect(restarted.status().state).toBe("on-this-device-only");
  });

  test("a signed-out device keeps recording and is told to sign in; it is not tried every few seconds", async () => {
    const store = await storeWith((await Pen.start(1)).entries);
    const client = office.client({ ...anna, token: "toe_none" });
    const kept = keepSynchronized(store, client, JOB, {
      timers: clock.timers,
      clock: clock.clock,
      random: () => 0.5,
    });
    ends.push(() => kept.stop());
    const status = await kept.sendNow();
    expect(status).toMatchObject({ cause: { code: "sync.signed-out" }, unsent: { entries: 1 } });
    expect(status.nextTry!.getTime() - clock.now).toBe(PAUSES.longest);
  });

  test("hears at once when another device has sent something, and asks now and then where nothing tells it", async () => {
    const [here, other] = [openMemoryStore(), await Pen.start(2)];
    await synchronizeOnce(await storeWith(other.entries));
    const kept = keep(here, true);
    await kept.sendNow();
    expect(unwrap(await here.size(JOB))).toBe(1);
    // the connection is open when it has said how much there is
    const before = clock.now;
    await until(
      kept,
      ({ nextTry }) => nextTry !== undefined && nextTry.getTime() - before < PAUSES.polling / 2,
    );
    clock.pass(PAUSES.gathering);
    await until(
      kept,
      ({ nextTry }) => nextTry !== undefined && nextTry.getTime() - clock.now > PAUSES.polling,
    );
    await other.write("note", { about: "job", text: "new" });
    await synchronizeOnce(await storeWith(other.entries));
    await until(
      kept,
      ({ nextTry }) => nextTry !== undefined && nextTry.getTime() - clock.now < PAUSES.polling / 2,
    );
    clock.pass(PAUSES.gathering);
    await expect.poll(async () => unwrap(await here.size(JOB)), { timeout: 20_000 }).toBe(2);
  });

  test("what the office tells while a run is under way is fetched soon after it, not minutes later", async () => {
    const store = await storeWith((await Pen.start(1)).entries);
    const told = { format: "toeline-live/1", job: JOB, era: 1, size: 99 };
    const kept = keepSynchronized(store, office.client(anna), JOB, {
      timers: clock.timers,
      clock: clock.clock,
      random: () => 0.5,
      // a line that opens and speaks before the run that made it has come to its end
      connect: () => {
        const socket = Object.assign(new EventTarget(), { close: () => {} });
        queueMicrotask(() =>
          socket.dispatchEvent(new MessageEvent("message", { data: JSON.stringify(told) })),
        );
        return socket as unknown as WebSocket;
      },
    });
    ends.push(() => kept.stop());
    const { nextTry } = await kept.sendNow();
    expect(nextTry!.getTime() - clock.now).toBe(PAUSES.gathering);
  });

  test("several tabs over one store at once end with every entry at the office once", async () => {
    const pen = await Pen.start(1);
    const store = await storeWith(pen.entries);
    const tabs = [keep(store), keep(store), keep(store)];
    for (let i = 0; i < 5; i++) {
      await write(pen, store, `note ${i}`);
      await Promise.all(tabs.map((tab) => tab.sendNow()));
    }
    const ids = unwrap(await office.office.store.readIds(JOB));
    expect([...ids].sort()).toEqual(pen.entries.map(({ id }) => id).sort());
    for (const tab of tabs) expect(tab.status()).toMatchObject({ state: "at-the-office", findings: [] });
  });

  const synchronizeOnce = async (store: Store) => {
    const kept = keepSynchronized(store, office.client(anna), JOB, { timers: clock.timers });
    await kept.sendNow();
    await kept.stop();
  };
});

test("an entry is here, at the office, or seen by those whose later entries say so", async () => {
  const [a, b] = [await Pen.start(1), await Pen.start(2)];
  for (const text of ["one", "two"]) await a.write("note", { about: "job", text });
  b.receive(a.entries.slice(0, 2));
  await b.write("note", { about: "job", text: "read it" });
  const log = [...a.entries, ...b.entries];
  const acknowledged = new Set(a.entries.slice(0, 2).map(({ id }) => id));
  const where = whereEntriesAre(log, acknowledged, a.device);
  const seen = { state: "seen", by: ["anna"] };
  expect(a.entries.map(where)).toEqual([seen, seen, { state: "on-this-device-only" }]);
  expect(whereEntriesAre(a.entries, acknowledged, a.device)(a.entries[1]!)).toEqual({
    state: "at-the-office",
  });
});
