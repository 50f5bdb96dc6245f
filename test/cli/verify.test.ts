import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type EvidenceReport, writeEvidenceBag } from "#evidence";
import { utf8 } from "#records";
import { evidenceOfJob, type Files, filesOf, OFFICE, packed } from "../support/evidence.ts";
import { unwrap } from "../support/records.ts";
import { buildToeline, temporaryFolder, toeline } from "./run-toeline.ts";

const folder = temporaryFolder();
afterAll(folder.remove);
const input = await evidenceOfJob();
const bag = unwrap(await writeEvidenceBag(input));
const [early, closing] = input.heads as [(typeof input.heads)[0], (typeof input.heads)[0]];
const write = (name: string, bytes: Uint8Array) => {
  const path = join(folder.path, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, bytes);
  return path;
};
const sound = write("sound.zip", bag);

/** The fifth entry says something else, and everything that an attacker can make anew is made anew. */
async function changedBag(): Promise<Uint8Array> {
  const files = filesOf(bag);
  const lines = new TextDecoder().decode(files.get("data/entries.jsonl")).split("\n");
  files.set(
    "data/entries.jsonl",
    utf8(lines.with(4, lines[4]!.replace('"author":"anna"', '"author":"bert"')).join("\n")),
  );
  return packed(files);
}

const unpack = (files: Files, into: string) => {
  for (const [name, bytes] of files) write(`${into}/${name}`, bytes);
  return join(folder.path, into);
};

describe("toeline verify", () => {
  beforeAll(buildToeline);

  test("answers in one sentence first: nothing was changed", () => {
    const ran = toeline(["verify", sound]);
    expect(ran.code).toBe(0);
    const [first] = ran.stdout.split("\n");
    expect(first).toBe(
      `Nothing was changed: all entries (${input.entries.length}), devices (3) and signatures of people (2) fit what was signed.`,
    );
    for (const word of ["Tablet 2", "approved by", closing.key, early.root.slice(0, 16)])
      expect(ran.stdout).toContain(word);
  });

  test("names the first entry that was changed, and ends with 1", async () => {
    const ran = toeline(["verify", write("changed.zip", await changedBag())]);
    expect(ran.code).toBe(1);
    const { device, sequence, kind } = input.entries[4]!;
    expect(ran.stdout.split("\n")[0]).toMatch(
      new RegExp(
        `^This file was changed: entry 5 .*${kind}, number ${sequence} of device ${device.slice(0, 16)}`,
      ),
    );
  });

  test("takes heads and the key from outside", () => {
    const args = ["--head", `${early.size}:${early.root.slice(0, 16)}`, "--office-key", OFFICE.publicKey];
    expect(toeline(["verify", sound, ...args]).code).toBe(0);
    expect(toeline(["verify", sound, "--head", `12:${"ab".repeat(8)}`]).code).toBe(1);
    expect(toeline(["verify", sound, "--head", `999:${closing.root}`]).code).toBe(1);
    expect(toeline(["verify", sound, "--office-key", "ab".repeat(32)]).code).toBe(1);
  });

  test("takes the bag as a folder, and prints the report as JSON", () => {
    const ran = toeline(["verify", unpack(filesOf(bag), "as-folder"), "--json"]);
    expect(ran.code).toBe(0);
    const report = JSON.parse(ran.stdout) as EvidenceReport;
    expect(report).toMatchObject({ verdict: "sound", entries: input.entries.length });
  });

  test.each([
    ["no such file", ["no-such.zip"]],
    ["a head that is none", [sound, "--head", "12"]],
    ["a key that is none", [sound, "--office-key", "abc"]],
  ])("answers %s with exit code 2", (_what, args) => {
    const ran = toeline(["verify", ...args]);
    expect(ran).toMatchObject({ code: 2, stdout: "" });
    expect(ran.stderr.trimEnd().split("\n")).toHaveLength(1);
  });

  test("answers a file that is no bag with exit code 2", () => {
    const ran = toeline(["verify", write("text.txt", utf8("not a bag"))]);
    expect(ran.code).toBe(2);
    expect(ran.stdout).toMatch(/^This is no evidence file/);
  });
});

describe("by other means, without a line of this program", () => {
  const recipeIn = (files: Files) =>
    new TextDecoder().decode(files.get("README.txt")).split(/^-----8<-----.*\n/m)[1]!;
  const run = (command: string, args: readonly string[], cwd: string) =>
    spawnSync(command, args, { cwd, encoding: "utf8" });

  test("the recipe of the README, with Python and OpenSSL, says the same of a sound bag", () => {
    const files = filesOf(bag);
    const cwd = unpack(files, "by-recipe");
    write("by-recipe/check.py", utf8(recipeIn(files)));
    const ran = run("python3", ["check.py"], cwd);
    expect(ran.stderr).toBe("");
    expect(ran.stdout).toContain(`nothing was changed: ${input.entries.length} entries`);
    expect(ran.stdout).toContain(closing.root);
    expect(ran.status).toBe(0);
  });

  test("and of a changed one", async () => {
    const files = filesOf(await changedBag());
    const cwd = unpack(files, "by-recipe-changed");
    write("by-recipe-changed/check.py", utf8(recipeIn(filesOf(bag))));
    const ran = run("python3", ["check.py"], cwd);
    expect(ran.status).toBe(1);
    expect(ran.stdout).toContain("entry 5: its content is not what its id says");
  });

  test("Python's hashlib finds the manifests right", () => {
    const cwd = unpack(filesOf(bag), "by-manifest");
    const script = [
      "import hashlib, os",
      "listed = set()",
      "for m in ('manifest-sha256.txt', 'tagmanifest-sha256.txt'):",
      "    for line in open(m, encoding='utf-8'):",
      "        h, name = line.rstrip('\\n').split('  ', 1)",
      "        assert hashlib.sha256(open(name, 'rb').read()).hexdigest() == h, name",
      "        listed.add(name)",
      "held = {os.path.relpath(os.path.join(d, f)) for d, _, fs in os.walk('.') for f in fs}",
      "assert held - listed == {'tagmanifest-sha256.txt'}, held ^ listed",
      "print(len(listed))",
    ].join("\n");
    const ran = run("python3", ["-c", script], cwd);
    expect(ran.stderr).toBe("");
    expect(Number(ran.stdout)).toBe(filesOf(bag).size - 1);
  });

  test("Python's zipfile reads the archive and finds it whole", () => {
    const script =
      "import sys, zipfile; z = zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None; print(len(z.namelist()), {i.date_time for i in z.infolist()})";
    const ran = run("python3", ["-c", script, sound], folder.path);
    expect(ran.stderr).toBe("");
    expect(ran.stdout.trim()).toBe(`${filesOf(bag).size} {(1980, 1, 1, 0, 0, 0)}`);
  });
});
