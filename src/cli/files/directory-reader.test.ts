import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { directoryReader } from "./directory-reader.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "toeline-reader-"));
  mkdirSync(join(folder, "job/readings"), { recursive: true });
  writeFileSync(join(folder, "job/job.json"), "{}");
  writeFileSync(join(folder, "job/readings/P1.csv"), "depth_m\n");
  writeFileSync(join(folder, "job/.hidden"), "");
  writeFileSync(join(folder, "secret.txt"), "not of the job");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test("lists files with / between folders and without hidden ones", () => {
  expect(directoryReader(join(folder, "job")).names).toEqual(["job.json", "readings/P1.csv"]);
});

test("reads what it lists, and nothing outside of the folder", () => {
  const reader = directoryReader(join(folder, "job"));
  expect(new TextDecoder().decode(reader.read("readings/P1.csv"))).toBe("depth_m\n");
  expect(reader.read("../secret.txt")).toBeUndefined();
  expect(reader.read("readings/none.csv")).toBeUndefined();
});

test("goes through a link to a file and passes over one that leads nowhere", () => {
  symlinkSync(join(folder, "job/readings/P1.csv"), join(folder, "job/readings/P2.csv"));
  symlinkSync(join(folder, "gone.csv"), join(folder, "job/readings/P3.csv"));
  expect(directoryReader(join(folder, "job")).names).toEqual([
    "job.json",
    "readings/P1.csv",
    "readings/P2.csv",
  ]);
});
