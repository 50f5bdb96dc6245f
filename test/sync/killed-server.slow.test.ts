import { type ChildProcess, spawn } from "node:child_process";
import { rmSync } from "node:fs";
import { join, resolve } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import Database from "better-sqlite3";
import { build } from "esbuild";
import { afterAll, describe, expect, test } from "vitest";
import { ok } from "#core";
import { checkEntry, walkChains } from "#records";
import { createRandom } from "#simulator";
import { openMemoryStore, openSqliteStore } from "#store";
import { createOfficeClient, type Greeting, type OfficeClient, synchronize } from "#sync";
import { JOB, Pen, unwrap, verifier } from "../support/records.ts";
import { temporaryFolder } from "../support/sync-office.ts";

const SEED = 20261125;
/** TOELINE_KILLS=10000 for the time before a release. */
const ROUNDS = Number(process.env["TOELINE_KILLS"] ?? 300);
const SENDERS = 20;
/** From the first answer of a life, or in some lives from its beginning, to its end; at most, milliseconds. */
const LONGEST_LIFE = 100;
const SHARE_FROM_BEGINNING = 0.25;
/** Entries that a sender writes between two sendings, at most. */
const MOST_WRITTEN = 3;

const GREETING: Greeting = {
  format: "toeline-office/1",
  office: "office",
  era: 1,
  time: "2026-03-02T09:00:00.000Z",
  program: "toeline",
  takes: ["toeline-push/1", "toeline-pull/1"],
};

const root = resolve(import.meta.dirname, "../..");
const { folder, remove } = temporaryFolder("killed-server");
// beside the packages, so that those with compiled parts are found
const program = join(root, `dist/test/killed-server-${process.pid}.mjs`);
afterAll(() => {
  remove();
  rmSync(program, { force: true });
});

/** The server in one file, so that it is up in a fraction of a second. */
const bundled = build({
  entryPoints: [join(root, "test/support/sync-server.ts")],
  outfile: program,
  absWorkingDir: root,
  bundle: true,
  platform: "node",
  format: "esm",
  target: "node20",
  external: ["better-sqlite3", "pg-native"],
  banner: {
    js: 'import { createRequire as createTestRequire } from "node:module";\nconst require = createTestRequire(import.meta.url);',
  },
  logLevel: "error",
});

interface ServerProcess {
  /** opens the store and listens. @returns its address */
  begin(): Promise<string>;
  kill(): Promise<void>;
}

/** Loads the program and waits, so that the next server is loaded while the last one still works. */
function loadServer(data: string): ServerProcess {
  const server: ChildProcess = spawn(process.execPath, [program, data], { stdio: ["pipe", "pipe", "pipe"] });
  let complaint = "";
  server.stderr!.on("data", (chunk) => {
    complaint += chunk;
  });
  const ended = new Promise<NodeJS.Signals | null>((done) => {
    server.on("close", (_code, signal) => done(signal));
  });
  const listening = new Promise<string>((said, failed) => {
    let output = "";
    server.stdout!.on("data", (chunk) => {
      output += chunk;
      if (output.includes("\n")) said(output.trim());
    });
    void ended.then(() => failed(new Error(`the server ended by itself: ${complaint.slice(-500)}`)));
  });
  listening.catch(() => {});
  return {
    begin: () => {
      server.stdin!.write("begin\n");
      return listening;
    },
    kill: async () => {
      server.kill("SIGKILL");
      expect(await ended, complaint).toBe("SIGKILL");
    },
  };
}

/** The time between two kills, as the senders see it. */
interface Life {
  isOver: boolean;
  /** somebody was told that something is safe */
  readonly onAnswer: () => void;
}

/** The same office on every port, which introduces itself once for all. */
const toOffice = (address: string): OfficeClient => ({
  ...unwrap(createOfficeClient({ address, fetch, silenceMs: 10_000 })),
  address: "http://localhost",
  greet: async () => ok(GREETING),
});

/** A device: it writes, sends, and believes only answers. */
class Sender {
  readonly pen: Pen;
  readonly store = openMemoryStore();
  readonly #uniform: () => number;
  #kept = 0;

  constructor(pen: Pen, uniform: () => number) {
    this.pen = pen;
    this.#uniform = uniform;
  }

