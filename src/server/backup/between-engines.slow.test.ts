import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { canonicalJson, foldJob, setDigest, sha256Hex } from "#records";
import { keepBlobs, openPostgresStore, openSqliteStore, type Store } from "#store";
import { POSTGRES_HOOK_MS, type PostgresServer, startPostgres } from "../../../test/support/postgres.ts";
import { Pen, unwrap } from "../../../test/support/records.ts";
import { openOfficeTables } from "../tables/open-office-tables.ts";
import { backUp, move, restore } from "./back-up.ts";
import { filesIn, type OfficePlace } from "./place.ts";

const AT = "2026-03-02T09:00:00.000Z";
const NOW = new Date(AT);
const JOBS = ["job-1", "job-2"];
const QUIET = { onWritten: () => {}, onChecked: () => {} };
const BYTES = new Uint8Array(600_000).map((_, i) => i % 251);

let server: PostgresServer;
const root = mkdtempSync(join(tmpdir(), "toeline-between-engines-"));
let count = 0;
beforeAll(async () => {
  server = await startPostgres();
}, POSTGRES_HOOK_MS);
afterAll(async () => {
  await server.stop();
  rmSync(root, { recursive: true, force: true });
}, POSTGRES_HOOK_MS);

const emptyFolder = () => ({ dataFolder: mkdtempSync(join(root, "place-")) });
const emptyDatabase = async () => ({ database: await server.createDatabase(`between_${++count}`) });
const openStore = async (place: OfficePlace): Promise<Store> =>
  unwrap(
    "database" in place
      ? await openPostgresStore(place.database)
      : await openSqliteStore(filesIn(place.dataFolder).store),
  );
const openTables = async (place: OfficePlace) =>
  unwrap(
    await openOfficeTables(
      "database" in place
        ? { database: place.database, dataFolder: "" }
        : { database: undefined, dataFolder: place.dataFolder },
    ),
  );

/** An office with two jobs, a file of several parts, something kept aside in each job and two accounts. */
async function fill(place: OfficePlace): Promise<void> {
  const store = await openStore(place);
  for (const [i, job] of JOBS.entries()) {
    const pen = await Pen.start(i + 1, job);
    for (let n = 0; n < 20; n++) await pen.set(`P${n % 7} ü`, "diameter_m", 0.1 + n / 3);
    unwrap(await store.append(job, [...pen.entries].reverse(), AT));
    const issue = { code: "records.id-mismatch", severity: "error", place: {}, values: {} } as const;
    unwrap(await store.keepAside(job, [{ index: 0, raw: { a: `ü\u2028 ${i}` }, issue }], AT));
  }
  unwrap(await keepBlobs(store, new Map([[await sha256Hex(BYTES), BYTES]])));
  await store.close();
  const { db } = await openTables(place);
  for (const [i, id] of ["anna", "béla"].entries()) {
    const rest = { totp_step: 0, totp_secret: null, disabled: i, password: "$scrypt$" };
    const account = { id, login: id, name: `Name ${id}`, is_admin: 1 - i, created_at: 1_772_445_600_000 + i };
    await db
      .insertInto("accounts")
      .values({ ...account, ...rest })
      .execute();
  }
  await db.destroy();
}

/** All that must be the same wherever an office lies. */
async function contentsOf(place: OfficePlace) {
  const store = await openStore(place);
  const jobs = await Promise.all(
    unwrap(await store.jobs()).map(async (job) => {
      const entries = unwrap(await store.readJob(job));
      const state = unwrap(canonicalJson(foldJob(entries) as never));
      const digest = await setDigest(unwrap(await store.readIds(job)));
      return { job, entries, state, digest, aside: unwrap(await store.readKeptAside(job)) };
    }),
  );
  const blob = unwrap(await store.readBlob(await sha256Hex(BYTES)));
  await store.close();
  const { db } = await openTables(place);
  const accounts = await db.selectFrom("accounts").selectAll().orderBy("id").execute();
  await db.destroy();
  // the order of jobs is the database's own
  return { jobs: jobs.sort((a, b) => (a.job < b.job ? -1 : 1)), blob, accounts };
}

/** Every file of a folder with its hash. */
const filesOf = async (folder: string) =>
  Promise.all(
    readdirSync(folder)
      .sort()
      .map(async (name) => [name, await sha256Hex(new Uint8Array(readFileSync(join(folder, name))))]),
  );

test("a data folder moves into PostgreSQL and stays as it is; the database is full then", async () => {
  const place = emptyFolder();
  await fill(place);
  const before = await contentsOf(place);
  expect(before.jobs.map(({ job, entries, aside }) => [job, entries.length, aside.length])).toEqual([
    ["job-1", 21, 1],
    ["job-2", 21, 1],
  ]);
  expect(before.accounts.map(({ login }) => login)).toEqual(["anna", "béla"]);
  expect(before.blob).toEqual(BYTES);
  const files = await filesOf(place.dataFolder);
  const database = await emptyDatabase();
  const { tally } = unwrap(await move(place, database, NOW, QUIET));
  expect(Object.keys(tally.jobs).sort()).toEqual(JOBS);
  expect(await filesOf(place.dataFolder)).toEqual(files);
  expect(await contentsOf(database)).toEqual(before);
  const again = await move(place, database, NOW, QUIET);
  expect(again.ok ? "moved" : again.error.code).toBe("backup.not-empty");
  expect(await contentsOf(database)).toEqual(before);
  expect(await contentsOf(place)).toEqual(before);
});

test("a back-up of either engine is restored into the other one", async () => {
  const folder = emptyFolder();
  await fill(folder);
  const before = await contentsOf(folder);
  const fromFolder = join(root, "folder.toeline-backup");
  unwrap(await backUp(folder, fromFolder, NOW, () => {}));
  const database = await emptyDatabase();
  unwrap(await restore(fromFolder, database, NOW, QUIET));
  expect(await contentsOf(database)).toEqual(before);
  const fromDatabase = join(root, "database.toeline-backup");
  unwrap(await backUp(database, fromDatabase, NOW, () => {}));
  const back = emptyFolder();
  unwrap(await restore(fromDatabase, back, NOW, QUIET));
  expect(await contentsOf(back)).toEqual(before);
});
