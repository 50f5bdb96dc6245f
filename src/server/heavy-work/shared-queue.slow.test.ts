import { type ChildProcess, spawn } from "node:child_process";
import { cpSync } from "node:fs";
import { resolve } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";
import { folderFromFiles } from "#formats";
import { namedScenario, writeJobFolder } from "#simulator";
import { keepBlobs, openPostgresStore } from "#store";
import { importFolder } from "../../../test/support/exchange.ts";
import { POSTGRES_HOOK_MS, type PostgresServer, startPostgres } from "../../../test/support/postgres.ts";
import { JOB, Pen, unwrap } from "../../../test/support/records.ts";
import { openOfficeTables } from "../tables/open-office-tables.ts";
import { openWorkQueue } from "./open-work-queue.ts";
import type { WorkRequest } from "./work-queue.ts";

const AT = "2026-03-02T09:00:00.000Z";
const PIECES = 200;
const root = resolve(import.meta.dirname, "../../..");
const folder = resolve(root, "dist/work-test");

let server: PostgresServer;
const children: ChildProcess[] = [];

beforeAll(async () => {
  server = await startPostgres();
  await build({
    entryPoints: {
      server: resolve(root, "test/support/work-server.ts"),
      "toeline-worker": resolve(root, "src/server/heavy-work/work-thread.ts"),
    },
    outdir: folder,
    outExtension: { ".js": ".mjs" },
    absWorkingDir: root,
    bundle: true,
    platform: "node",
    format: "esm",
    external: [
      "better-sqlite3",
      "piscina",
      "graphile-worker",
      "pg-native",
      "@resvg/resvg-js",
      "@myriaddreamin/typst-ts-node-compiler",
    ],
    banner: {
      js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
    },
    logLevel: "error",
  });
  cpSync(resolve(root, "src/report/assets"), resolve(folder, "assets"), { recursive: true });
}, POSTGRES_HOOK_MS);
afterAll(async () => {
  for (const child of children) child.kill("SIGKILL");
  await server.stop();
}, POSTGRES_HOOK_MS);

/** A server process; tells when it is ready, takes requests, and says what it took. */
async function startServer(database: string, workers: number) {
  const child = spawn(process.execPath, [resolve(folder, "server.mjs"), database, String(workers)], {
    cwd: root,
    stdio: ["pipe", "pipe", "pipe"],
  });
  children.push(child);
  let output = "";
  let complaint = "";
  child.stdout.on("data", (chunk) => {
    output += chunk;
  });
  child.stderr.on("data", (chunk) => {
    complaint += chunk;
  });
  while (!output.includes("ready")) {
    if (child.exitCode !== null) throw new Error(complaint);
    await wait(20);
  }
  return {
    child,
    ask: (request: WorkRequest) => child.stdin.write(`${JSON.stringify(request)}\n`),
    taken: () => output.split("\n").filter((line) => line.startsWith("taken ")),
    complaint: () => complaint,
  };
}

const requestOf = (piece: number): WorkRequest => ({
  task: "check-log",
  job: JOB,
  input: {},
  // each piece goes by another part of the log, so that its result is its own
  entries: 1 + piece,
  requestedBy: `person ${piece % 5}`,
  key: `piece ${piece}`,
});

/** Each report has its own number, so that its bytes are its own. */
const reportOf = (piece: number, entries: number): WorkRequest => ({
  ...requestOf(piece),
  task: "report",
  input: { format: "pdf", number: `R-${piece}` },
  entries,
});

/** An office with the log of a small simulated job. @returns its address and how many entries it has. */
async function officeWithJob(name: string) {
  const database = await server.createDatabase(name);
  const store = unwrap(await openPostgresStore(database));
  const scenario = unwrap(namedScenario("plain", { elements: 1, stations: 3 }, 1));
  const log = await importFolder(folderFromFiles(writeJobFolder(scenario, 1).files));
  unwrap(await keepBlobs(store, log.blobs as ReadonlyMap<string, Uint8Array<ArrayBuffer>>));
  unwrap(await store.append(JOB, log.entries, AT));
  const tables = unwrap(await openOfficeTables({ database, dataFolder: "" }));
  return { database, tables, store, entries: log.entries.length };
}

/** An office whose job has so many entries. */
async function office(name: string, entries: number) {
  const database = await server.createDatabase(name);
  const store = unwrap(await openPostgresStore(database));
  const pen = await Pen.start(1);
  for (let i = 1; i < entries; i++) await pen.set("P1", "diameter_m", i);
  unwrap(await store.append(JOB, pen.entries, AT));
  await store.close();
  const tables = unwrap(await openOfficeTables({ database, dataFolder: "" }));
  return { database, tables };
}

