import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import Database from "better-sqlite3";
import { afterAll, describe, expect, test } from "vitest";
import { checkEntry, isHex32, walkChains } from "#records";
import { createRandom } from "#simulator";
import { JOB, unwrap, verifier } from "../../../test/support/records.ts";
import { openSqliteStore } from "./open-sqlite-store.ts";

const SEED = 20260302;
const ROUNDS = 20;
const WRITERS = 2;
const root = resolve(import.meta.dirname, "../../..");
const program = join(root, "test/support/append-until-killed.ts");
const folder = mkdtempSync(join(tmpdir(), "toeline-killed-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Starts a writer, kills it some time after its first acknowledgement, and gives the ids it was told are safe. */
async function writeAndDie(file: string, device: number, livesMs: number): Promise<readonly string[]> {
  const writer = spawn(process.execPath, ["--import", "tsx", program, file, String(device)], {
    cwd: root,
    stdio: ["ignore", "pipe", "pipe"],
  });
  let output = "";
  let complaint = "";
  writer.stderr.on("data", (chunk) => {
    complaint += chunk;
  });
  const began = new Promise<void>((started) => {
    writer.stdout.on("data", (chunk) => {
      output += chunk;
      started();
    });
  });
  const ended = new Promise<NodeJS.Signals | null>((done) => {
    writer.on("close", (_code, signal) => done(signal));
  });
  await Promise.race([began, ended]);
  await wait(livesMs);
  writer.kill("SIGKILL");
  expect(await ended, complaint).toBe("SIGKILL");
  // the last line may have been cut
  return output.split("\n").filter(isHex32);
}

describe(`programs killed while they write into one SQLite file, ${ROUNDS} rounds, seed ${SEED}`, () => {
  test("every acknowledged entry is there once, sound, in a chain without gaps", async () => {
    const file = join(folder, "killed.db");
    const random = createRandom(SEED);
    const acknowledged: string[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const writers = Array.from({ length: WRITERS }, (_, i) =>
        writeAndDie(file, 1 + round * WRITERS + i, 200 * random.uniform()),
      );
      const told = await Promise.all(writers);
      for (const ids of told) expect(ids.length, `round ${round}`).toBeGreaterThan(0);
      acknowledged.push(...told.flat());
    }
    const store = unwrap(await openSqliteStore(file));
    const entries = unwrap(await store.readJob(JOB));
    const ids = entries.map((entry) => entry.id);
    const held = new Set(ids);
    expect(held.size).toBe(ids.length);
    expect(acknowledged.filter((id) => !held.has(id))).toEqual([]);
    for (const entry of entries) expect((await checkEntry(entry, verifier)).ok).toBe(true);
    const chains = walkChains(entries);
    expect(chains.size).toBe(ROUNDS * WRITERS);
    for (const { stop, waiting, missing } of chains.values())
      expect({ stop, waiting, missing }).toEqual({ stop: undefined, waiting: [], missing: [] });
    await store.close();
    const database = new Database(file);
    expect(database.pragma("integrity_check", { simple: true })).toBe("ok");
    database.close();
  });
});
