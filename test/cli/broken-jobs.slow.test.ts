import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { BrokenCase } from "../jobs/broken/broken-case.ts";
import { brokenReadings } from "../jobs/broken/broken-readings.ts";
import { brokenSettings } from "../jobs/broken/broken-settings.ts";
import { type JobFiles, soundJob } from "../jobs/broken/sound-job.ts";
import { buildToeline, temporaryFolder, toeline } from "./run-toeline.ts";

beforeAll(buildToeline);
const outer = temporaryFolder();
afterAll(outer.remove);

function write(files: JobFiles): string {
  const folder = join(outer.path, "job");
  rmSync(folder, { recursive: true, force: true });
  for (const [name, content] of files) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return folder;
}

function expectedOfReduce({ lost = [] }: BrokenCase): number {
  if (lost === "job" || lost[0] === "none") return 2;
  return lost.length > 0 ? 1 : 0;
}

const cases = [...brokenReadings, ...brokenSettings].map((each) => [each.name, each] as const);

test.each(cases)("on the command line: %s", (_name, each) => {
  const files = soundJob();
  each.broken(files);
  const folder = write(files);

  const checked = toeline(["check", folder]);
  const severity = each.severity ?? "error";
  // other findings may follow from the one that was put in, so a warning may come with an error
  if (each.lost === "job") expect(checked.code).toBe(2);
  else if (severity === "error") expect(checked.code).toBe(1);
  else expect(checked.code).toBeLessThan(2);
  const place = each.line === undefined ? each.file : `${each.file}:${each.line}`;
  expect(checked.stdout).toContain(place);
  expect(checked.stderr).toBe("");

  const reduced = toeline(["reduce", folder, "--json"]);
  expect(reduced.code).toBe(expectedOfReduce(each));
  if (each.lost === "job") {
    expect(reduced.stdout).toBe("");
    expect(reduced.stderr).toContain(place);
  } else expect(JSON.parse(reduced.stdout)).toHaveProperty("format", "toeline-results/1");
  for (const text of [checked.stdout, checked.stderr, reduced.stderr])
    expect(text).not.toMatch(/^\s+at .*:\d+|mistake of toeline|\bundefined\b/m);
});
