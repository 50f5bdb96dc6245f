import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { verifyEvidenceBag } from "#evidence";
import { folderFromFiles, folderFromZip, readJobFolder } from "#formats";
import {
  checkAgainstHead,
  checkHead,
  type Entry,
  leafHash,
  type TreeHead,
  verifyConsistency,
  verifyInclusion,
} from "#records";
import { importFolder, type LoggedJob, writeStatements } from "../support/exchange.ts";
import { JOB, unwrap, verifier } from "../support/records.ts";
import { type Served, serve } from "../support/served.ts";

const example = join(import.meta.dirname, "../../examples/shaft-and-pier");
const AT = "2026-11-02T09:00:00.000Z";
const exampleFiles = new Map(
  readdirSync(example, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .map((file) => [
      file.slice(example.length + 1).replaceAll("\\", "/"),
      new Uint8Array(readFileSync(file)),
    ]),
);

let served: Served;
let logged: LoggedJob;
beforeAll(async () => {
  served = await serve();
  logged = await importFolder(folderFromFiles(exampleFiles));
  await append(logged.entries);
}, 120_000);
afterAll(() => served.close());

const ask = (url: string) => served.app.inject({ url: `/api/1/jobs${url}`, headers: { host: "localhost" } });
const append = async (some: readonly Entry[]) => unwrap(await served.office.store.append(JOB, some, AT));
const head = async (): Promise<TreeHead> => (await ask(`/${JOB}/head`)).json();
const ids = async () => unwrap(await served.office.store.readIds(JOB));

describe("a job of the example", () => {
  test("is listed with what it holds", async () => {
    const { jobs } = (await ask("")).json();
    const design = JSON.parse(readFileSync(join(example, "job.json"), "utf8"));
    expect(jobs).toHaveLength(1);
    expect(jobs[0]).toMatchObject({
      id: JOB,
      name: design.name,
      entries: logged.entries.length,
      conflicts: 0,
      isComplete: true,
    });
    expect(jobs[0].elements).toBeGreaterThan(1);
    expect(jobs[0].runs).toBeGreaterThan(1);
  });

  test("is told in full, and anew when its log has grown", async () => {
    const before = (await ask(`/${JOB}`)).json();
    expect(before.devices).toMatchObject([{ followed: logged.entries.length, missing: [], waiting: 0 }]);
    logged = await writeStatements(logged, [
      { author: "anna", kind: "job", body: { set: { name: "Renamed" } } },
    ]);
    await append(logged.entries.slice(-1));
    expect((await ask(`/${JOB}`)).json()).toMatchObject({ entries: before.entries + 1, name: "Renamed" });
  });

  test("comes back as a job folder that is read without a finding of its own", async () => {
    const answer = await ask(`/${JOB}/folder.zip`);
    expect(answer.headers["content-disposition"]).toBe(`attachment; filename="${JOB}-folder.zip"`);
    const back = await readJobFolder(unwrap(folderFromZip(answer.rawPayload, "folder.zip")));
    const own = await readJobFolder(folderFromFiles(exampleFiles));
    expect(back.job?.elements.map(({ id }) => id)).toEqual(own.job?.elements.map(({ id }) => id));
    expect(back.job?.runs.length).toBe(own.job?.runs.length);
  });

  test("comes as evidence that holds", async () => {
    const report = await verifyEvidenceBag((await ask(`/${JOB}/evidence.zip`)).rawPayload);
    expect(report).toMatchObject({ verdict: "sound" });
  });

  test.each(["", "/head", "/folder.zip", "/evidence.zip", `/proof/inclusion?entry=${"0".repeat(64)}`])(
    "that is not there is not there: %s",
    async (rest) => {
      const answer = await ask(`/no-such-job${rest}`);
      expect([answer.statusCode, answer.json().code]).toEqual([404, "server.not-found"]);
    },
  );
});

describe("the signed head of a job's tree", () => {
  test("fits the log, was signed by the office, and is the same for the same size", async () => {
    const first = await head();
    expect(unwrap(await checkHead(first, verifier)).key).toBe(served.office.signer.publicKey);
    unwrap(await checkAgainstHead(await ids(), first));
    expect(await head()).toEqual(first);
  });

  test("proves that every entry is in the tree, and no other", async () => {
    for (const entry of [(await ids())[0]!, (await ids()).at(-1)!]) {
      const { head, index, proof } = (await ask(`/${JOB}/proof/inclusion?entry=${entry}`)).json();
      expect(await verifyInclusion(await leafHash(entry), index, head.size, proof, head.root)).toBe(true);
    }
    expect((await ask(`/${JOB}/proof/inclusion?entry=${"0".repeat(64)}`)).statusCode).toBe(404);
  });

  test("proves that what was signed before is the beginning of what is signed now", async () => {
    const older = await head();
    logged = await writeStatements(logged, [
      { author: "anna", kind: "job", body: { set: { name: "Again" } } },
    ]);
    await append(logged.entries.slice(-1));
    const { head: newer, proof } = (await ask(`/${JOB}/proof/consistency?from=${older.size}`)).json();
    expect(newer.size).toBe(older.size + 1);
    expect(await verifyConsistency(older, newer, proof)).toBe(true);
    const beyond = await ask(`/${JOB}/proof/consistency?from=${newer.size + 1}`);
    expect([beyond.statusCode, beyond.json().code]).toEqual([400, "server.no-such-size"]);
  });

  test("is refused where the log no longer begins with what was signed", async () => {
    const own = await serve();
    const { store, tables } = own.office;
    unwrap(await store.append(JOB, logged.entries, AT));
    await tables.db
      .insertInto("tree_heads")
      .values({
        job: JOB,
        size: 3,
        root: "0".repeat(64),
        at: AT,
        key: "0".repeat(64),
        signature: "0".repeat(128),
      })
      .execute();
    const answer = await own.app.inject({ url: `/api/1/jobs/${JOB}/head`, headers: { host: "localhost" } });
    expect([answer.statusCode, answer.json().code]).toEqual([500, "server.log-changed"]);
    await own.close();
  });
});
