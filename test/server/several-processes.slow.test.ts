import { afterAll, beforeAll, expect, test } from "vitest";
import type { TreeHead } from "#records";
import { EMPTY_LOG, writeStatements } from "../support/exchange.ts";
import { POSTGRES_HOOK_MS, type PostgresServer, startPostgres } from "../support/postgres.ts";
import { JOB, unwrap } from "../support/records.ts";
import { type Served, serve } from "../support/served.ts";

// about 10 s: two servers of one office on one PostgreSQL database
const AT = "2026-11-02T09:00:00.000Z";
let postgres: PostgresServer;
let first: Served;
let second: Served;
beforeAll(async () => {
  postgres = await startPostgres();
  const database = await postgres.createDatabase("office");
  // at once, so that both find an empty database
  [first, second] = await Promise.all([serve({ database }), serve({ database })]);
}, POSTGRES_HOOK_MS);
afterAll(async () => {
  await first.close();
  await second.close();
  await postgres.stop();
}, POSTGRES_HOOK_MS);

const headFrom = async ({ app }: Served): Promise<TreeHead> =>
  (await app.inject({ url: `/api/1/jobs/${JOB}/head`, headers: { host: "localhost" } })).json();

test("both are the same office", () => {
  const identity = ({ office }: Served) => [office.id, office.era, office.signer.publicKey];
  expect(identity(second)).toEqual(identity(first));
});

test("what one has taken the other tells of, and both give the same signed head", async () => {
  const heard: string[] = [];
  const grown = new Promise<void>((resolve) => {
    second.office.onGrowth((job) => {
      heard.push(job);
      resolve();
    });
  });
  const { entries } = await writeStatements(EMPTY_LOG, [
    { author: "anna", kind: "job", body: { set: { name: "Two servers" } } },
  ]);
  unwrap(await first.office.store.append(JOB, entries, AT));
  first.office.announce(JOB);
  await grown;
  expect(heard).toEqual([JOB]);
  const [one, other] = await Promise.all([headFrom(first), headFrom(second)]);
  expect(one.size).toBe(entries.length);
  expect(other).toEqual(one);
});

test("one that stops leaves the other at work", async () => {
  await first.app.close();
  const ready = await second.app.inject({ url: "/api/1/health/ready", headers: { host: "localhost" } });
  expect(ready.json()).toEqual({ status: "ok" });
});
