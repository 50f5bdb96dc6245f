import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { appendStatements } from "#exchange";
import {
  canonicalJson,
  createEntry,
  type Entry,
  type JsonObject,
  positionAfter,
  type Statement,
  signerFromSeed,
} from "#records";
import { createRandom } from "#simulator";
import { openSqliteStore } from "#store";

// Appending to the store in a SQLite file, against bare inserts of the same texts with better-sqlite3 into a table of the same
// columns and indexes, with the same settings and as many transactions. Only the ratio counts, since milliseconds depend on the
// machine; rounds alternate. Making the entries (hash, signature) is told apart, because it is not the store's work; an import is both.

const ROUNDS = 3;
const SEED = 20250101;
const JOB = "bench";
const AT = "2026-03-02T09:00:00.000Z";
const ROWS_PER_ENTRY = 1000;
const READINGS = 1_000_000;
const SMALL_ENTRIES = 100_000;
const PER_APPEND = 1000;
const folder = mkdtempSync(join(tmpdir(), "toeline-bench-"));

interface Times {
  readonly wallMs: number;
  readonly cpuMs: number;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

async function measure(work: () => Promise<void>): Promise<Times> {
  const [cpu, wall] = [process.cpuUsage(), performance.now()];
  await work();
  const { user, system } = process.cpuUsage(cpu);
  return { wallMs: performance.now() - wall, cpuMs: (user + system) / 1000 };
}

/** The chain of one device: its announcement, then one entry per body. */
async function chainOf(bodies: readonly JsonObject[]): Promise<readonly Entry[]> {
  const signer = await signerFromSeed("1".padStart(64, "0"));
  if (!signer.ok) throw new Error("no signatures here");
  const device = signer.value.publicKey;
  let position = { job: JOB, device, last: undefined, declared: {}, held: {} } as Parameters<
    typeof positionAfter
  >[0];
  const entries: Entry[] = [];
  const statements = [
    { kind: "device", body: { public_key: device, name: "Bench" } },
    ...bodies.map((body) => ({ kind: "readings", body })),
  ];
  for (const [i, { kind, body }] of statements.entries()) {
    const clock = { wall: AT, monotonic_ms: i, session: 1 };
    const entry = await createEntry(position, { author: "bench", kind, body }, clock, signer.value);
    if (!entry.ok) throw new Error(JSON.stringify(entry.error));
    entries.push(entry.value);
    position = positionAfter(position, entry.value);
  }
  return entries;
}

/** Readings as an instrument gives them: four decimals. */
function readings(rows: number, first: number, normal: () => number): JsonObject {
  const column = (value: (i: number) => number) =>
    Array.from({ length: rows }, (_, i) => Number(value(i).toFixed(4)));
  return {
    run: "P1-1",
    columns: {
      time_s: column((i) => 2 * (first + i)),
      depth_m: column((i) => 0.5 * (((first + i) % 100) + 1)),
      tilt_x_deg: column(() => 0.3 * normal()),
      tilt_y_deg: column(() => 0.3 * normal()),
      turn_deg: column(() => 5 * normal()),
    },
  };
}

const batchesOf = (entries: readonly Entry[], size: number): readonly (readonly Entry[])[] =>
  Array.from({ length: Math.ceil(entries.length / size) }, (_, i) => entries.slice(i * size, (i + 1) * size));

async function throughStore(file: string, batches: readonly (readonly Entry[])[]): Promise<Times> {
  const opened = await openSqliteStore(file);
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const taken = await measure(async () => {
    for (const batch of batches) {
      const appended = await opened.value.append(JOB, batch, AT);
      if (!appended.ok || appended.value.added !== batch.length) throw new Error("not everything was taken");
    }
  });
  await opened.value.close();
  return taken;
}

async function bare(file: string, batches: readonly (readonly Entry[])[]): Promise<Times> {
  const database = new Database(file);
  database.pragma("journal_mode = WAL");
  database.pragma("synchronous = FULL");
  database.exec(`
    create table entries (id text primary key not null, job text not null, device text not null,
      sequence integer not null, arrival integer not null, received_at text not null, text text not null,
      unique (job, arrival)) strict;
    create index chain on entries (job, device, sequence, id);`);
  const rows = batches.map((batch) =>
    batch.map((entry) => {
      const text = canonicalJson(entry);
      return [entry.id, JOB, entry.device, entry.sequence, entry.sequence, AT, text.ok ? text.value : ""];
    }),
  );
  const insert = database.prepare("insert into entries values (?, ?, ?, ?, ?, ?, ?)");
  const all = database.transaction((batch: (typeof rows)[number]) => {
    for (const row of batch) insert.run(...row);
  });
  const taken = await measure(async () => {
    for (const batch of rows) all(batch);
  });
  database.close();
  return taken;
}

/** From statements to rows that are safe: checked, hashed, signed, appended in batches, as an import does it. */
async function imported(file: string, bodies: readonly JsonObject[], perAppend: number): Promise<Times> {
  const opened = await openSqliteStore(file);
  const signer = await signerFromSeed("1".padStart(64, "0"));
  if (!opened.ok || !signer.ok) throw new Error("no store or no signatures here");
  const { publicKey: device } = signer.value;
  const position = { job: JOB, device, last: undefined, declared: {}, held: {} };
  const pen = { position, signer: signer.value, clock: () => ({ wall: AT, monotonic_ms: 0, session: 1 }) };
  const statements: Statement[] = [
    { author: "bench", kind: "device", body: { public_key: device, name: "Bench" } },
    ...bodies.map((body) => ({ author: "bench", kind: "readings", body })),
  ];
  const taken = await measure(async () => {
    const written = await appendStatements(
      statements,
      pen,
      async (entries) => {
        const appended = await opened.value.append(JOB, entries, AT);
        return appended.ok ? appended : { ok: false, error: [appended.error] };
      },
      perAppend,
    );
    if (!written.ok || written.value.entries !== statements.length)
      throw new Error("not everything was taken");
  });
  await opened.value.close();
  return taken;
}

async function compare(title: string, bodies: readonly JsonObject[], perAppend: number, counted: number) {
  let entries: readonly Entry[] = [];
  const made = await measure(async () => {
    entries = await chainOf(bodies);
  });
  const batches = batchesOf(entries, perAppend);
  const ours: Times[] = [];
  const theirs: Times[] = [];
  const whole: Times[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    ours.push(await throughStore(join(folder, `${title}-${round}-store.db`), batches));
    whole.push(await imported(join(folder, `${title}-${round}-import.db`), bodies, perAppend));
    theirs.push(await bare(join(folder, `${title}-${round}-bare.db`), batches));
  }
  const [store, insert, all] = [ours, theirs, whole].map((times) => median(times.map((one) => one.wallMs)));
  const ratiosOf = (times: readonly Times[]) =>
    times.map((one, i) => one.wallMs / (theirs[i]?.wallMs ?? Number.NaN));
  const each = (ms: number) => ((1000 * ms) / counted).toFixed(2);
  console.log(`${title}: ${entries.length} entries, ${perAppend} per append, seed ${SEED}, ${ROUNDS} rounds`);
  console.log(`  making   ${made.wallMs.toFixed(0)} ms, ${each(made.wallMs)} microseconds each`);
  console.log(`  store    ${store?.toFixed(0)} ms, ${each(store ?? Number.NaN)} microseconds each`);
  console.log(`  bare     ${insert?.toFixed(0)} ms, ${each(insert ?? Number.NaN)} microseconds each`);
  console.log(`  import   ${all?.toFixed(0)} ms, ${each(all ?? Number.NaN)} microseconds each`);
  for (const [name, times] of [
    ["store", ours],
    ["import", whole],
  ] as const) {
    const ratios = ratiosOf(times);
    const rounds = ratios.map((one) => one.toFixed(2)).join(", ");
    console.log(`  ${name} / bare  ${median(ratios).toFixed(2)} (rounds: ${rounds})`);
  }
}

const random = createRandom(SEED);
const packed = Array.from({ length: READINGS / ROWS_PER_ENTRY }, (_, i) =>
  readings(ROWS_PER_ENTRY, i * ROWS_PER_ENTRY, random.normal),
);
await compare("1,000,000 readings in columns", packed, 200, READINGS);
const small = Array.from({ length: SMALL_ENTRIES }, (_, i) => readings(1, i, random.normal));
await compare("100,000 small entries", small, PER_APPEND, SMALL_ENTRIES);
rmSync(folder, { recursive: true });
