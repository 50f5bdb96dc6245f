import { spawn } from "node:child_process";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { folderSettings, type Member, startOffice, type TestOffice } from "../support/sync-office.ts";
import { buildToeline, example, repository, runNode, temporaryFolder } from "./run-toeline.ts";

const program = join(repository, "dist/toeline.mjs");
const folder = temporaryFolder();
let office: TestOffice;
let anna: Member;

beforeAll(async () => {
  buildToeline();
  office = await startOffice(folderSettings(join(folder.path, "office")));
  anna = await office.member("anna", "manager", "wall");
}, 120_000);
afterAll(async () => {
  await office.stop();
  folder.remove();
});

/** Runs beside this process, because the office it asks runs in this one. */
function ask(args: readonly string[], environment: Readonly<Record<string, string>>) {
  return new Promise<{ code: number | null; stdout: string; stderr: string }>((done) => {
    const started = spawn(process.execPath, [program, ...args], {
      cwd: folder.path,
      env: { PATH: process.env["PATH"], LANG: "C.UTF-8", ...environment },
    });
    let [stdout, stderr] = ["", ""];
    started.stdout.on("data", (chunk) => {
      stdout += chunk;
    });
    started.stderr.on("data", (chunk) => {
      stderr += chunk;
    });
    started.on("close", (code) => done({ code, stdout, stderr }));
  });
}

test("a job is pushed from one log and pulled into another, and nothing is sent twice", async () => {
  const imported = runNode([program, "import", example, "--data", "a", "--job", "wall"], folder.path);
  expect(imported.code, imported.stderr).toBe(0);
  const secret = { TOELINE_TOKEN: anna.token };
  const push = ["push", "--job", "wall", "--data", "a", "--to", office.address];
  const first = await ask(push, secret);
  expect(first.code, first.stderr).toBe(0);
  expect(first.stdout).toMatch(/^wall: [1-9]\d* entries and \d+ files? sent to http/);
  expect((await ask(push, secret)).stdout).toMatch(/^wall: 0 entries and 0 files sent to/);
  const pulled = await ask(["pull", "--job", "wall", "--data", "b", "--from", office.address], secret);
  expect(pulled.code, pulled.stderr).toBe(0);
  expect(pulled.stdout.replace("fetched from", "sent to")).toBe(first.stdout);
});

test("without a token, without a job or without an office it says what to do", async () => {
  const nobody = await ask(["push", "--job", "wall", "--data", "a", "--to", office.address], {});
  expect(nobody).toMatchObject({ code: 2, stdout: "" });
  expect(nobody.stderr).toContain("sign in to send it");
  const none = await ask(["push", "--job", "roof", "--data", "a", "--to", office.address], {});
  expect(none.stderr).toContain("There is no job roof in the log.");
  const clear = await ask(["push", "--job", "wall", "--data", "a", "--to", "http://office.example"], {
    TOELINE_TOKEN: anna.token,
  });
  expect(clear.stderr).toContain("begins with https");
  const away = await ask(["pull", "--job", "wall", "--data", "b", "--from", "http://127.0.0.1:1"], {});
  expect(away).toMatchObject({ code: 2 });
  expect(away.stderr).toContain("did not answer");
});
