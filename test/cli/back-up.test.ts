import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openSqliteStore } from "#store";
import { openWorkQueue } from "../../src/server/heavy-work/open-work-queue.ts";
import { openOfficeTables } from "../../src/server/tables/open-office-tables.ts";
import { unwrap } from "../support/records.ts";
import { buildToeline, example, temporaryFolder, toeline } from "./run-toeline.ts";

const JOB = "shaft";
const ELEMENT = "S01";

beforeAll(buildToeline, 120_000);
const outer = temporaryFolder();
afterAll(outer.remove);
const at = (name: string) => join(outer.path, name);

beforeAll(() => {
  expect(toeline(["import", example, "--data", at("office"), "--job", JOB])).toMatchObject({ code: 0 });
  expect(toeline(["backup", "--data", at("office"), "--out", at("one.backup")])).toMatchObject({ code: 0 });
});

const idsAt = async (folder: string) => {
  const store = unwrap(await openSqliteStore(join(folder, "toeline.sqlite")));
  const ids = unwrap(await store.readIds(JOB));
  await store.close();
  return ids;
};

test("an office is written to a file, and comes back elsewhere with the same entries", async () => {
  const restored = toeline(["restore", at("one.backup"), "--data", at("copy")]);
  expect(restored.stderr).toBe("");
  expect(restored.stdout).toMatch(/^1 job with \d+ entries restored as of /);
  expect(await idsAt(at("copy"))).toEqual(await idsAt(at("office")));
});

test("what cannot be done is said, and changes nothing", async () => {
  const again = toeline(["restore", at("one.backup"), "--data", at("office")]);
  expect(again).toMatchObject({ code: 2, stdout: "" });
  expect(again.stderr).toContain("There are records at this place already");
  expect(toeline(["backup", "--data", at("office"), "--out", at("one.backup")]).stderr).toContain(
    "is there already",
  );
  expect(toeline(["backup", "--data", at("nowhere"), "--out", at("two.backup")]).stderr).toContain(
    "no records",
  );
  expect(toeline(["restore", at("one.backup")]).stderr).toContain("--data or --database");
  expect(toeline(["restore", example, "--data", at("new")])).toMatchObject({ code: 2 });
});

test("results worked out in a thread are those of the command line", async () => {
  const store = unwrap(await openSqliteStore(join(at("office"), "toeline.sqlite")));
  const tables = unwrap(await openOfficeTables({ dataFolder: at("office"), database: undefined }));
  const settings = { dataFolder: at("office"), database: undefined, workers: 1 };
  const queue = unwrap(await openWorkQueue(settings, tables, () => new Date()));
  const entries = unwrap(await store.size(JOB));
  const request = {
    task: "results",
    job: JOB,
    input: { only: [ELEMENT] },
    entries,
    requestedBy: "anna",
    key: "results",
  };
  const { id } = unwrap(await queue.request(request));
  let progress = unwrap(await queue.find(id))!.progress;
  while (progress.state === "waiting" || progress.state === "running") {
    await wait(100);
    progress = unwrap(await queue.find(id))!.progress;
  }
  if (progress.state !== "finished") throw new Error(JSON.stringify(progress));
  const bytes = unwrap(await store.readBlob(String(progress.result["blob"])))!;
  const made = JSON.parse(new TextDecoder().decode(bytes)) as Record<string, unknown>;
  const { stdout } = toeline(["reduce", example, "--json", "--only", ELEMENT]);
  // the program's version is put in when it is bundled
  const withoutVersion = ({ toeline: _, ...rest }: Record<string, unknown>) => rest;
  expect(withoutVersion(made)).toEqual(withoutVersion(JSON.parse(stdout) as Record<string, unknown>));
  await queue.close();
  await tables.db.destroy();
  await store.close();
});
