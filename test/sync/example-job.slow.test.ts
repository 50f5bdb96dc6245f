import { resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { reduceJob } from "#core";
import { folderFromState, statementsFromJobFolder } from "#exchange";
import { type ReadJob, readJobFolder, writeResultsJson } from "#formats";
import { canonicalJson, type Entry, foldJob, type Statement } from "#records";
import { MAX_BLOB_PART_BYTES, openMemoryStore, type Store } from "#store";
import { synchronize } from "#sync";
import { sentenceOf } from "#text";
import { openJob } from "../../src/cli/files/open-job.ts";
import { writeStatements } from "../support/exchange.ts";
import { POSTGRES_HOOK_MS, type PostgresServer, startPostgres } from "../support/postgres.ts";
import { JOB, unwrap } from "../support/records.ts";
import { folderSettings, startOffice, temporaryFolder } from "../support/sync-office.ts";

const AT = "2026-03-02T09:00:00.000Z";
const example = unwrap(openJob(resolve(import.meta.dirname, "../../examples/shaft-and-pier")));

const resultsOf = (read: ReadJob): string =>
  writeResultsJson(read.job!, read, reduceJob(read.job!), { version: "0", sentence: sentenceOf });
const stateOf = (entries: readonly Entry[]) => unwrap(canonicalJson(foldJob(entries)));
const entriesIn = async (store: Store) => unwrap(await store.readJob(JOB));

/** A device: its number, its store, and how it writes what somebody says there. */
async function writeOn(device: number, store: Store, statements: readonly Statement[]): Promise<void> {
  const held = await entriesIn(store);
  const { entries } = await writeStatements({ entries: held, blobs: new Map() }, statements, device);
  for (let from = held.length; from < entries.length; from += 200)
    unwrap(await store.append(JOB, entries.slice(from, from + 200), AT));
}

async function keepBlob(store: Store, hash: string, bytes: Uint8Array): Promise<void> {
  for (let offset = 0; offset < bytes.length; offset += MAX_BLOB_PART_BYTES) {
    const part = Uint8Array.from(bytes.subarray(offset, offset + MAX_BLOB_PART_BYTES));
    unwrap(await store.putBlobPart({ hash, size: bytes.length, offset, bytes: part }));
  }
}

// about half a minute on two idle cores, most of it the computation of the results
describe("the example job, written on two devices and brought together by an office", () => {
  let postgres: PostgresServer;
  const { folder, remove } = temporaryFolder("example-sync");

  beforeAll(async () => {
    postgres = await startPostgres();
  }, POSTGRES_HOOK_MS);
  afterAll(async () => {
    await postgres.stop();
    remove();
  }, POSTGRES_HOOK_MS);

  test("has the same state, byte for byte, in SQLite, in PostgreSQL and on both devices, and the results of the folder", async () => {
    const said = unwrap(await statementsFromJobFolder(example, { author: "anna", state: foldJob([]) }));
    const half = Math.ceil(said.statements.length / 2);
    const states: string[] = [];
    const folders: ReadJob[] = [];
    for (const database of [undefined, await postgres.createDatabase("example")]) {
      const office = await startOffice(
        folderSettings(`${folder}/${database === undefined ? "a" : "b"}`, { database }),
      );
      const [anna, ben] = [await office.member("anna", "engineer"), await office.member("ben", "engineer")];
      const [one, two] = [openMemoryStore(), openMemoryStore()];
      for (const [hash, bytes] of said.blobs) await keepBlob(one, hash, bytes);
      await writeOn(1, one, said.statements.slice(0, half));
      const sync = async (store: Store, member: typeof anna) => {
        const outcome = await synchronize(store, office.client(member), JOB, { files: "both" });
        expect(outcome).toMatchObject({ compared: "equal", stoppedBy: undefined, findings: [] });
        expect([...outcome.refused]).toEqual([]);
      };
      await sync(one, anna);
      await sync(two, ben);
      // each goes on by itself, and then they meet
      await writeOn(2, two, said.statements.slice(half));
      await writeOn(1, one, [{ author: "anna", kind: "note", body: { about: "job", text: "meanwhile" } }]);
      await sync(two, ben);
      await sync(one, anna);
      await sync(two, ben);
      for (const store of [one, two, office.office.store]) states.push(stateOf(await entriesIn(store)));
      const entries = await entriesIn(office.office.store);
      const given = await folderFromState(foldJob(entries), entries, async (blob) =>
        unwrap(await office.office.store.readBlob(blob)),
      );
      folders.push(await readJobFolder(given.folder));
      await office.stop();
    }
    expect(new Set(states).size).toBe(1);
    // the computation takes most of the time: equal jobs have equal results
    expect(folders[1]!.job).toEqual(folders[0]!.job);
    expect(resultsOf(folders[0]!)).toBe(resultsOf(await readJobFolder(example)));
  });
});
