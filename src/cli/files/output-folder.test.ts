import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { whyNotWritable, writeFolder } from "./output-folder.ts";

let outer: string;
beforeEach(() => {
  outer = mkdtempSync(join(tmpdir(), "toeline-output-"));
});
afterEach(() => rmSync(outer, { recursive: true, force: true }));

const never = () => false;
const files = (...names: string[]) => names.map((name) => [name, `content of ${name}`] as const);
const list = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: "utf8" }).sort((a, b) => (a < b ? -1 : 1));

describe("a folder of results", () => {
  test("is made with all its files", async () => {
    const folder = join(outer, "deep/results");
    expect(await writeFolder(folder, files("results.json", "figures/P1.svg"), never)).toEqual({
      ok: true,
      value: 2,
    });
    expect(list(folder)).toEqual(["figures", "figures/P1.svg", "results.json", "written-by-toeline.txt"]);
    expect(readFileSync(join(folder, "figures/P1.svg"), "utf8")).toBe("content of figures/P1.svg");
  });

  test("is replaced by the next run; what that one does not write any more is gone", async () => {
    const folder = join(outer, "results");
    await writeFolder(folder, files("results.json", "figures/P1.svg"), never);
    await writeFolder(folder, files("results.json", "axes/P1.csv"), never);
    expect(list(folder)).toEqual(["axes", "axes/P1.csv", "results.json", "written-by-toeline.txt"]);
  });

  test("is refused where somebody else's file stands, and that file is left alone", async () => {
    const folder = join(outer, "results");
    await writeFolder(folder, files("results.json"), never);
    writeFileSync(join(folder, "my notes.txt"), "mine");
    const result = await writeFolder(folder, files("results.json"), never);
    expect(!result.ok && result.error).toContain("my notes.txt");
    expect(readFileSync(join(folder, "my notes.txt"), "utf8")).toBe("mine");
    expect(list(folder)).toContain("results.json");
  });

  test("is refused where a file has its name", () => {
    writeFileSync(join(outer, "taken"), "");
    expect(whyNotWritable(join(outer, "taken"))).toContain("is a file, not a folder");
  });

  test("may be empty, or hold what a stopped run left behind", async () => {
    const folder = join(outer, "results");
    mkdirSync(join(folder, ".unfinished-1"), { recursive: true });
    writeFileSync(join(folder, ".unfinished-1/half.svg"), "<svg");
    await writeFolder(folder, files("results.json"), never);
    expect(list(folder)).toEqual(["results.json", "written-by-toeline.txt"]);
  });

  test("stays as it was when the run is stopped in between", async () => {
    const folder = join(outer, "results");
    await writeFolder(folder, files("a.txt"), never);
    let asked = 0;
    const result = await writeFolder(folder, files("a.txt", "b.txt", "c.txt"), () => ++asked === 2);
    expect(result).toEqual({ ok: false, error: "Interrupted: nothing was written." });
    expect(list(folder)).toEqual(["a.txt", "written-by-toeline.txt"]);
    expect(existsSync(join(outer, "new"))).toBe(false);
    await writeFolder(join(outer, "new"), files("a.txt"), () => true);
    expect(existsSync(join(outer, "new"))).toBe(false);
  });
});