  async write(): Promise<void> {
    const count = Math.floor((MOST_WRITTEN + 1) * this.#uniform());
    for (let i = 0; i < count; i++) await this.pen.set("P1", "diameter_m", 1 + this.#uniform());
    const { entries } = this.pen;
    unwrap(await this.store.append(JOB, entries.slice(this.#kept), new Date().toISOString()));
    this.#kept = entries.length;
  }

  /** Sends as to one office, whatever port it has this time. */
  async send(address: string, life: Life): Promise<void> {
    const client = toOffice(address);
    while (!life.isOver) {
      await this.write();
      const { sent } = await synchronize(this.store, client, JOB, { entries: "send", files: "none" });
      if (sent > 0) life.onAnswer();
    }
  }

  async acknowledged(): Promise<ReadonlySet<string>> {
    const ids = new Set<string>();
    for (const office of unwrap(await this.store.readOffices(JOB)))
      for (const id of unwrap(await this.store.readAcknowledged(JOB, office))) ids.add(id);
    return ids;
  }
}

describe(`a server killed ${ROUNDS} times under ${SENDERS} senders, seed ${SEED}`, () => {
  test("holds every acknowledged entry once, in chains without gaps; the others arrive once", async () => {
    await bundled;
    const random = createRandom(SEED);
    const senders = await Promise.all(
      Array.from(
        { length: SENDERS },
        async (_, i) => new Sender(await Pen.start(i + 1), random.fork(`sender ${i}`).uniform),
      ),
    );
    const data = folder;
    const atDeath = { acknowledged: 0, unsent: 0 };
    let next = loadServer(data);
    for (let round = 0; round < ROUNDS; round++) {
      const server = next;
      next = loadServer(data);
      const address = await server.begin();
      let answered = () => {};
      const firstAnswer = new Promise<void>((resolved) => {
        answered = resolved;
      });
      const life: Life = { isOver: false, onAnswer: () => answered() };
      const sending = Promise.all(senders.map((sender) => sender.send(address, life)));
      if (random.uniform() > SHARE_FROM_BEGINNING) await firstAnswer;
      await wait(LONGEST_LIFE * random.uniform());
      const dying = server.kill();
      life.isOver = true;
      await dying;
      await sending;
      for (const sender of senders) {
        const known = (await sender.acknowledged()).size;
        atDeath.acknowledged += known;
        atDeath.unsent += sender.pen.entries.length - known;
      }
    }
    // otherwise the rounds would prove little
    expect(atDeath.acknowledged).toBeGreaterThan(ROUNDS * SENDERS);
    expect(atDeath.unsent).toBeGreaterThan(ROUNDS);
    await isEveryAcknowledgedHeld(join(data, "toeline.sqlite"), senders);

    const address = await next.begin();
    for (const sender of senders) {
      const outcome = await synchronize(sender.store, toOffice(address), JOB);
      expect(outcome).toMatchObject({ compared: "equal", stoppedBy: undefined });
    }
    await next.kill();
    const ids = await isEveryAcknowledgedHeld(join(data, "toeline.sqlite"), senders);
    const written = senders.flatMap((sender) => [...sender.pen.entries.map((entry) => entry.id)]);
    expect(ids.length).toBe(written.length);
    expect(new Set(ids)).toEqual(new Set(written));
  });
});

/** @returns the ids of the log. */
async function isEveryAcknowledgedHeld(file: string, senders: readonly Sender[]): Promise<readonly string[]> {
  const store = unwrap(await openSqliteStore(file));
  const entries = unwrap(await store.readJob(JOB));
  await store.close();
  const ids = entries.map((entry) => entry.id);
  const held = new Set(ids);
  expect(held.size).toBe(ids.length);
  for (const sender of senders)
    expect([...(await sender.acknowledged())].filter((id) => !held.has(id))).toEqual([]);
  for (const entry of entries) expect((await checkEntry(entry, verifier)).ok).toBe(true);
  for (const { stop, waiting, missing, forks } of walkChains(entries).values())
    expect({ stop, waiting, missing, forks }).toEqual({
      stop: undefined,
      waiting: [],
      missing: [],
      forks: [],
    });
  const database = new Database(file);
  expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
  database.close();
  return ids;
}
