import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { createRandom } from "#simulator";
import { openSqliteStore } from "#store";
import { unwrap } from "../support/records.ts";
import { buildToeline, example, repository, temporaryFolder, toeline } from "./run-toeline.ts";

const SEED = 20260302;
const ROUNDS = 6;
const JOB = "shaft";

const outer = temporaryFolder();
afterAll(outer.remove);
const at = (name: string) => join(outer.path, name);

beforeAll(() => {
  buildToeline();
  expect(toeline(["import", example, "--data", at("office"), "--job", JOB])).toMatchObject({ code: 0 });
  expect(toeline(["backup", "--data", at("office"), "--out", at("one.backup")])).toMatchObject({ code: 0 });
}, 120_000);

const idsAt = async (folder: string) => {
  const store = unwrap(await openSqliteStore(join(folder, "toeline.sqlite")));
  const ids = unwrap(await store.readIds(JOB));
  await store.close();
  return ids;
};

test(`a restore that is killed is told as unfinished, and done by the same command, seed ${SEED}`, async () => {
  const random = createRandom(SEED);
  const program = join(repository, "dist/toeline.mjs");
  const ids = await idsAt(at("office"));
  let unfinished = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const folder = at(`killed-${round}`);
    const args = ["restore", at("one.backup"), "--data", folder];
    const child = spawn(process.execPath, [program, ...args], { stdio: "ignore" });
    const ended = new Promise((done) => child.on("close", done));
    // most rounds from the moment on at which it begins to write
    const mark = join(folder, "restore-unfinished");
    for (let i = 0; round > 0 && i < 10_000 && !existsSync(mark) && child.exitCode === null; i++)
      await wait(1);
    await wait(60 * random.uniform());
    child.kill("SIGKILL");
    await ended;
    if (existsSync(join(folder, "restore-unfinished"))) {
      unfinished++;
      const served = toeline(["serve", "--data", folder]);
      expect(served).toMatchObject({ code: 2, stdout: "" });
      expect(served.stderr).toContain("was not finished");
    }
    const isDone =
      existsSync(join(folder, "toeline.sqlite")) && !existsSync(join(folder, "restore-unfinished"));
    if (!isDone) expect(toeline(args)).toMatchObject({ code: 0 });
    expect(await idsAt(folder)).toEqual(ids);
  }
  expect(unfinished).toBeGreaterThan(0);
}, 240_000);