/** Kills a worker while it has a piece of work in hand and the other one has, too. @returns the rows at that moment. */
async function killAtWork<R extends { readonly state: string; readonly worker: string | null }>(
  worker: ChildProcess,
  rows: () => Promise<R[]>,
): Promise<R[]> {
  for (;;) {
    // what a stopped process has begun stays begun
    worker.kill("SIGSTOP");
    await wait(50);
    const all = await rows();
    const workers = new Set(all.flatMap((row) => (row.worker === null ? [] : [row.worker])));
    if (all.filter((row) => row.state === "finished").length >= PIECES / 2 && workers.size === 2) {
      worker.kill("SIGKILL");
      return all;
    }
    worker.kill("SIGCONT");
    await wait(20);
  }
}

test(`two servers, two workers, one of them killed: ${PIECES} reports, each made once`, async () => {
  const { database, tables, store, entries } = await officeWithJob("work");
  const [first, second, third] = await Promise.all([
    startServer(database, 0),
    startServer(database, 1),
    startServer(database, 1),
  ]);
  // every third one is asked for from both servers at once
  for (let piece = 0; piece < PIECES; piece++) {
    (piece % 2 === 0 ? first : second).ask(reportOf(piece, entries));
    if (piece % 3 === 0) (piece % 2 === 0 ? second : first).ask(reportOf(piece, entries));
  }
  const rows = () => tables.db.selectFrom("work").selectAll().execute();
  const killed = await killAtWork(third.child, rows);
  expect(killed.some((row) => row.state === "waiting")).toBe(true);
  for (;;) {
    const all = await rows();
    if (all.length === PIECES && all.every((row) => row.state === "finished")) break;
    expect(all.filter((row) => row.state === "failed")).toEqual([]);
    await wait(50);
  }
  const all = await rows();
  expect(new Set(all.map((row) => row.key)).size).toBe(PIECES);
  expect(all.some((row) => row.attempts === 2)).toBe(true);
  expect(all.every((row) => row.attempts <= 2)).toBe(true);
  // asked for twice, the same piece was named
  const ids = [...first.taken(), ...second.taken()];
  expect(new Set(ids).size).toBe(PIECES);
  expect(ids.length).toBe(PIECES + Math.ceil(PIECES / 3));
  const blobs = new Set<string>();
  for (const row of all) {
    const { blob, bytes, type } = JSON.parse(row.result!) as { blob: string; bytes: number; type: string };
    const pdf = unwrap(await store.readBlob(blob));
    expect({ bytes, type }).toEqual({ bytes: pdf?.length, type: "application/pdf" });
    expect(new TextDecoder().decode(pdf?.slice(0, 5))).toBe("%PDF-");
    blobs.add(blob);
  }
  expect(blobs.size).toBe(PIECES);
  await store.close();
  const { rows: left } = await tables.db
    .selectFrom("graphile_worker.jobs" as never)
    .selectAll()
    .execute()
    .then((jobs) => ({ rows: jobs }));
  expect(left).toEqual([]);
  expect(first.complaint() + second.complaint()).toBe("");
  await tables.db.destroy();
});

test("a server that stops gives back what it had begun; cancelled work is not done", async () => {
  const { database, tables } = await office("stopping", 60);
  const open = async (workers: number) =>
    unwrap(await openWorkQueue({ database, dataFolder: "", workers }, tables, () => new Date(AT)));
  const [waiting, working] = await Promise.all([open(0), open(1)]);
  const works = [];
  for (let piece = 0; piece < 20; piece++) works.push(unwrap(await waiting.request(requestOf(piece))));
  expect(unwrap(await waiting.cancel(works[19]!.id))?.progress.state).toBe("cancelled");
  while (unwrap(await waiting.counts()).finished < 2) await wait(10);
  await working.close();
  const { running, cancelled, failed } = unwrap(await waiting.counts());
  expect({ running, cancelled, failed }).toEqual({ running: 0, cancelled: 1, failed: 0 });
  const again = await open(2);
  while (unwrap(await waiting.counts()).finished < 19) await wait(20);
  expect(unwrap(await waiting.find(works[19]!.id))?.progress.state).toBe("cancelled");
  await again.close();
  await waiting.close();
  await tables.db.destroy();
});
