import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type JobFiles, soundJob } from "../jobs/broken/sound-job.ts";
import { buildToeline, temporaryFolder, toeline } from "./run-toeline.ts";

beforeAll(buildToeline);
const outer = temporaryFolder();
afterAll(outer.remove);

function writeFolder(name: string, files: JobFiles): string {
  const folder = join(outer.path, name);
  for (const [file, content] of files) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), content);
  }
  return folder;
}

function writeZip(name: string, files: JobFiles, inside: string): string {
  const bytes = ([file, content]: [string, string | Uint8Array]) =>
    [inside + file, typeof content === "string" ? strToU8(content) : content] as const;
  const path = join(outer.path, name);
  writeFileSync(path, zipSync(Object.fromEntries([...files].map(bytes))));
  return path;
}

describe("a job", () => {
  test("that is sound is checked with exit code 0 and worked out with exit code 0", () => {
    const folder = writeFolder("sound", soundJob());
    expect(toeline(["check", folder]).code).toBe(0);
    expect(toeline(["reduce", folder]).code).toBe(0);
  });

  test("as a zip gives the same results as its folder, also where the folder itself is in the zip", () => {
    const folder = writeFolder("same", soundJob());
    const fromFolder = toeline(["reduce", folder, "--json"]);
    for (const inside of ["", "my job/"]) {
      const zip = writeZip("same.zip", soundJob(), inside);
      expect(toeline(["reduce", zip, "--json"])).toEqual(fromFolder);
    }
  });

  test.each([
    ["an empty folder", () => writeFolder("empty", new Map([["readme.txt", ""]])), /job\.json/],
    [
      "a file that is no zip",
      () => join(writeFolder("text", new Map([["a.zip", "no zip"]])), "a.zip"),
      /a\.zip/,
    ],
    ["a zip of something else", () => writeZip("b.zip", new Map([["x.txt", ""]]), ""), /job\.json/],
    ["a zip that leads out of itself", () => writeZip("c.zip", soundJob(), "../"), /\.\.\//],
    ["job.json itself", () => join(writeFolder("file", soundJob()), "job.json"), /Give the folder/],
  ])("that is %s cannot be read: exit code 2, one sentence, no trace", (_what, make, hint) => {
    const path = make();
    for (const command of ["check", "reduce"]) {
      const ran = toeline([command, path]);
      expect(ran.code).toBe(2);
      expect(ran.stdout + ran.stderr).toMatch(hint);
      expect(ran.stdout + ran.stderr).not.toMatch(/^\s+at |mistake of toeline/m);
    }
  });

  test("with one bad run: the others are worked out, exit code 1", () => {
    const files = soundJob();
    files.set("readings/R1.csv", "");
    const ran = toeline(["reduce", writeFolder("one-bad", files), "--json"]);
    expect(ran.code).toBe(1);
    const { runs } = JSON.parse(ran.stdout) as { runs: { id: string; stations: unknown[] }[] };
    const worked = runs.filter((run) => run.stations.length > 0).map((run) => run.id);
    expect(worked.sort()).toEqual(["R2", "R3", "R4"]);
  });

  test("with limits from memory says on every output that the clause must be confirmed", () => {
    const files = soundJob();
    const job = JSON.parse(String(files.get("job.json"))) as { criteria: { source?: object }[] };
    job.criteria[0]!.source = { document: "Invented standard", clause: "7.2", status: "memory" };
    files.set("job.json", JSON.stringify(job));
    const folder = writeFolder("memory", files);
    const out = join(outer.path, "memory-out");
    const reduced = toeline(["reduce", folder, "--out", out]);
    const checked = toeline(["check", folder]);
    for (const text of [reduced.stdout, checked.stdout, readFileSync(join(out, "findings.txt"), "utf8")])
      expect(text).toMatch(/confirm[\s\S]*Invented standard[\s\S]*7\.2/);
    expect(readFileSync(join(out, "tables/verdicts.csv"), "utf8")).toContain("confirm the clause");
    expect(readFileSync(join(out, "results.json"), "utf8")).toMatch(/memory/);
  });
});

describe("a simulated job", () => {
  test("is written, is the same for the same seed, and can be worked out", () => {
    const [a, b, c] = ["a", "b", "c"].map((name) => join(outer.path, `simulated-${name}`)) as [
      string,
      string,
      string,
    ];
    for (const [out, seed] of [
      [a, "7"],
      [b, "7"],
      [c, "8"],
    ] as const)
      expect(toeline(["simulate", "plain", "--set", "elements=3", "--out", out, "--seed", seed]).code).toBe(
        0,
      );
    const readings = (out: string) => readFileSync(join(out, "readings/P0001-1.csv"), "utf8");
    expect(readings(b)).toBe(readings(a));
    expect(readings(c)).not.toBe(readings(a));
    expect(toeline(["reduce", a]).code).toBe(0);
  });

  test.each([
    ["a scenario that there is not", ["plian"], /plain/],
    ["a size that there is not", ["plain", "--set", "colour=3"], /elements/],
    ["a size that cannot be", ["plain", "--set", "elements=0.5"], /whole number/],
  ])("is refused for %s", (_what, args, hint) => {
    const ran = toeline(["simulate", ...args, "--out", join(outer.path, "refused"), "--seed", "1"]);
    expect(ran.code).toBe(2);
    expect(ran.stdout).toBe("");
    expect(ran.stderr).toMatch(hint);
  });
});
