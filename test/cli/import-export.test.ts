import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { edit, type JobFiles, soundJob } from "../jobs/broken/sound-job.ts";
import { buildToeline, temporaryFolder, toeline } from "./run-toeline.ts";

beforeAll(buildToeline, 120_000);
const outer = temporaryFolder();
afterAll(outer.remove);
const at = (name: string) => join(outer.path, name);

function writeFolder(name: string, files: JobFiles): string {
  for (const [file, content] of files) {
    mkdirSync(dirname(join(at(name), file)), { recursive: true });
    writeFileSync(join(at(name), file), content);
  }
  return at(name);
}

test("a folder goes into a log and comes out of it with the same results", () => {
  const folder = writeFolder("site-4", soundJob());
  const imported = toeline(["import", folder, "--data", at("office")]);
  expect(imported.stderr).toBe("");
  expect(imported).toMatchObject({
    code: 0,
    stdout: expect.stringMatching(/^Job site-4: \d+ entries added\.\n$/),
  });
  expect(statSync(join(at("office"), "device.key")).mode & 0o777).toBe(0o600);

  const again = toeline(["import", folder, "--data", at("office")]);
  expect(again).toMatchObject({ code: 0, stdout: "Job site-4: the log holds all of it already.\n" });

  for (const out of ["out", "out.zip"]) {
    expect(toeline(["export-job", "site-4", "--data", at("office"), "--out", at(out)]).code).toBe(0);
    expect(toeline(["reduce", at(out), "--json"]).stdout).toBe(toeline(["reduce", folder, "--json"]).stdout);
  }
});

test("of a changed folder only what differs is added", () => {
  const files = soundJob();
  const folder = writeFolder("changed", files);
  toeline(["import", folder, "--data", at("office-2"), "--job", "wall"]);
  edit(files, "elements.csv", "P2,bored-pile,0.9", "P2,bored-pile,1.2");
  writeFolder("changed", files);
  const changed = toeline(["import", folder, "--data", at("office-2"), "--job", "wall"]);
  expect(changed.stdout).toBe("Job wall: 1 entry added.\n");
  toeline(["export-job", "wall", "--data", at("office-2"), "--out", at("changed-out")]);
  expect(readFileSync(join(at("changed-out"), "elements.csv"), "utf8")).toContain("P2,bored-pile,1.2");
});

test("a name given on the command line is the job's", () => {
  const folder = writeFolder("named", soundJob());
  const named = ["import", folder, "--data", at("office-3"), "--name", "Quay wall"];
  expect(toeline(named).code).toBe(0);
  expect(toeline(named).stdout).toContain("holds all of it already");
  toeline(["export-job", "named", "--data", at("office-3"), "--out", at("named-out")]);
  expect(readFileSync(join(at("named-out"), "job.json"), "utf8")).toContain('"name": "Quay wall"');
});

test.each([
  ["no place for the log", () => ["import", writeFolder("a", soundJob())], /--data DIR or --database/],
  ["a folder that is none", () => ["import", at("nowhere"), "--data", at("b")], /There is no /],
  [
    "a job.json that is none",
    () => ["import", writeFolder("c", new Map([["job.json", "{"]])), "--data", at("c-log")],
    /nothing was written/,
  ],
  [
    "a log that is not there",
    () => ["export-job", "x", "--data", at("none"), "--out", at("o1")],
    /no log in/,
  ],
  [
    "a job that the log does not have",
    () => {
      toeline(["import", writeFolder("d", soundJob()), "--data", at("d-log"), "--job", "wall-a"]);
      return ["export-job", "wall-b", "--data", at("d-log"), "--out", at("o2")];
    },
    /no job wall-b; is wall-a meant\?/,
  ],
])("%s: exit code 2 and a sentence, and nothing is written", (_what, args, sentence) => {
  const ran = toeline(args());
  expect(ran.code).toBe(2);
  expect(ran.stderr).toMatch(sentence);
  expect(ran.stderr).not.toMatch(/\n\s+at /);
  expect(existsSync(at("o1")) || existsSync(at("o2"))).toBe(false);
});

test("a folder that holds other files is not written into", () => {
  const folder = writeFolder("e", soundJob());
  toeline(["import", folder, "--data", at("e-log")]);
  cpSync(folder, at("e-copy"), { recursive: true });
  const ran = toeline(["export-job", "e", "--data", at("e-log"), "--out", at("e-copy")]);
  expect(ran.code).toBe(2);
  expect(readdirSync(at("e-copy")).sort()).toEqual(["elements.csv", "job.json", "readings", "tubes.csv"]);
});
